// The plan as a question in which the new cards are what is asked for.
import { useMemo } from "react";
import type { PlanView } from "../../app/views.ts";
import type { PlanQuestion } from "../../core/load/plan-load.ts";
import { type PlanDraft, questionOf } from "./plan-draft.ts";

/** The question without new cards of its own; it stays the same object while only the new cards of the plan change. */
export function useOpenQuestion(view: PlanView, draft: PlanDraft): PlanQuestion {
  const { chart, recall, restWeekdays, restDates, policy, missed, stockEnds } = draft;
  return useMemo(() => {
    const others = { chart, recall, restWeekdays, restDates, policy, missed, stockEnds };
    return questionOf(view, { ...others, schedule: { kind: "steady", each: 0 } });
  }, [view, chart, recall, restWeekdays, restDates, policy, missed, stockEnds]);
}
