// Dates without a clock: a calendar date is a string, an instant is milliseconds since 1970 UTC.

/** A calendar date as ISO 8601 writes it, 2026-03-14; compares as text. */
export type LocalDate = string;

const DAY_MS = 86_400_000;

/** Days from 1970-01-01 to `date`. */
export const dateToDayNumber = (date: LocalDate): number => Math.round(Date.parse(`${date}T00:00:00Z`) / DAY_MS);

/** The date that many days after 1970-01-01. */
export const dayNumberToDate = (number: number): LocalDate => new Date(number * DAY_MS).toISOString().slice(0, 10);

/** The date `days` later (earlier if negative). */
export const addDays = (date: LocalDate, days: number): LocalDate => dayNumberToDate(dateToDayNumber(date) + days);

/** Whole days from `from` to `to`. */
export const daysBetween = (from: LocalDate, to: LocalDate): number => dateToDayNumber(to) - dateToDayNumber(from);

/** Day of the week as ISO 8601 counts it: 1 Monday … 7 Sunday. */
export const isoWeekday = (date: LocalDate): number => ((((dateToDayNumber(date) + 3) % 7) + 7) % 7) + 1;

/** Whether a text is a date of the calendar, written 2026-03-14. */
export function isLocalDate(text: string): boolean {
  return (
    /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(Date.parse(`${text}T00:00:00Z`)) && addDays(text, 0) === text
  );
}

/** Whether the platform knows a time zone by this IANA name. */
export function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat("en", { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

/**
 * The date on which an instant falls for somebody in `timeZone` whose day begins at `rollOverHour`
 * on the wall clock: with hour 4, 03:59 still belongs to the day before, across clock changes too.
 */
export function localDateAt(instant: number, timeZone: string, rollOverHour: number): LocalDate {
  const parts = new Map(
    formatter(timeZone)
      .formatToParts(instant)
      .map((part) => [part.type, part.value]),
  );
  const date = `${parts.get("year")}-${parts.get("month")}-${parts.get("day")}`;
  return Number(parts.get("hour")) < rollOverHour ? addDays(date, -1) : date;
}

/** The last instant of a date, as `localDateAt` counts dates, to the millisecond. */
export function lastInstantOf(date: LocalDate, timeZone: string, rollOverHour: number): number {
  // No zone is more than 14 hours ahead of UTC, nor more than 12 behind.
  let within = Date.parse(`${date}T00:00:00Z`) - DAY_MS;
  let beyond = within + 4 * DAY_MS;
  while (beyond - within > 1) {
    const middle = Math.floor((within + beyond) / 2);
    if (localDateAt(middle, timeZone, rollOverHour) <= date) within = middle;
    else beyond = middle;
  }
  return within;
}

const formatters = new Map<string, Intl.DateTimeFormat>();

function formatter(timeZone: string): Intl.DateTimeFormat {
  const known = formatters.get(timeZone);
  if (known) return known;
  const made = new Intl.DateTimeFormat("en-CA", {
    timeZone,
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    hourCycle: "h23",
  });
  formatters.set(timeZone, made);
  return made;
}
