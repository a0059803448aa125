// What is read off a year's load: its worst day, its mean day, its months.
import type { LocalDate } from "../../../core/calendar/local-date.ts";
import type { Spread } from "../../../core/load/exact-load.ts";
import type { PlanDay } from "../../../core/load/plan-load.ts";
import type { LoadUnit } from "../workers/mix-worker.ts";

/** A day's work in the unit that is shown. */
export const spreadIn = (day: PlanDay, unit: LoadUnit): Spread => (unit === "cards" ? day.reviews : day.minutes);

/** Place of the day with the largest mean, the first of equals; 0 where there is no day. */
export const worstAt = (days: readonly PlanDay[], unit: LoadUnit): number =>
  days.reduce((worst, day, i) => (spreadIn(day, unit).mean > meanAt(days, worst, unit) ? i : worst), 0);

const meanAt = (days: readonly PlanDay[], at: number, unit: LoadUnit): number => {
  const day = days[at];
  return day ? spreadIn(day, unit).mean : 0;
};

/** The sittings of some days, taken together. */
export interface Sum {
  readonly sittings: number;
  /** Means of a sitting. */
  readonly cards: number;
  readonly minutes: number;
  readonly newCards: number;
  /** Cards from and to on nine sittings in ten. */
  readonly most: readonly [number, number];
  /** The day with the most minutes; null where nobody sits. */
  readonly worst: PlanDay | null;
}

/** Share of the days that is left out at either end of "most days". */
const LEFT_OUT = 0.05;

/** Takes days together; rest days and missed days do not count. */
export function sumUp(days: readonly PlanDay[]): Sum {
  const sat = days.filter(({ kind }) => kind === "sitting");
  const mean = (of: (day: PlanDay) => number): number =>
    sat.length === 0 ? 0 : sat.reduce((sum, day) => sum + of(day), 0) / sat.length;
  const sorted = sat.map((day) => day.reviews.mean).sort((a, b) => a - b);
  const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))] ?? 0;
  return {
    sittings: sat.length,
    cards: mean((day) => day.reviews.mean),
    minutes: mean((day) => day.minutes.mean),
    newCards: mean((day) => day.newCards),
    most: [at(LEFT_OUT), at(1 - LEFT_OUT)],
    worst: sat[worstAt(sat, "minutes")] ?? null,
  };
}

/** A calendar month, or the part of it that is looked at. */
export interface MonthPart {
  /** As in 2026-11. */
  readonly month: string;
  /** Place of its first day. */
  readonly first: number;
  readonly days: number;
}

/** The months that some dates, one after the other, run through. */
export function monthParts(dates: readonly { readonly date: LocalDate }[]): readonly MonthPart[] {
  const parts: MonthPart[] = [];
  for (const [i, { date }] of dates.entries()) {
    const month = date.slice(0, 7);
    const last = parts.at(-1);
    if (last?.month === month) parts[parts.length - 1] = { ...last, days: last.days + 1 };
    else parts.push({ month, first: i, days: 1 });
  }
  return parts;
}

/** The place one month later (1) or earlier (-1): the same day of the month, or its last if that is shorter. */
export function monthLeap(dates: readonly { readonly date: LocalDate }[], at: number, direction: 1 | -1): number {
  const parts = monthParts(dates);
  const here = parts.findIndex(({ first, days }) => at >= first && at < first + days);
  const there = parts[here + direction];
  const day = Number(dates[at]?.date.slice(8) ?? 1);
  if (!there) return direction === 1 ? dates.length - 1 : 0;
  const firstDay = Number(dates[there.first]?.date.slice(8) ?? 1);
  return there.first + Math.min(there.days - 1, Math.max(0, day - firstDay));
}
