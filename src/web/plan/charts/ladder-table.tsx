// Ladders in a table that can be put in order by any column.
import { useState } from "react";
import type { LadderFigures } from "../../../core/chart/search-ladders.ts";
import { chartKey, type NamedChart } from "./compared-charts.ts";
import { periodWords } from "./figure-words.ts";
import {
  FIRST_ORDER,
  inOrder,
  LADDER_COLUMNS,
  type LadderColumn,
  type LadderOrder,
  orderPressed,
} from "./ladder-columns.ts";

interface LadderTableProps {
  readonly ladders: readonly LadderFigures[];
  readonly pace: number;
  readonly pick: (picked: NamedChart) => void;
  /** Key of the chart that is planned with. */
  readonly planned: string;
}

/** The table, in a region that scrolls. */
export function LadderTable({ ladders, pace, pick, planned }: LadderTableProps) {
  const [order, setOrder] = useState(FIRST_ORDER);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable from the keyboard
    <section className="table-scroll ladders" tabIndex={0} aria-label="Ladders">
      <table>
        <caption className="visually-hidden">Ladders and what each asks in the long run</caption>
        <thead>
          <tr>
            {LADDER_COLUMNS.map((column) => (
              <Heading
                key={column.key}
                column={column}
                order={order}
                press={() => setOrder(orderPressed(order, column.key))}
              />
            ))}
            <th scope="col">
              <span className="visually-hidden">Choice</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {inOrder(ladders, order).map((ladder) => (
            <Row
              key={periodWords(ladder.periods)}
              ladder={ladder}
              pace={pace}
              pick={pick}
              chosen={chartKey(ladder.chart) === planned}
            />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Heading(props: { readonly column: LadderColumn; readonly order: LadderOrder; readonly press: () => void }) {
  const { column, order, press } = props;
  const chosen = order.by === column.key;
  const arrow = order.falling ? "▾" : "▴";
  return (
    <th scope="col" aria-sort={chosen ? (order.falling ? "descending" : "ascending") : undefined}>
      <button type="button" className="quiet sort" onClick={press}>
        {column.name}
        <span aria-hidden="true">{chosen ? arrow : ""}</span>
      </button>
    </th>
  );
}

function Row(props: {
  readonly ladder: LadderFigures;
  readonly pace: number;
  readonly pick: LadderTableProps["pick"];
  readonly chosen: boolean;
}) {
  const { ladder, pace, pick, chosen } = props;
  const { compartments, ratio, periods, chart } = ladder;
  const [first, ...figures] = LADDER_COLUMNS;
  return (
    <tr>
      <th scope="row">{first?.words(ladder, pace)}</th>
      {figures.map(({ key, words }) => (
        <td key={key}>{words(ladder, pace)}</td>
      ))}
      <td>
        <button
          type="button"
          aria-label={`Plan with ${periodWords(periods)}`}
          aria-pressed={chosen}
          onClick={() => pick({ name: `Ladder of ${compartments}, growth ${ratio}`, chart })}
        >
          {chosen ? "Planned with" : "Plan with this"}
        </button>
      </td>
    </tr>
  );
}
