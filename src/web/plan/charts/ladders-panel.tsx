// The search over ladders: how many compartments and how fast the days grow, and what each costs.
import { useState } from "react";
import { LADDERS, type LadderFigures } from "../../../core/chart/search-ladders.ts";
import { BusyButton } from "../../shell/busy-button.tsx";
import { Stepper } from "../../shell/stepper.tsx";
import { useTask } from "../workers/use-task.ts";
import type { NamedChart } from "./compared-charts.ts";
import { DESIGN_FORM } from "./design-form.ts";
import { percent } from "./figure-words.ts";
import { LadderTable } from "./ladder-table.tsx";
import { Working } from "./working.tsx";

/** Tabs with which the search begins: as many as the levelled chart has. */
const FIRST_TABS = 18;

interface LaddersPanelProps {
  /** Chance of recall in every compartment. */
  readonly recall: number;
  readonly pace: number;
  /** Puts a chart beside the others and plans with it. */
  readonly pick: (picked: NamedChart) => void;
  /** Key of the chart that is planned with. */
  readonly planned: string;
}

/** The panel of the search. */
export function LaddersPanel({ recall, pace, pick, planned }: LaddersPanelProps) {
  const [tabs, setTabs] = useState(FIRST_TABS);
  const task = useTask("ladders");
  const { answer, busy, failed } = task;
  return (
    <section className="sheet" aria-labelledby="charts-ladders">
      <h2 id="charts-ladders">Find a ladder</h2>
      <p>
        Fewer compartments that grow faster ask a card less often and wait longer for it. This compares{" "}
        {LADDERS.compartments[0]} to {LADDERS.compartments.at(-1)} compartments whose days grow by {LADDERS.ratios[0]}{" "}
        to {LADDERS.ratios.at(-1)} from one to the next and come round together within a year, each with a chart
        designed for it.
      </p>
      <p>
        Recall is taken to be {percent(recall)} in every compartment of every ladder. In truth longer waits cost recall:
        on a faster ladder expect less, and try the plan with less.
      </p>
      <Stepper
        label="Tabs at most"
        min={LADDERS.compartments[0]}
        max={DESIGN_FORM.tabs}
        value={tabs}
        onChange={setTabs}
      />
      <p className="begin-row">
        <BusyButton className="primary" busy={busy} onClick={() => task.start({ recall, tabs })}>
          Find ladders
        </BusyButton>
      </p>
      {busy ? <Working words="Designing a chart for each ladder …" stop={task.stop} /> : null}
      <div role="status">{!busy && answer?.ok ? <p>{foundWords(answer.value)}</p> : null}</div>
      {failed || answer?.ok === false ? (
        <p className="trouble" role="alert">
          {answer?.ok === false ? `No ladders: ${answer.error}.` : "The search broke off. Try again."}
        </p>
      ) : null}
      {answer?.ok ? <LadderTable ladders={answer.value} pace={pace} pick={pick} planned={planned} /> : null}
    </section>
  );
}

function foundWords(ladders: readonly LadderFigures[]): string {
  const open = ladders.filter(({ exact }) => !exact).length;
  const proof =
    open === 0
      ? "Every chart is proved to be the best of its ladder within the tabs."
      : `For ${open} of them the search was heuristic: a better chart may exist, but none whose worst day lies below the mean.`;
  return `${ladders.length} ladders. ${proof} Press the heading of a column to put them in order by it.`;
}
