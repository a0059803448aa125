// The dates ahead and what each is: a sitting with its box day, a planned rest day, or a day that will be missed.
import { type Calendar, type DayMark, daysAhead } from "../calendar/calendar.ts";
import { addDays, type LocalDate } from "../calendar/local-date.ts";
import type { BoxDay } from "../chart/chart.ts";

/** One date ahead. */
export interface DatedDay {
  readonly date: LocalDate;
  readonly kind: "sitting" | "rest" | "missed";
  /** The box day written on it; null on rest days, and on missed days while the chart waits. */
  readonly day: BoxDay | null;
}

/** Which dates are looked at. */
export interface Dates {
  readonly calendar: Calendar;
  /** The last sitting before or on `from`; null before the first. */
  readonly last: DayMark | null;
  readonly from: LocalDate;
  /** How many dates, `from` included. */
  readonly dates: number;
  /** Dates on which nobody will sit though they are no rest days. */
  readonly missed?: readonly LocalDate[];
}

/**
 * What each date is if all others are kept. A chart that waits treats a missed day as if it did not exist; one that
 * goes on numbers it, and what was due is asked at the next sitting.
 */
export function datedDays({ calendar, last, from, dates, missed = [] }: Dates): readonly DatedDay[] {
  const gone = new Set(missed);
  const rest = daysAhead(calendar, from, last, dates);
  const waits = calendar.policy === "chart-waits";
  const skipped = {
    ...calendar,
    restDates: [...calendar.restDates, ...missed.map((date) => ({ from: date, to: date }))],
  };
  const days = waits && missed.length > 0 ? daysAhead(skipped, from, last, dates) : rest;
  return rest.map((planned, i) => {
    const date = addDays(from, i);
    const kind = planned === null ? "rest" : gone.has(date) ? "missed" : "sitting";
    return { date, kind, day: days[i] ?? null };
  });
}
