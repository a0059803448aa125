// Ready by a date: how many new cards a day and until when, so that as many as possible are known on the day.
import { memo, useMemo, useState } from "react";
import type { PlanView } from "../../../app/views.ts";
import { addDays, type LocalDate } from "../../../core/calendar/local-date.ts";
import type { DeadlineChoice, DeadlinePlan } from "../../../core/load/deadline.ts";
import type { NewCardSchedule } from "../../../core/load/new-cards.ts";
import { Stepper } from "../../shell/stepper.tsx";
import { counted, shortDate } from "../../words.ts";
import { LEVELS, type PlanDraft, posteriorOf } from "../plan-draft.ts";
import { useOpenQuestion } from "../use-open-question.ts";
import { TaskState } from "../workers/task-state.tsx";
import { useAsked } from "../workers/use-asked.ts";
import { ReadyCurve } from "./ready-curve.tsx";
import { cautionWords, gentleWords, readyWords, type Wish } from "./ready-words.ts";

/** What the panel begins with. */
const FIRST = { days: 90, cards: 100, minutes: 30 } as const;
/** Longest time ahead, most cards and most minutes that are planned for. */
const MOST = { days: 1_500, cards: 5_000, minutes: 600 } as const;
/** How sure it is that a day keeps within the time. */
const LEVEL = 0.95;

interface ReadyProps {
  readonly view: PlanView;
  readonly draft: PlanDraft;
  /** Takes a pace into the plan. */
  readonly take: (schedule: NewCardSchedule) => void;
}

interface Wanted {
  readonly by: LocalDate;
  readonly cards: number;
  readonly minutes: number;
}

/** The panel of the deadline. */
export const ReadyPanel = memo(function ReadyPanel({ view, draft, take }: ReadyProps) {
  const [wanted, setWanted] = useState<Wanted>(() => ({
    by: addDays(view.from, FIRST.days),
    cards: view.stock > 0 ? Math.min(view.stock, MOST.cards) : FIRST.cards,
    minutes: FIRST.minutes,
  }));
  const problem = dateProblem(wanted.by, view.from);
  const question = useReadyQuestion(view, draft, problem === null ? wanted : null);
  const asked = useAsked("deadline", question);
  const { answer, current } = asked;
  const wish = asked.task.answered ?? wanted;
  const caution = cautionWords(Boolean(asked.task.answered?.posterior));
  return (
    <section className="sheet" aria-labelledby="ready">
      <h2 id="ready">Ready by a date</h2>
      <p className="hint">For an examination or a tour that has its day: how to spread the new cards before it.</p>
      <ReadyFields wanted={wanted} from={view.from} stock={view.stock} problem={problem} onChange={setWanted} />
      <div className="answer" aria-live="polite" aria-busy={!current}>
        {answer && !problem ? <ReadyAnswer plan={answer} wish={wish} stale={!current} /> : null}
      </div>
      <TaskState task={asked.task} what="the best pace" waiting={asked.waiting} again={asked.again} />
      {answer && current && answer.best.last !== null ? (
        <>
          <TakeOver plan={answer} take={take} />
          <p className="hint">{caution}</p>
          <ReadyCurve key={`${wish.by} ${wish.cards}`} plan={answer} wish={wish} from={view.from} caution={caution} />
        </>
      ) : null}
    </section>
  );
});

function dateProblem(by: LocalDate, from: LocalDate): string | null {
  if (by === "") return "Say on which day the cards are wanted.";
  if (by <= from) return "That day is not ahead.";
  return by > addDays(from, MOST.days) ? `No more than ${MOST.days} days are planned for.` : null;
}

function useReadyQuestion(view: PlanView, draft: PlanDraft, wanted: Wanted | null) {
  const plan = useOpenQuestion(view, draft);
  const { chart, recall } = draft;
  const posterior = useMemo(() => posteriorOf(view, { chart, recall }), [view, chart, recall]);
  return useMemo(() => {
    if (!wanted) return null;
    const { by, cards, minutes } = wanted;
    const limit = { minutes, level: LEVEL, pace: view.pace };
    return { ...plan, posterior, by, cards, limit, quantiles: LEVELS };
  }, [plan, posterior, wanted, view.pace]);
}

function ReadyFields(props: {
  readonly wanted: Wanted;
  readonly from: LocalDate;
  readonly stock: number;
  readonly problem: string | null;
  readonly onChange: (wanted: Wanted) => void;
}) {
  const { wanted, from, stock, problem, onChange } = props;
  return (
    <>
      <div className="field-row">
        <label className="field">
          <span>The day on which they are wanted</span>
          <input
            type="date"
            min={addDays(from, 1)}
            value={wanted.by}
            aria-invalid={problem !== null}
            onChange={(event) => onChange({ ...wanted, by: event.target.value })}
          />
        </label>
        <Stepper
          label="New cards to know"
          value={wanted.cards}
          min={1}
          max={MOST.cards}
          onChange={(cards) => onChange({ ...wanted, cards })}
        />
        <Stepper
          label="At most minutes a day"
          value={wanted.minutes}
          min={1}
          max={MOST.minutes}
          onChange={(minutes) => onChange({ ...wanted, minutes })}
        />
      </div>
      <p className={problem ? "field-problem" : "hint"}>
        {problem ?? `${counted(stock, "card waits", "cards wait")} in the stock.`}
      </p>
    </>
  );
}

function ReadyAnswer(props: { readonly plan: DeadlinePlan; readonly wish: Wish; readonly stale: boolean }) {
  const { plan, wish, stale } = props;
  const gentle = gentleWords(plan);
  return (
    <div data-stale={stale ? "" : undefined}>
      {readyWords(plan, wish).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {gentle ? <p>{gentle}</p> : null}
    </div>
  );
}

/** Buttons that take a pace and its last day into the plan. */
function TakeOver({ plan, take }: { readonly plan: DeadlinePlan; readonly take: ReadyProps["take"] }) {
  const choose = ({ each, last }: DeadlineChoice): void => take({ kind: "steady", each, until: last });
  const { best, gentle } = plan;
  const words = ({ each, last }: DeadlineChoice): string =>
    `Plan with ${each} a day until ${last === null ? "" : shortDate(last)}`;
  return (
    <div className="row">
      <button type="button" className="primary" onClick={() => choose(best)}>
        {words(best)}
      </button>
      {gentleWords(plan) ? (
        <button type="button" onClick={() => choose(gentle)}>
          {words(gentle)}
        </button>
      ) : null}
    </div>
  );
}
