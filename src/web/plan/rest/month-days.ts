// The days of a month as they stand on a calendar, Monday first.
import { addDays, isoWeekday, type LocalDate } from "../../../core/calendar/local-date.ts";

const DAYS_A_WEEK = 7;

/** A month on a calendar. */
export interface CalendarMonth {
  /** As in 2026-11. */
  readonly month: string;
  /** Weeks of seven places; null where the day belongs to another month. */
  readonly weeks: readonly (readonly (LocalDate | null)[])[];
}

/** So many months, beginning with that of `date`. */
export function monthsFrom(date: LocalDate, count: number): readonly CalendarMonth[] {
  const months: CalendarMonth[] = [];
  for (let first = `${date.slice(0, 7)}-01`; months.length < count; first = nextMonth(first)) {
    months.push({ month: first.slice(0, 7), weeks: weeksOf(first) });
  }
  return months;
}

/** The first of the month after a first of a month. */
const nextMonth = (first: LocalDate): LocalDate => `${addDays(first, 31).slice(0, 7)}-01`;

function weeksOf(first: LocalDate): CalendarMonth["weeks"] {
  const monday = addDays(first, 1 - isoWeekday(first));
  const end = nextMonth(first);
  const weeks: (LocalDate | null)[][] = [];
  for (let week = monday; week < end; week = addDays(week, DAYS_A_WEEK)) {
    const days = Array.from({ length: DAYS_A_WEEK }, (_, i) => addDays(week, i));
    weeks.push(days.map((day) => (day >= first && day < end ? day : null)));
  }
  return weeks;
}

/** The date that a key leads to on a calendar; null if the key means nothing there. */
export function keyDate(key: string, date: LocalDate): LocalDate | null {
  const weekday = isoWeekday(date);
  const steps: Readonly<Record<string, number>> = {
    ArrowLeft: -1,
    ArrowRight: 1,
    ArrowUp: -DAYS_A_WEEK,
    ArrowDown: DAYS_A_WEEK,
    Home: 1 - weekday,
    End: DAYS_A_WEEK - weekday,
  };
  const step = steps[key];
  if (step !== undefined) return addDays(date, step);
  if (key === "PageDown") return sameDay(date, nextMonth(`${date.slice(0, 7)}-01`));
  return key === "PageUp" ? sameDay(date, `${addDays(`${date.slice(0, 7)}-01`, -1).slice(0, 7)}-01`) : null;
}

/** The same day of another month, or its last if that is shorter. */
function sameDay(date: LocalDate, first: LocalDate): LocalDate {
  const last = addDays(nextMonth(first), -1);
  const same = `${first.slice(0, 8)}${date.slice(8)}`;
  return same > last ? last : same;
}
