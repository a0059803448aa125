// On which days, and at what hour, the learner of the demo box sat down.
import { type Calendar, isRestDay } from "../core/calendar/calendar.ts";
import { addDays, isoWeekday, type LocalDate } from "../core/calendar/local-date.ts";

/** How many days before today the demo box was set up. */
export const HISTORY_DAYS = 40;

/** Which of the days that were not rest days were missed, counted from 0. */
const MISSED = new Set([10, 23]);
const HOUR_MS = 3_600_000;

/** One weekday of rest, Sunday; Saturday if today is a Sunday, so that today there is something to do. */
export const restWeekdayFor = (today: LocalDate): number => (isoWeekday(today) === 7 ? 6 : 7);

/** The dates of the sittings, oldest first: from forty days ago to yesterday, rest days and missed days left out. */
export function practisedDates(calendar: Calendar, today: LocalDate): readonly LocalDate[] {
  const all = Array.from({ length: HISTORY_DAYS }, (_, i) => addDays(today, i - HISTORY_DAYS));
  return all.filter((date) => !isRestDay(calendar, date)).filter((_, i) => !MISSED.has(i));
}

/** The instant at which clocks in `timeZone` show this hour (fractions allowed) of a date. */
export function instantAt(date: LocalDate, hour: number, timeZone: string): number {
  const wall = Date.parse(`${date}T00:00:00Z`) + hour * HOUR_MS;
  const first = wall - offsetAt(wall, timeZone);
  // The offset may change between the two instants; the second look is at the right day.
  return wall - offsetAt(first, timeZone);
}

/** Milliseconds by which clocks in `timeZone` are ahead of UTC at an instant. */
function offsetAt(instant: number, timeZone: string): number {
  const second = Math.floor(instant / 1000) * 1000;
  const format = new Intl.DateTimeFormat("en-CA", {
    timeZone,
    hourCycle: "h23",
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
    second: "2-digit",
  });
  const part = new Map(format.formatToParts(second).map(({ type, value }) => [type, value]));
  const clock = `${part.get("year")}-${part.get("month")}-${part.get("day")}T${part.get("hour")}:${part.get("minute")}:${part.get("second")}Z`;
  return Date.parse(clock) - second;
}
