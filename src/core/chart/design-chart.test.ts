import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { periodsWithin } from "../../../tests/support/short-cycle.ts";
import { compartmentsOf, divisors } from "./bundle-choices.ts";
import { checkChart, tabCount } from "./chart.ts";
import { type Design, type DesignQuestion, defaultBudget, designChart } from "./design-chart.ts";
import { doublingPeriods, spreadChart } from "./make-chart.ts";
import { steadyLoad } from "./steady-load.ts";

/** Relative: the designer takes nearer peaks than 1e-9 as the same, and a chain of such steps may lead a little upwards. */
const SAME = 1e-7;

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

function designed(question: DesignQuestion): Design {
  const design = designChart(question);
  if (!design.ok) throw new Error(design.error);
  return design.value;
}

const anyQuestion = fc
  .constantFrom(12, 16, 18, 60)
  .chain((cycle) => periodsWithin(cycle, 6))
  .chain((periods) =>
    fc.record({
      periods: fc.constant(periods),
      recall: fc.array(fc.double({ min: 0.6, max: 1, noNaN: true }), {
        minLength: periods.length,
        maxLength: periods.length,
      }),
      tabs: fc.integer({ min: periods.length, max: 30 }),
      budget: fc.integer({ min: 1, max: 400 }),
    }),
  );

/** Every way to take one of each list. */
const everyPick = (lists: readonly (readonly number[])[]): readonly (readonly number[])[] =>
  lists.reduce<readonly (readonly number[])[]>(
    (all, list) => all.flatMap((chosen) => list.map((one) => [...chosen, one])),
    [[]],
  );

/** The lowest peak there is, by trying every bundle and every offset. */
function lowestPeak({ periods, recall, tabs }: DesignQuestion): number {
  const offsets = everyPick(periods.map((period) => Array.from({ length: period }, (_, day) => day)));
  const bundles = everyPick(periods.map(divisors)).filter((chosen) => sum(chosen) <= tabs);
  const peaks = bundles.flatMap((chosen) =>
    offsets.map((days) => steadyLoad({ compartments: compartmentsOf(periods, chosen, days) }, recall).peak),
  );
  return peaks.reduce((least, peak) => Math.min(least, peak));
}

describe("a designed chart", () => {
  it("is a chart that a box may have, with the periods asked for and no more tabs or evaluations than allowed", () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const { chart, tabs, evaluations } = designed(question);
        expect(checkChart(chart).ok).toBe(true);
        expect(chart.compartments.map(({ period }) => period)).toEqual(question.periods);
        expect(tabs).toBe(tabCount(chart));
        expect(tabs).toBeLessThanOrEqual(question.tabs);
        expect(evaluations).toBeLessThanOrEqual(question.budget);
      }),
    );
  });

  it("has the load that it is said to have, between the lower bound and the spread chart with the same bundles", () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const { chart, mean, peak, peakToMean, lowerBound } = designed(question);
        const load = steadyLoad(chart, question.recall);
        expect([mean, peak, peakToMean]).toEqual([load.mean, load.peak, load.peakToMean]);
        expect(lowerBound).toBe(mean);
        expect(peak).toBeGreaterThanOrEqual(mean * (1 - SAME));
        const bundles = chart.compartments.map((one) => one.bundles);
        const spread = steadyLoad(spreadChart(question.periods, bundles), question.recall);
        expect(peak).toBeLessThanOrEqual(spread.peak * (1 + SAME));
      }),
    );
  });

  it("has no higher peak than any spread chart within the tabs", () => {
    fc.assert(
      fc.property(anyQuestion, fc.nat(), ({ budget: _, ...question }, pick) => {
        const { peak } = designed({ ...question, budget: 4_000 });
        const choices = everyPick(question.periods.map((period) => divisors(period).filter((size) => size <= 5)));
        const within = choices.filter((chosen) => sum(chosen) <= question.tabs);
        const bundles = within[pick % within.length] ?? [];
        const spread = steadyLoad(spreadChart(question.periods, bundles), question.recall);
        expect(peak).toBeLessThanOrEqual(spread.peak * (1 + SAME));
      }),
      { numRuns: 30 },
    );
  });

  it("is the best there is where everything can be tried, and says so", () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(1, 2, 3, 4, 6), { minLength: 1, maxLength: 3 }),
        fc.double({ min: 0.5, max: 1, noNaN: true }),
        fc.nat(6),
        (periods, p, more) => {
          const question = { periods, recall: periods.map(() => p), tabs: periods.length + more };
          const { peak, exact } = designed(question);
          expect(exact).toBe(true);
          expect(Math.abs(peak / lowestPeak(question) - 1)).toBeLessThan(SAME);
        },
      ),
      { numRuns: 40 },
    );
  });

  it("is said to be exact only if a larger budget finds nothing better", () => {
    fc.assert(
      fc.property(anyQuestion, (question) => {
        const small = designed(question);
        const large = designed({ ...question, budget: 3_000 });
        if (small.exact) expect(large.peak).toBeGreaterThanOrEqual(small.peak * (1 - SAME));
      }),
      { numRuns: 40 },
    );
  });

  it("is said to be heuristic when the budget does not reach to try everything", () => {
    const question = { periods: doublingPeriods(7), recall: Array(7).fill(0.9), tabs: 33, budget: 1_000 };
    expect(designed(question)).toMatchObject({ exact: false });
    expect(designed(question).evaluations).toBeGreaterThan(900);
  });

  it("is the same for the same question", () => {
    const question = { periods: [1, 3, 6, 12, 36], recall: Array(5).fill(0.85), tabs: 15, budget: 800 };
    expect(designed(question)).toEqual(designed(question));
  });

  it("copes with more choices of bundles than can be listed", () => {
    const periods = [60, 60, 120, 120, 180, 180, 240, 360];
    const question = { periods, recall: periods.map(() => 0.9), tabs: 100, budget: 300 };
    const { chart, exact, evaluations } = designed(question);
    expect(checkChart(chart).ok).toBe(true);
    expect(exact).toBe(false);
    expect(evaluations).toBeLessThanOrEqual(300);
  });
});

describe("a question that cannot be used", () => {
  const question: DesignQuestion = { periods: [1, 2, 4], recall: [0.9, 0.9, 0.9], tabs: 5 };

  it.each([
    ["no compartments", { periods: [], recall: [] }, "1 to 20 compartments"],
    ["half a day", { periods: [1, 2.5, 4] }, "whole number of days"],
    ["a cycle of many years", { periods: [31, 37, 41] }, "at most 1100"],
    ["a recall too few", { recall: [0.9, 0.9] }, "3 numbers"],
    ["a recall of nothing", { recall: [0.9, 0, 0.9] }, "above 0"],
    ["more than certain recall", { recall: [0.9, 1.5, 0.9] }, "not 1.5"],
    ["hardly any recall", { recall: [0.0001, 0.0001, 0.0001] }, "hardly any card"],
    ["fewer tabs than compartments", { tabs: 2 }, "from 3"],
    ["half a tab", { tabs: 4.5 }, "not 4.5"],
    ["no budget", { budget: 0 }, "above 0"],
  ])("is refused with a reason: %s", (_what, change, words) => {
    const design = designChart({ ...question, ...change });
    expect(design.ok).toBe(false);
    expect(design.ok ? "" : design.error).toContain(words);
  });
});

describe("the default budget", () => {
  it("is 40,000 evaluations for 64 days, less for longer cycles and never below 10,000", () => {
    expect([4, 64, 128, 1_024].map(defaultBudget)).toEqual([40_000, 40_000, 20_000, 10_000]);
  });
});
