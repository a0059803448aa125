// The chart designer against worked loads, against the theory of success runs and against the day-by-day load.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkChart } from "../../src/core/chart/chart.ts";
import { type Design, designChart } from "../../src/core/chart/design-chart.ts";
import { doublingPeriods, LEVELLED_CHART, plainChart } from "../../src/core/chart/make-chart.ts";
import { steadyLoad } from "../../src/core/chart/steady-load.ts";
import { expectedLoad } from "../../src/core/load/expected.ts";
import { chartWithRecall } from "../support/short-cycle.ts";

const RECALL: readonly number[] = Array(7).fill(0.9);
const PACE = 20;

/** Designs for seven doubling periods at nine recalls in ten and prints how well and how fast. */
function designed(tabs: number): Design {
  const begun = performance.now();
  const design = designChart({ periods: doublingPeriods(7), recall: RECALL, tabs });
  const spent = performance.now() - begun;
  if (!design.ok) throw new Error(design.error);
  const { peakToMean, exact, evaluations } = design.value;
  const how = exact ? "exact" : "heuristic";
  console.info(`${tabs} tabs: ${peakToMean.toFixed(4)}, ${how}, ${evaluations} evaluations, ${spent.toFixed(0)} ms`);
  return design.value;
}

describe("a chart designed for seven doubling periods at nine recalls in ten", () => {
  // Worked value of the levelled chart with 18 tabs, about 1.266: the designer must come as low.
  it("has a peak of at most 1.27 times the mean with 18 tabs", () => {
    const { peakToMean, tabs, chart } = designed(18);
    expect(peakToMean).toBeLessThanOrEqual(1.27);
    expect(tabs).toBeLessThanOrEqual(18);
    expect(checkChart(chart).ok).toBe(true);
  });

  it("is proved to be the best with 18 tabs, and the levelled chart nearly as good", () => {
    const { peakToMean, exact } = designed(18);
    expect(exact).toBe(true);
    const levelled = steadyLoad(LEVELLED_CHART, RECALL).peakToMean;
    expect(peakToMean).toBeLessThanOrEqual(levelled);
    expect(peakToMean).toBeGreaterThan(levelled - 0.002);
  });

  it("has a peak of at most 1.11 times the mean with 33 tabs", () => {
    const { peakToMean, tabs } = designed(33);
    expect(peakToMean).toBeLessThanOrEqual(1.11);
    expect(tabs).toBeLessThanOrEqual(33);
  });

  it("has a tab for every day and an even load with 127 tabs", () => {
    const { peakToMean, chart, exact } = designed(127);
    expect(peakToMean).toBeLessThanOrEqual(1.01);
    expect(chart.compartments.map(({ bundles }) => bundles)).toEqual(doublingPeriods(7));
    expect(exact).toBe(true);
  });

  it("has the peak that the day-by-day load reaches in the end", () => {
    for (const tabs of [18, 33]) {
      const { chart, peak, mean } = designed(tabs);
      // 6,000 days are more than 40 mean lifetimes of a card.
      const days = expectedLoad({ chart, recall: RECALL, waiting: [], from: 1, days: 6_400, newCards: () => 1 });
      const worst = Math.max(...days.slice(6_016, 6_016 + 64).map(({ reviews }) => reviews));
      expect(Math.abs(worst - peak) / mean).toBeLessThan(1e-9);
    }
  });
});

describe("the steady load of twenty new cards a day at nine recalls in ten", () => {
  // Worked values, printed to three decimals and to one; the tolerance is half of the last digit.
  it("is 218.150 reviews a day in the plain chart and 1,453.1 on the worst day", () => {
    const { byDay, peak } = steadyLoad(plainChart(7), RECALL);
    const mean = byDay.reduce((sum, one) => sum + one, 0) / byDay.length;
    expect(Math.abs(PACE * mean - 218.15)).toBeLessThan(0.0005);
    expect(Math.abs(PACE * peak - 1453.1)).toBeLessThan(0.05);
  });
});

/**
 * Feller, An Introduction to Probability Theory and Its Applications, vol. 1, XIII.7: mean trials until r successes in
 * a row, (1 - p^r) / ((1 - p) p^r). Values to six decimals or to their end.
 */
const MEANS = [
  { p: 0.5, r: 2, mean: 6 },
  { p: 0.5, r: 3, mean: 14 },
  { p: 0.9, r: 5, mean: 6.935088 },
  { p: 0.8, r: 5, mean: 10.258789 },
] as const;

describe("the mean of the steady load", () => {
  it.each(MEANS)("is $mean for $r compartments at $p, whatever the chart", ({ p, r, mean }) => {
    fc.assert(
      fc.property(
        chartWithRecall(r, 0.5).filter(({ chart }) => chart.compartments.length === r),
        ({ chart }) => {
          const { byDay } = steadyLoad(chart, Array(r).fill(p));
          const days = byDay.reduce((sum, one) => sum + one, 0) / byDay.length;
          // The last printed digit: half for its rounding, half for that of the solver.
          expect(Math.abs(days - mean)).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 50 },
    );
  });
});
