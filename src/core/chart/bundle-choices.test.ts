import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chartWithRecall, periodsWithin } from "../../../tests/support/short-cycle.ts";
import {
  bundleChoices,
  compartmentsOf,
  divisors,
  leastPeak,
  levelledBundles,
  nearbyChoices,
} from "./bundle-choices.ts";
import { checkChart } from "./chart.ts";
import { doublingPeriods } from "./make-chart.ts";
import { steadyLoad } from "./steady-load.ts";

/** Relative: rounding, and the tolerance of a steady load. */
const ROUNDING = 1e-9;

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

const anyQuestion = periodsWithin(24, 4).chain((periods) =>
  fc.record({
    periods: fc.constant(periods),
    recall: fc.constant(periods.map(() => 0.9)),
    tabs: fc.integer({ min: periods.length, max: 40 }),
  }),
);

/** Every choice of bundles, without regard for tabs. */
const everyChoice = (periods: readonly number[]): readonly (readonly number[])[] =>
  periods.reduce<readonly (readonly number[])[]>(
    (all, period) => all.flatMap((chosen) => divisors(period).map((size) => [...chosen, size])),
    [[]],
  );

describe("divisors", () => {
  it("are 1, 2, 3, 4, 6 and 12 for 12 days", () => {
    expect(divisors(12)).toEqual([1, 2, 3, 4, 6, 12]);
  });
});

describe("the least peak of bundles", () => {
  it("is not undercut by any chart", () => {
    fc.assert(
      fc.property(chartWithRecall(5, 0.3), ({ chart, recall }) => {
        const question = { periods: chart.compartments.map(({ period }) => period), recall, tabs: 999 };
        const bundles = chart.compartments.map((one) => one.bundles);
        const { peak } = steadyLoad(chart, recall);
        expect(leastPeak(question, bundles)).toBeLessThanOrEqual(peak * (1 + ROUNDING));
      }),
    );
  });

  // By hand, recalls 1/2, periods 1, 2 and 8: 2 cards a day in the third compartment come on one day in eight, and
  // compartment 1 has its new card.
  it("is 2 · 8 + 1 for one bundle in the third of three compartments", () => {
    const question = { periods: [1, 2, 8], recall: [0.5, 0.5, 0.5], tabs: 3 };
    expect(leastPeak(question, [1, 1, 1])).toBe(17);
    expect(leastPeak(question, [1, 2, 8])).toBe(14);
  });
});

describe("the choices of bundles", () => {
  it("are all those within the tabs whose least peak is below the limit", () => {
    fc.assert(
      fc.property(anyQuestion, fc.double({ min: 2, max: 80, noNaN: true }), (question, limit) => {
        const mean = leastPeak(question, question.periods);
        const wanted = everyChoice(question.periods).filter(
          (bundles) => sum(bundles) <= question.tabs && leastPeak(question, bundles) < limit,
        );
        const { choices, complete } = bundleChoices(question, limit, 100_000);
        expect(complete).toBe(true);
        // Below the mean there is nothing to find, and a choice may be listed or not.
        if (limit > mean)
          expect(choices.map((one) => one.join()).sort()).toEqual(wanted.map((one) => one.join()).sort());
      }),
    );
  });

  it("say so when there are more than were asked for", () => {
    const question = { periods: doublingPeriods(7), recall: Array(7).fill(0.9), tabs: 127 };
    const some = bundleChoices(question, Number.POSITIVE_INFINITY, 10);
    expect(some.complete).toBe(false);
    expect(some.choices).toHaveLength(10);
    // 1 · 2 · 3 · 4 · 5 · 6 · 7 ways to divide doubling periods.
    expect(bundleChoices(question, Number.POSITIVE_INFINITY, 6_000).choices).toHaveLength(5_040);
  });

  it("near one choice differ from it, divide the periods and keep within the tabs", () => {
    fc.assert(
      fc.property(anyQuestion, fc.integer({ min: 1, max: 200 }), (question, most) => {
        const start = question.periods.map(() => 1);
        const near = nearbyChoices(question, start, most);
        expect(near.length).toBeLessThanOrEqual(most);
        expect(new Set(near.map((one) => one.join())).size).toBe(near.length);
        expect(near[0]).toEqual(start);
        for (const bundles of near) {
          expect(sum(bundles)).toBeLessThanOrEqual(question.tabs);
          expect(checkChart({ compartments: compartmentsOf(question.periods, bundles, []) }).ok).toBe(true);
        }
      }),
    );
  });

  it("near one choice are in the end all that the tabs allow", () => {
    const question = { periods: doublingPeriods(5), recall: Array(5).fill(0.9), tabs: 14 };
    const all = bundleChoices(question, Number.POSITIVE_INFINITY, 1_000).choices;
    expect(nearbyChoices(question, [1, 1, 1, 1, 1], 1_000)).toHaveLength(all.length);
  });
});

describe("levelled bundles", () => {
  it("divide the periods, keep within the tabs and leave no tab that could be used", () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const bundles = levelledBundles(question);
        const left = question.tabs - sum(bundles);
        expect(left).toBeGreaterThanOrEqual(0);
        question.periods.forEach((period, k) => {
          const own = bundles[k] ?? 0;
          expect(period % own).toBe(0);
          const next = divisors(period).find((size) => size > own);
          expect(next === undefined || next - own > left).toBe(true);
        });
      }),
    );
  });

  it("are 1, 1, 1, 1, 2, 4, 8 for seven doubling periods and eighteen tabs", () => {
    const question = { periods: doublingPeriods(7), recall: Array(7).fill(0.9), tabs: 18 };
    expect(levelledBundles(question)).toEqual([1, 1, 1, 1, 2, 4, 8]);
  });
});
