// Pressing days of the calendar: what becomes of the rest days.
import { useCallback, useEffect, useRef, useState } from "react";
import { isoWeekday, type LocalDate } from "../../../core/calendar/local-date.ts";
import { WEEKDAYS } from "../../words.ts";
import type { PlanDraft } from "../plan-draft.ts";
import { between, inRanges, withoutRest, withRest } from "./rest-ranges.ts";

/** Which days nobody practises on. */
export type Rest = Pick<PlanDraft, "restWeekdays" | "restDates">;

/** What pressing a day (`ranged`: and all since the last one) or a weekday does, and a note where it does nothing. */
export function useRestToggles(rest: Rest, change: (part: Partial<Rest>) => void) {
  const now = useRef(rest);
  useEffect(() => {
    now.current = rest;
  });
  const pressed = useRef<{ readonly date: LocalDate; readonly rest: boolean } | null>(null);
  const [note, setNote] = useState("");
  const onDay = useCallback(
    (date: LocalDate, ranged: boolean) => {
      const { restWeekdays, restDates } = now.current;
      const weekday = WEEKDAYS[isoWeekday(date) - 1];
      if (restWeekdays.includes(isoWeekday(date))) {
        setNote(`You rest every ${weekday}. Press the weekday’s name above to practise on it again.`);
        return;
      }
      const before = ranged ? pressed.current : null;
      const resting = before ? before.rest : !inRanges(restDates, date);
      const range = between(before?.date ?? date, date);
      pressed.current = { date, rest: resting };
      setNote("");
      change({ restDates: resting ? withRest(restDates, range) : withoutRest(restDates, range) });
    },
    [change],
  );
  const onWeekday = useCallback(
    (weekday: number) => {
      const { restWeekdays } = now.current;
      const next = restWeekdays.includes(weekday)
        ? restWeekdays.filter((one) => one !== weekday)
        : [...restWeekdays, weekday].sort();
      setNote(next.length === WEEKDAYS.length ? "At least one weekday must be left for practice." : "");
      if (next.length < WEEKDAYS.length) change({ restWeekdays: next });
    },
    [change],
  );
  return { note, onDay, onWeekday };
}
