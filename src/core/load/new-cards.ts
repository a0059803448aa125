// How many new cards are introduced when.
import { isoWeekday, type LocalDate } from "../calendar/local-date.ts";
import type { DatedDay } from "./dated-days.ts";

/** A pace at which new cards come: the same at every sitting, by weekday, or sitting by sitting. */
export type NewCardSchedule =
  | { readonly kind: "steady"; readonly each: number; readonly until?: LocalDate | null }
  /** `each` has seven numbers, Monday first. */
  | { readonly kind: "weekdays"; readonly each: readonly number[]; readonly until?: LocalDate | null }
  /** For the first sitting, the second …; none after the list. */
  | { readonly kind: "list"; readonly each: readonly number[] };

/**
 * New cards on each date: none on rest days and missed days, none after the schedule's last date, and none once the
 * stock is used up (`stock` null: it never is).
 */
export function introductions(
  schedule: NewCardSchedule,
  days: readonly DatedDay[],
  stock: number | null,
): readonly number[] {
  let left = stock ?? Number.POSITIVE_INFINITY;
  let sitting = 0;
  return days.map(({ date, kind }) => {
    if (kind !== "sitting") return 0;
    const count = Math.min(left, wanted(schedule, date, sitting++));
    left -= count;
    return count;
  });
}

function wanted(schedule: NewCardSchedule, date: LocalDate, sitting: number): number {
  if (schedule.kind === "list") return schedule.each[sitting] ?? 0;
  if (schedule.until && date > schedule.until) return 0;
  return schedule.kind === "steady" ? schedule.each : (schedule.each[isoWeekday(date) - 1] ?? 0);
}
