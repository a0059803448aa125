// The load on dates, cards and minutes, against boxes that are lived through with chance: bundles, recall that differs
// by compartment, rest days, missed days under either policy, and cards that wait at the start.
import { describe, expect, it } from "vitest";
import { type Calendar, freshCalendar } from "../../src/core/calendar/calendar.ts";
import { addDays } from "../../src/core/calendar/local-date.ts";
import { type PlanDay, planLoad } from "../../src/core/load/plan-load.ts";
import { type LivedDate, liveBoxes } from "../support/lived-boxes.ts";

const BOXES = 20_000;

/** Standard errors that a fair sample may depart: one in 1.7 million does so by more than five. */
const ERRORS = 5;

/** A Monday. */
const START = "2026-03-16";
const DATES = 42;

const COMPARTMENTS = [
  { period: 1, bundles: 1, offset: 0 },
  { period: 2, bundles: 1, offset: 1 },
  { period: 6, bundles: 3, offset: 4 },
  { period: 18, bundles: 9, offset: 3 },
] as const;
const RECALL = [0.8, 0.85, 0.93, 0.7] as const;
const WAITING = [
  { compartment: 1, due: 1, count: 4 },
  // Visited on even days; bundle 1 of compartment 4 on days 3, 21 …
  { compartment: 3, due: 6, count: 9 },
  { compartment: 4, due: 3, count: 12 },
] as const;
const SECONDS = { recalled: 8, missed: 20, fresh: 45 } as const;
const NEW = 5;
const MISSED = [8, 9, 10, 22] as const;
const LEVELS = [0.05, 0.95] as const;

/** Every Sunday. */
const isRest = (i: number): boolean => i % 7 === 6;

const planned = (policy: Calendar["policy"]): readonly PlanDay[] =>
  planLoad({
    chart: { compartments: COMPARTMENTS },
    recall: RECALL,
    waiting: WAITING,
    calendar: { ...freshCalendar(START), restWeekdays: [7], policy },
    last: null,
    from: START,
    dates: DATES,
    missed: MISSED.map((i) => addDays(START, i)),
    schedule: { kind: "steady", each: NEW },
    stock: null,
    pace: SECONDS,
    quantiles: LEVELS,
  });

const lived = (policy: Calendar["policy"]): readonly LivedDate[] =>
  liveBoxes({
    compartments: COMPARTMENTS,
    recall: RECALL,
    dates: Array.from({ length: DATES }, (_, i) =>
      isRest(i) ? "rest" : MISSED.some((one) => one === i) ? "missed" : "sitting",
    ),
    goesOn: policy === "chart-goes-on",
    waiting: WAITING,
    newPerSitting: NEW,
    seconds: [SECONDS.recalled, SECONDS.missed, SECONDS.fresh],
    boxes: BOXES,
    seed: 20_260_316,
  });

const meanOf = (values: Float64Array, of: (value: number) => number): number =>
  values.reduce((sum, value) => sum + of(value), 0) / values.length;

function expectSampled(values: Float64Array, exact: PlanDay["reviews"]): void {
  const mean = meanOf(values, (value) => value);
  expect(Math.abs(mean - exact.mean)).toBeLessThanOrEqual((ERRORS * exact.sd) / Math.sqrt(BOXES) + 1e-9);
  const variance = meanOf(values, (value) => (value - mean) ** 2);
  const fourth = meanOf(values, (value) => (value - mean) ** 4);
  expect(Math.abs(variance - exact.sd ** 2)).toBeLessThanOrEqual(
    ERRORS * Math.sqrt((fourth - variance ** 2) / BOXES) + 1e-9,
  );
  const share = (most: number): number => meanOf(values, (value) => (value <= most ? 1 : 0));
  const error = ERRORS * Math.sqrt((0.05 * 0.95) / BOXES);
  for (const [i, level] of LEVELS.entries()) {
    const reached = exact.quantiles[i] ?? Number.NaN;
    // Minutes are sums of doubles; a hundredth of a second is less than any step between two of them.
    const grain = 0.01 / 60;
    expect(share(reached + grain)).toBeGreaterThanOrEqual(level - error);
    expect(share(reached - grain)).toBeLessThan(level + error);
  }
}

describe.each(["chart-waits", "chart-goes-on"] as const)(
  "twenty thousand boxes lived through where the %s",
  (policy) => {
    const load = planned(policy);
    const dates = lived(policy);

    it("meet the exact cards of each date: mean, spread and quantiles", () => {
      for (const [i, { reviews }] of dates.entries()) expectSampled(reviews, (load[i] as PlanDay).reviews);
      // The dates are no matter of course.
      expect(Math.max(...load.map(({ reviews }) => reviews.sd))).toBeGreaterThan(3);
    });

    it("meet the exact minutes of each date", () => {
      for (const [i, { minutes }] of dates.entries()) expectSampled(minutes, (load[i] as PlanDay).minutes);
    });
  },
);
