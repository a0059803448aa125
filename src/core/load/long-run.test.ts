import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shortChart } from "../../../tests/support/any-chart.ts";
import { anyRecall } from "../../../tests/support/any-load.ts";
import { cycleLength } from "../chart/chart.ts";
import { LEVELLED_CHART, plainChart } from "../chart/make-chart.ts";
import { expectedLoad } from "./expected.ts";
import { longRun, reviewsPerKeptCard } from "./long-run.ts";

/** Relative: 1e-12 is left out of the long run, and long sums cost the rest. */
const ROUNDING = 1e-9;

const anySettling = shortChart.chain((chart) =>
  fc.record({ chart: fc.constant(chart), recall: anyRecall(chart, 0.4), newPerDay: fc.integer({ min: 1, max: 50 }) }),
);

describe("the long run", () => {
  it("asks each card as often as its walk is long, by any chart", () => {
    fc.assert(
      fc.property(anySettling, (question) => {
        const mean = question.newPerDay * reviewsPerKeptCard(question.recall);
        expect(Math.abs((longRun(question)?.mean ?? Number.NaN) - mean)).toBeLessThan(ROUNDING * mean);
      }),
    );
  });

  // A climb through these boxes takes at most 19 days and ends with the card kept with a chance of 0.4^4 = 0.0256 at
  // least; 24,000 days hold 1,260 climbs, after which less than e^(-1260 x 0.0256) = 1e-14 of a card is left.
  it("is what the expected load of a box begun empty becomes, day by day of the cycle", () => {
    fc.assert(
      fc.property(anySettling, (question) => {
        const { chart, newPerDay } = question;
        const cycle = cycleLength(chart);
        const settled = Math.ceil(24_000 / cycle) * cycle;
        const load = expectedLoad({
          ...question,
          waiting: [],
          from: 1,
          days: settled + cycle,
          newCards: () => newPerDay,
        });
        const { byChartDay, peak, peakToMean, mean } = longRun(question) ?? {
          byChartDay: [],
          peak: 0,
          peakToMean: 0,
          mean: 0,
        };
        const last = load.slice(settled).map(({ reviews }) => reviews);
        expect(byChartDay).toHaveLength(cycle);
        for (const [i, reviews] of last.entries()) {
          expect(Math.abs(reviews - (byChartDay[i] ?? Number.NaN))).toBeLessThan(ROUNDING * peak);
        }
        expect(peak).toBe(Math.max(...byChartDay));
        expect(Math.abs(peakToMean - peak / mean)).toBeLessThan(ROUNDING * peakToMean);
      }),
      { numRuns: 20 },
    );
  });

  it("is proportional to the new cards, and level where there are none", () => {
    const question = { chart: LEVELLED_CHART, recall: Array<number>(7).fill(0.9) };
    const [one, twenty, none] = [1, 20, 0].map((newPerDay) => longRun({ ...question, newPerDay }));
    expect(twenty?.peakToMean).toBe(one?.peakToMean);
    expect(twenty?.peak).toBeCloseTo(20 * (one?.peak ?? 0), 9);
    expect(none).toMatchObject({ mean: 0, peak: 0, peakToMean: one?.peakToMean });
  });

  it("is the same to the last few digits whether few or many rounds of misses are needed", () => {
    for (const p of [0.05, 0.3, 0.6, 0.99, 1]) {
      const recall = Array<number>(4).fill(p);
      const mean = longRun({ chart: plainChart(4), recall, newPerDay: 1 })?.mean ?? Number.NaN;
      expect(Math.abs(mean / reviewsPerKeptCard(recall) - 1)).toBeLessThan(ROUNDING);
    }
  });

  it("does not exist where a compartment is never recalled", () => {
    expect(longRun({ chart: plainChart(3), recall: [0.9, 0, 0.9], newPerDay: 1 })).toBeNull();
    expect(reviewsPerKeptCard([0.9, 0, 0.9])).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("the reviews of a kept card", () => {
  // By hand for 1/2, 1/4: of compartment 2, 1/(1/4) = 4 visits; each needs 1/(1/2) = 2 visits of compartment 1.
  it("are a sum over compartments of one over the chances from there on", () => {
    expect(reviewsPerKeptCard([0.5, 0.25])).toBe(12);
    expect(reviewsPerKeptCard([1, 1, 1])).toBe(3);
  });
});
