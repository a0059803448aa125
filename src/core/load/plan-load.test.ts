import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyChart } from "../../../tests/support/any-chart.ts";
import { anyRecall } from "../../../tests/support/any-load.ts";
import { boxDayOn, type Calendar, type DayMark, isRestDay } from "../calendar/calendar.ts";
import { addDays, type LocalDate } from "../calendar/local-date.ts";
import { arrival, compartmentCount } from "../chart/chart.ts";
import { plainChart } from "../chart/make-chart.ts";
import type { Waiting } from "./expected.ts";
import { DEFAULT_PACE } from "./minutes.ts";
import { type PlanQuestion, planLoad } from "./plan-load.ts";

/** Sums of some hundred products of chances and cards. */
const ROUNDING = 1e-9;

const START: LocalDate = "2026-03-14";
const DATES = 60;

const calendarFor = (policy: Calendar["policy"], restWeekdays: readonly number[]): Calendar => ({
  timeZone: "Europe/Lisbon",
  rollOverHour: 4,
  restWeekdays,
  restDates: [],
  policy,
  anchor: { date: START, day: 1 },
});

const anyPlan: fc.Arbitrary<PlanQuestion> = anyChart.chain((chart) =>
  fc
    .record({
      recall: anyRecall(chart, 0),
      policy: fc.constantFrom("chart-waits" as const, "chart-goes-on" as const),
      restWeekdays: fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { maxLength: 4 }),
      missed: fc.array(fc.nat(DATES - 1), { maxLength: 12 }),
      waiting: fc.array(
        fc.record<Waiting>({
          compartment: fc.integer({ min: 1, max: compartmentCount(chart) }),
          due: fc.integer({ min: 1, max: 30 }),
          count: fc.nat(20),
        }),
        { maxLength: 4 },
      ),
      each: fc.nat(9),
      stock: fc.option(fc.nat(100)),
    })
    .map(({ recall, policy, restWeekdays, missed, waiting, each, stock }) => ({
      chart,
      recall,
      calendar: calendarFor(policy, restWeekdays),
      last: null,
      from: START,
      dates: DATES,
      missed: missed.map((i) => addDays(START, i)),
      waiting,
      schedule: { kind: "steady", each },
      stock,
      pace: DEFAULT_PACE,
      quantiles: [],
    })),
);

/**
 * The mean by living through the dates one by one, as a box really does: on each date somebody sits on, the box day is
 * asked from the calendar and everything due is visited.
 */
function livedThrough({ chart, recall, calendar, missed = [], waiting, schedule, stock }: PlanQuestion) {
  let piles = gathered(waiting);
  let last: DayMark | null = null;
  let left = stock ?? Number.POSITIVE_INFINITY;
  return Array.from({ length: DATES }, (_, i) => {
    const date = addDays(START, i);
    if (isRestDay(calendar, date) || missed.includes(date)) return { reviews: 0, fresh: 0 };
    const day = boxDayOn(calendar, date, last);
    last = { date, day };
    const asked = piles.filter(({ due }) => due <= day);
    const fresh = Math.min(left, schedule.kind === "steady" ? schedule.each : 0);
    left -= fresh;
    const to = (k: number, count: number) => ({ compartment: k, due: arrival(chart, k, day).due, count });
    piles = gathered([
      ...piles.filter(({ due }) => due > day),
      ...asked.flatMap(({ compartment: k, count }) => [
        ...(k < compartmentCount(chart) ? [to(k + 1, count * (recall[k - 1] ?? 0))] : []),
        to(1, count * (1 - (recall[k - 1] ?? 0))),
      ]),
      to(1, fresh),
    ]);
    return { reviews: asked.reduce((sum, { count }) => sum + count, 0), fresh };
  });
}

/** Cards in one place and due on one day as one pile. */
function gathered(piles: readonly Waiting[]): Waiting[] {
  const byPlace = new Map<string, Waiting>();
  for (const pile of piles) {
    const key = `${pile.compartment} ${pile.due}`;
    byPlace.set(key, { ...pile, count: pile.count + (byPlace.get(key)?.count ?? 0) });
  }
  return [...byPlace.values()];
}

describe("the load on dates", () => {
  it("is what somebody meets who lives through them, with rest days, missed days and either policy", () => {
    fc.assert(
      fc.property(anyPlan, (question) => {
        const lived = livedThrough(question);
        for (const [i, { date, reviews, newCards }] of planLoad(question).entries()) {
          expect(date).toBe(addDays(START, i));
          expect(newCards).toBe(lived[i]?.fresh);
          const mean = lived[i]?.reviews ?? Number.NaN;
          expect(Math.abs(reviews.mean - mean)).toBeLessThan(ROUNDING * (1 + mean));
        }
      }),
      { numRuns: 60 },
    );
  });

  it("has nothing on rest days and missed days", () => {
    fc.assert(
      fc.property(anyPlan, (question) => {
        for (const { kind, newCards, reviews, minutes } of planLoad({ ...question, quantiles: [0.5] })) {
          if (kind === "sitting") continue;
          expect([newCards, reviews.mean, minutes.mean, ...reviews.quantiles, ...minutes.quantiles]).toEqual([
            0, 0, 0, 0, 0,
          ]);
        }
      }),
      { numRuns: 30 },
    );
  });

  // By hand: ten cards on Saturday; Sunday missed. The chart that waits asks compartment 1 on Monday, its day 2, the
  // one that goes on too, but on its day 3; recalled, they go to compartment 2, visited on odd days.
  it("differs by policy as the numbers on the calendar do", () => {
    const plan = (policy: Calendar["policy"]) =>
      planLoad({
        chart: plainChart(2),
        recall: [1, 1],
        calendar: calendarFor(policy, []),
        last: null,
        from: START,
        dates: 6,
        missed: [addDays(START, 1)],
        waiting: [],
        schedule: { kind: "list", each: [10] },
        stock: null,
        pace: DEFAULT_PACE,
        quantiles: [],
      }).map(({ day, reviews }) => [day, reviews.mean]);
    expect(plan("chart-waits")).toEqual([
      [1, 0],
      [null, 0],
      [2, 10],
      [3, 10],
      [4, 0],
      [5, 0],
    ]);
    expect(plan("chart-goes-on")).toEqual([
      [1, 0],
      [2, 0],
      [3, 10],
      [4, 0],
      [5, 10],
      [6, 0],
    ]);
  });
});
