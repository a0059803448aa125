import { expect, test } from "vitest";
import { LEVELLED_CHART, plainChart } from "../../../core/chart/make-chart.ts";
import { type PlanDay, type PlanQuestion, planLoad } from "../../../core/load/plan-load.ts";
import { sliceLoad } from "./load-slices.ts";
import { createPreparer } from "./prepare-load.ts";

const QUESTION: PlanQuestion = {
  chart: LEVELLED_CHART,
  recall: LEVELLED_CHART.compartments.map(() => 0.9),
  waiting: [{ compartment: 3, due: 4, count: 30 }],
  calendar: {
    timeZone: "Europe/Lisbon",
    rollOverHour: 4,
    restWeekdays: [7],
    restDates: [{ from: "2026-12-24", to: "2026-12-26" }],
    policy: "chart-goes-on",
    anchor: { date: "2026-11-25", day: 1 },
  },
  last: null,
  from: "2026-11-25",
  dates: 120,
  missed: ["2026-12-01", "2026-12-02"],
  schedule: { kind: "steady", each: 12 },
  stock: null,
  pace: { recalled: 6, missed: 22.2, fresh: 14.2 },
  quantiles: [0.05, 0.95],
};

/** 5 % and 95 % of a normal distribution in standard deviations (tables). */
const REACHES = [-1.644854, 1.644854];

/** The normal distribution is some one card off in a sum of many cards; two leave room for small sums. */
const ROUGH_CARDS = 2;

/** Sums over hundreds of cohorts, added up in another order: a few units in the last place each. */
const ROUNDING = 1e-9;

const sliced = (question: PlanQuestion, prepare = createPreparer()) => sliceLoad(question, prepare(question), REACHES);

/** The whole load, worked out slice by slice. */
function inSlices(question: PlanQuestion, prepare = createPreparer()): readonly PlanDay[] {
  const load = sliced(question, prepare);
  while (load.next());
  return load.exact();
}

function expectSame(days: readonly PlanDay[], right: readonly PlanDay[]): void {
  expect(days).toHaveLength(right.length);
  for (const [i, day] of days.entries()) {
    const other = right[i];
    if (!other) throw new Error("a day is missing");
    expect({ ...day, reviews: 0, minutes: 0, misses: 0 }).toEqual({ ...other, reviews: 0, minutes: 0, misses: 0 });
    expect(Math.abs(day.misses - other.misses)).toBeLessThan(ROUNDING);
    for (const unit of ["reviews", "minutes"] as const) {
      expect(Math.abs(day[unit].mean - other[unit].mean)).toBeLessThan(ROUNDING);
      expect(Math.abs(day[unit].sd - other[unit].sd)).toBeLessThan(ROUNDING);
      expect(day[unit].quantiles).toEqual(other[unit].quantiles);
    }
  }
}

test("slice by slice comes out what the whole load is", () => {
  expectSame(inSlices(QUESTION), planLoad(QUESTION));
});

test("the first helping has the exact means and spreads, and quantiles a card or two off", () => {
  const right = planLoad(QUESTION);
  const { first } = sliced(QUESTION);
  const quantilesOf = (days: readonly PlanDay[]) => days.flatMap(({ reviews }) => reviews.quantiles);
  const exact = quantilesOf(right);
  const off = quantilesOf(first).map((value, i) => Math.abs(value - (exact[i] ?? Number.NaN)));
  expect(Math.max(...off)).toBeLessThanOrEqual(ROUGH_CARDS);
  expect(Math.max(...off)).toBeGreaterThan(0);
  expectSame(
    first.map((day, i) => withQuantilesOf(day, right[i])),
    right,
  );
});

const withQuantilesOf = (day: PlanDay, other: PlanDay | undefined): PlanDay => ({
  ...day,
  reviews: { ...day.reviews, quantiles: other?.reviews.quantiles ?? [] },
  minutes: { ...day.minutes, quantiles: other?.minutes.quantiles ?? [] },
});

test("what is remembered of one question never leaks into the next", () => {
  const prepare = createPreparer();
  const others: readonly PlanQuestion[] = [
    { ...QUESTION, schedule: { kind: "steady", each: 0 } },
    { ...QUESTION, schedule: { kind: "weekdays", each: [1, 2, 3, 0, 5, 0, 0], until: "2027-01-10" } },
    { ...QUESTION, stock: 100 },
    { ...QUESTION, waiting: [{ compartment: 2, due: 9, count: 11 }] },
    { ...QUESTION, recall: QUESTION.recall.map(() => 0.7) },
    { ...QUESTION, chart: plainChart(7) },
    { ...QUESTION, missed: [] },
    { ...QUESTION, calendar: { ...QUESTION.calendar, policy: "chart-waits" } },
    { ...QUESTION, from: "2026-12-03" },
    { ...QUESTION, pace: { recalled: 8, missed: 20, fresh: 45 } },
    QUESTION,
  ];
  for (const question of others) expectSame(inSlices(question, prepare), planLoad(question));
});
