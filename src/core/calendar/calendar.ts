// From dates to box days: rest days, missed days, and the two ways to treat them.
import type { BoxDay } from "../chart/chart.ts";
import { addDays, daysBetween, isoWeekday, type LocalDate } from "./local-date.ts";

/**
 * What happens to the numbers on the calendar when a day is missed. With `chart-waits` they move only
 * when there is a sitting; with `chart-goes-on` they move every day that is not a rest day, and the
 * next sitting visits, once, everything that fell due.
 */
export type MissedDayPolicy = "chart-waits" | "chart-goes-on";

/** Dates from `from` to `to`, both included. */
export interface DateRange {
  readonly from: LocalDate;
  readonly to: LocalDate;
}

/** How one learner's days run. */
export interface Calendar {
  /** IANA name, Europe/Lisbon. */
  readonly timeZone: string;
  /** Hour of the wall clock, 0…23, at which a new day of practice begins. */
  readonly rollOverHour: number;
  /** Weekdays without practice, 1 Monday … 7 Sunday. */
  readonly restWeekdays: readonly number[];
  /** Single dates and holidays without practice. */
  readonly restDates: readonly DateRange[];
  readonly policy: MissedDayPolicy;
  /** A date whose box day is settled: the start, or the last sitting before a change of settings. */
  readonly anchor: DayMark;
}

/** A date and the box day that was written on it. */
export interface DayMark {
  readonly date: LocalDate;
  readonly day: BoxDay;
}

/**
 * The calendar of a box whose day 1 is `start`: no rest days, and the chart waits. Zone and hour only matter to whoever
 * asks a clock.
 */
export const freshCalendar = (start: LocalDate, timeZone = "UTC", rollOverHour = 0): Calendar => ({
  timeZone,
  rollOverHour,
  restWeekdays: [],
  restDates: [],
  policy: "chart-waits",
  anchor: { date: start, day: 1 },
});

/** Whether a date is a planned rest day. */
export const isRestDay = (calendar: Calendar, date: LocalDate): boolean =>
  calendar.restWeekdays.includes(isoWeekday(date)) ||
  calendar.restDates.some((range) => range.from <= date && date <= range.to);

/** How many dates after `after`, up to and including `until`, are not rest days. */
export function workingDays(calendar: Calendar, after: LocalDate, until: LocalDate): number {
  const span = daysBetween(after, until);
  let count = 0;
  for (let i = 1; i <= span; i++) if (!isRestDay(calendar, addDays(after, i))) count++;
  return count;
}

/**
 * The box day of a date on which somebody sits down, given the last sitting before or on it.
 * Never less than the day of that sitting, so days only move forward.
 */
export function boxDayOn(calendar: Calendar, date: LocalDate, last: DayMark | null): BoxDay {
  if (last && date <= last.date) return last.day;
  if (calendar.policy === "chart-waits") return last ? last.day + 1 : calendar.anchor.day;
  const day = calendar.anchor.day + workingDays(calendar, calendar.anchor.date, date);
  return Math.max(day, last?.day ?? calendar.anchor.day);
}

/**
 * The last sitting moved on over days on which there was nothing to do: with a chart that waits they pass by
 * themselves, or a box in which nothing is due would wait for ever. `firstWork` is the first box day on
 * which anything is due, infinite if nothing ever is. `date` itself does not pass.
 */
export function passIdleDays(calendar: Calendar, date: LocalDate, last: DayMark, firstWork: BoxDay): DayMark {
  if (calendar.policy !== "chart-waits") return last;
  let mark = last;
  for (let next = addDays(last.date, 1); next < date && mark.day + 1 < firstWork; next = addDays(next, 1)) {
    if (!isRestDay(calendar, next)) mark = { date: next, day: mark.day + 1 };
  }
  return mark;
}

/** Dates since the last sitting (or the start) that were neither practised nor rest days; `date` itself not counted. */
export function missedDays(calendar: Calendar, date: LocalDate, last: DayMark | null): number {
  if (last) return Math.max(0, workingDays(calendar, last.date, addDays(date, -1)));
  const { anchor } = calendar;
  return date <= anchor.date ? 0 : workingDays(calendar, addDays(anchor.date, -1), addDays(date, -1));
}

/** The calendar after a change of settings, with the days already sat left as they were numbered. */
export function changeCalendar(
  calendar: Calendar,
  change: Partial<Omit<Calendar, "anchor">>,
  last: DayMark | null,
): Calendar {
  return { ...calendar, ...change, anchor: last ?? calendar.anchor };
}

/**
 * Box days of the `count` dates from `from` on, if every day that is not a rest day is kept from now;
 * null on rest days. `last` is the last sitting before or on `from`.
 */
export function daysAhead(
  calendar: Calendar,
  from: LocalDate,
  last: DayMark | null,
  count: number,
): readonly (BoxDay | null)[] {
  const today = boxDayOn(calendar, from, last);
  // A waiting chart keeps its number for the next practice day if this is a rest day that nobody sat on.
  const unused = calendar.policy === "chart-waits" && isRestDay(calendar, from) && last?.date !== from;
  let day = unused ? today - 1 : today;
  return Array.from({ length: count }, (_, i) => {
    const date = addDays(from, i);
    if (isRestDay(calendar, date)) return null;
    if (i > 0) day++;
    return day;
  });
}
