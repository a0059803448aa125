// What if some days are missed? Both ways to take it, side by side, with what each costs.
import { useEffect, useMemo, useState } from "react";
import type { PlanView } from "../../../app/views.ts";
import type { MissedDayPolicy } from "../../../core/calendar/calendar.ts";
import type { LocalDate } from "../../../core/calendar/local-date.ts";
import { useDebounced } from "../../data/use-debounced.ts";
import { POLICY_WORDS } from "../../today/missed-days.tsx";
import { vars } from "../../vars.ts";
import { longDate } from "../../words.ts";
import { type PlanDraft, questionOf } from "../plan-draft.ts";
import { useTask } from "../workers/use-task.ts";
import { workWords } from "../year/year-words.ts";
import { comingBack, datesFrom, MOST_MISSED, type Return } from "./missed-trial.ts";

const POLICIES: readonly MissedDayPolicy[] = ["chart-waits", "chart-goes-on"];

/** What each policy does to days that lie ahead. */
const DOES: Readonly<Record<MissedDayPolicy, string>> = {
  "chart-waits": "Day numbers move only when you sit. You take up where you stopped.",
  "chart-goes-on": "Day numbers move every day. All that fell due is visited on the first day back, once.",
};

/** Pause after which both loads are worked out. */
const PAUSE_MS = 200;

interface MissedDaysProps {
  readonly view: PlanView;
  readonly draft: PlanDraft;
  readonly change: (part: Partial<PlanDraft>) => void;
}

/** The trial of missed days, and the choice of how the chart takes them. */
export function MissedDaysDial({ view, draft, change }: MissedDaysProps) {
  const { missed, policy } = draft;
  const returns = useReturns(view, draft);
  const most = Math.max(1, ...returns.flatMap(({ ahead }) => ahead));
  return (
    <div className="missed-trial">
      <MissedDates missed={missed} from={view.from} onChange={(dates) => change({ missed: dates })} />
      <div className="policies">
        {POLICIES.map((one, i) => (
          <PolicyTrial
            key={one}
            policy={one}
            chosen={one === policy}
            choose={() => change({ policy: one })}
            back={returns[i] ?? null}
            most={most}
          />
        ))}
      </div>
    </div>
  );
}

/** What awaits after the missed days under each policy; none without missed days. */
function useReturns(view: PlanView, draft: PlanDraft): readonly Return[] {
  const { answer, start, stop } = useTask("loads");
  const questions = useMemo(() => POLICIES.map((policy) => questionOf(view, { ...draft, policy })), [view, draft]);
  const settled = useDebounced(questions, PAUSE_MS);
  const trying = draft.missed.length > 0;
  useEffect(() => {
    if (trying) start(settled);
    else stop();
  }, [trying, settled, start, stop]);
  return useMemo(() => (trying && answer ? answer.map(comingBack) : []), [trying, answer]);
}

function MissedDates(props: {
  readonly missed: readonly LocalDate[];
  readonly from: LocalDate;
  readonly onChange: (missed: readonly LocalDate[]) => void;
}) {
  const { missed, from, onChange } = props;
  const [typed, setTyped] = useState({ from: missed[0] ?? "", to: missed.at(-1) ?? "" });
  const type = (part: Partial<typeof typed>): void => {
    const next = { ...typed, ...part };
    setTyped(next);
    onChange(datesFrom(next.from, next.to || next.from));
  };
  const wrong = typed.from !== "" && typed.to !== "" && typed.to < typed.from;
  return (
    <>
      <div className="field-row">
        <label className="field">
          <span>I miss every day from</span>
          <input type="date" min={from} value={typed.from} onChange={(event) => type({ from: event.target.value })} />
        </label>
        <label className="field">
          <span>to (the same day if left out)</span>
          <input
            type="date"
            min={typed.from || from}
            value={typed.to}
            aria-invalid={wrong}
            onChange={(event) => type({ to: event.target.value })}
          />
        </label>
        {typed.from + typed.to === "" ? null : (
          <button type="button" onClick={() => type({ from: "", to: "" })}>
            Miss none
          </button>
        )}
      </div>
      <p className="field-problem" role="status">
        {wrong ? "These days end before they begin." : null}
        {missed.length === MOST_MISSED ? `No more than ${MOST_MISSED} days are tried.` : null}
      </p>
    </>
  );
}

function PolicyTrial(props: {
  readonly policy: MissedDayPolicy;
  readonly chosen: boolean;
  readonly choose: () => void;
  readonly back: Return | null;
  readonly most: number;
}) {
  const { policy, chosen, choose, back, most } = props;
  const { name } = POLICY_WORDS[policy];
  return (
    <div className="policy" data-chosen={chosen ? "" : undefined}>
      <h3>{name}</h3>
      <p>{DOES[policy]}</p>
      {back ? <BackWords back={back} most={most} /> : null}
      <button type="button" aria-pressed={chosen} onClick={choose}>
        {chosen ? `${name}: chosen` : name}
      </button>
    </div>
  );
}

function BackWords({ back, most }: { readonly back: Return; readonly most: number }) {
  const { first, worst, ahead } = back;
  if (!first) return <p>There is no day left to come back on.</p>;
  return (
    <>
      <p>
        <strong>
          The first day back, {longDate(first.date)}: {workWords(first)}.
        </strong>{" "}
        {worst && worst.date !== first.date
          ? `The worst day of the four weeks after is ${longDate(worst.date)}: ${workWords(worst)}.`
          : "No day of the four weeks after is worse."}
      </p>
      <ol className="bars" aria-label="Expected cards of the first sittings">
        {ahead.map((reviews, i) => (
          // The place in the row is the sitting.
          <li key={`${i}`} style={vars({ "--share": reviews / most })}>
            <span className="visually-hidden">{Math.round(reviews)}</span>
          </li>
        ))}
      </ol>
    </>
  );
}
