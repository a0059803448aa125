// What missing some days would cost: the days after them.
import { addDays, daysBetween, type LocalDate } from "../../../core/calendar/local-date.ts";
import type { PlanDay } from "../../../core/load/plan-load.ts";

/** Most days that can be missed on trial. */
export const MOST_MISSED = 120;

/** Days after the missed ones that are looked at for the worst. */
const AFTER = 28;

/** Sittings after the missed days that are drawn. */
const DRAWN = 14;

/** Dates from `from` to `to`, both included; none if either is empty, at most `MOST_MISSED`. */
export function datesFrom(from: LocalDate, to: LocalDate): readonly LocalDate[] {
  if (from === "" || to === "" || to < from) return [];
  const count = Math.min(MOST_MISSED, daysBetween(from, to) + 1);
  return Array.from({ length: count }, (_, i) => addDays(from, i));
}

/** What awaits somebody who comes back. */
export interface Return {
  /** The first sitting; null if there is none in the days looked at. */
  readonly first: PlanDay | null;
  /** The one with the most minutes within four weeks. */
  readonly worst: PlanDay | null;
  /** Expected cards of the first sittings. */
  readonly ahead: readonly number[];
}

/** The days after the last of those that were missed. */
export function comingBack(days: readonly PlanDay[]): Return {
  const last = days.findLastIndex(({ kind }) => kind === "missed");
  const after = days.slice(last + 1).filter(({ kind }) => kind === "sitting");
  const first = after[0] ?? null;
  const near = first === null ? [] : after.filter(({ date }) => daysBetween(first.date, date) < AFTER);
  const worst = near.reduce<PlanDay | null>(
    (most, day) => (most && most.minutes.mean >= day.minutes.mean ? most : day),
    null,
  );
  return { first, worst, ahead: after.slice(0, DRAWN).map(({ reviews }) => reviews.mean) };
}
