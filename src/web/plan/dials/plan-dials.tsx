// What can be turned about a plan. Nothing here touches the box until it is saved.
import { type ReactNode, useState } from "react";
import type { PlanView } from "../../../app/views.ts";
import { counted } from "../../words.ts";
import { recallBy } from "../charts/by-chart.ts";
import type { Draft } from "../use-draft.ts";
import { paceWords } from "../year/year-words.ts";
import { MissedDaysDial } from "./missed-days-dial.tsx";
import { NewCardsDial, NewCardsMore } from "./new-cards-dial.tsx";
import { RecallDial, RecallMore } from "./recall-dial.tsx";
import { SaveRow } from "./save-row.tsx";

interface PlanDialsProps {
  readonly view: PlanView;
  readonly plan: Draft;
}

/** The two dials, and the row that saves. */
export function PlanDials({ view, plan }: PlanDialsProps) {
  const { draft, change } = plan;
  return (
    <>
      <div className="dials">
        <div className="dial-block">
          <NewCardsDial schedule={draft.schedule} onChange={(schedule) => change({ schedule })} />
          <StockSwitch view={view} ends={draft.stockEnds} onChange={(stockEnds) => change({ stockEnds })} />
        </div>
        <RecallDial
          recall={draft.recall}
          visits={view.visits}
          measured={recallBy(view, null, draft.chart)}
          box={view.box !== null}
          onChange={(recall) => change({ recall })}
        />
      </div>
      <SaveRow box={view.box} plan={plan} />
    </>
  );
}

/** What is turned less often, folded away. */
export function MoreDials({ view, plan }: PlanDialsProps) {
  const { draft, change } = plan;
  return (
    <>
      <p className="hint">{paceWords(view)}</p>
      <Fold summary="New cards by weekday, until a date, or day by day">
        <NewCardsMore schedule={draft.schedule} from={view.from} onChange={(schedule) => change({ schedule })} />
      </Fold>
      <Fold summary="Recall by compartment" open={typeof draft.recall === "object" && draft.recall !== null}>
        <RecallMore
          recall={draft.recall}
          measured={recallBy(view, null, draft.chart)}
          onChange={(recall) => change({ recall })}
        />
      </Fold>
      <Fold summary="What if I miss some days?" open={draft.missed.length > 0}>
        <MissedDaysDial view={view} draft={draft} change={change} />
      </Fold>
    </>
  );
}

function StockSwitch(props: {
  readonly view: PlanView;
  readonly ends: boolean;
  readonly onChange: (ends: boolean) => void;
}) {
  const { view, ends, onChange } = props;
  return (
    <label className="choice">
      <input type="checkbox" checked={ends} onChange={(event) => onChange(event.target.checked)} />
      <span>
        New cards end with the stock <span className="hint">({counted(view.stock, "card")} left)</span>
      </span>
    </label>
  );
}

/** A part that is made only once it is wanted. */
function Fold(props: { readonly summary: string; readonly open?: boolean; readonly children: ReactNode }) {
  const [open, setOpen] = useState(props.open ?? false);
  return (
    <details className="fold" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{props.summary}</summary>
      {open ? props.children : null}
    </details>
  );
}
