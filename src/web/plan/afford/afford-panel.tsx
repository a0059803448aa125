// What can I afford? From minutes a day to new cards a day.
import { memo, useMemo, useState } from "react";
import type { PlanView } from "../../../app/views.ts";
import type { NewCardSchedule } from "../../../core/load/new-cards.ts";
import { counted } from "../../words.ts";
import { Dial } from "../dials/dial.tsx";
import { eachDay, steadily } from "../dials/schedule.ts";
import type { PlanDraft } from "../plan-draft.ts";
import { useOpenQuestion } from "../use-open-question.ts";
import { TaskState } from "../workers/task-state.tsx";
import { useAsked } from "../workers/use-asked.ts";
import { affordWords, daysInHundred } from "./afford-words.ts";

const MINUTES = { min: 5, max: 120, typed: 600, first: 30 } as const;
const LEVELS_OFFERED = [0.8, 0.9, 0.95, 0.99] as const;
const FIRST_LEVEL = 0.95;

interface AffordProps {
  readonly view: PlanView;
  readonly draft: PlanDraft;
  /** Takes a pace into the plan. */
  readonly take: (schedule: NewCardSchedule) => void;
}

/** The panel that turns minutes into a pace. */
export const AffordPanel = memo(function AffordPanel({ view, draft, take }: AffordProps) {
  const [minutes, setMinutes] = useState<number>(MINUTES.first);
  const [level, setLevel] = useState<number>(FIRST_LEVEL);
  const asked = useAsked("afford", useAffordQuestion(view, draft, minutes, level));
  const { answer, current } = asked;
  const answeredLevel = asked.task.answered?.limit.level ?? level;
  return (
    <section className="sheet" aria-labelledby="afford">
      <h2 id="afford">What can I afford?</h2>
      <p className="hint">
        The most new cards a day that keep every day of the coming year within your time. The days in 100 count chance
        alone{draft.recall === null ? ", with recall in the middle of what your box has measured" : ""}.
      </p>
      <Dial
        label="Minutes a day"
        value={minutes}
        min={MINUTES.min}
        max={MINUTES.max}
        most={MINUTES.typed}
        words={(value) => counted(value, "minute")}
        onChange={setMinutes}
      />
      <fieldset>
        <legend>Within that time</legend>
        <div className="chips">
          {LEVELS_OFFERED.map((one) => (
            <label key={one} className="chip">
              <input type="radio" name="level" checked={one === level} onChange={() => setLevel(one)} />
              {daysInHundred(one)}
            </label>
          ))}
        </div>
      </fieldset>
      <div className="answer" aria-live="polite" aria-busy={!current}>
        {answer ? <p data-stale={current ? undefined : ""}>{affordWords(answer, answeredLevel)}</p> : null}
      </div>
      <TaskState task={asked.task} what="what you can afford" waiting={asked.waiting} again={asked.again} />
      {answer && current && answer.within ? <PlanWith each={answer.each} draft={draft} take={take} /> : null}
    </section>
  );
});

function useAffordQuestion(view: PlanView, draft: PlanDraft, minutes: number, level: number) {
  const plan = useOpenQuestion(view, draft);
  return useMemo(() => ({ ...plan, limit: { minutes, level, pace: view.pace } }), [plan, minutes, level, view.pace]);
}

function PlanWith({ each, draft, take }: { readonly each: number } & Pick<AffordProps, "draft" | "take">) {
  const same = draft.schedule.kind === "steady" && eachDay(draft.schedule) === each;
  if (same) return <p className="hint">The plan above has {counted(each, "new card")} a day.</p>;
  return (
    <p>
      <button type="button" className="primary" onClick={() => take(steadily(draft.schedule, each))}>
        Plan with {each}
      </button>
    </p>
  );
}
