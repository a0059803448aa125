// Expected load against the theory of success runs, and against worked values.
import { describe, expect, it } from "vitest";
import { arrival, type Chart, compartmentCount, cycleLength } from "../../src/core/chart/chart.ts";
import { LEVELLED_CHART, plainChart } from "../../src/core/chart/make-chart.ts";
import { expectedLoad } from "../../src/core/load/expected.ts";

/**
 * Mean number of trials until r successes in a row: (1 - p^r) / ((1 - p) p^r).
 * Feller, An Introduction to Probability Theory and Its Applications, vol. 1, XIII.7. The box that sends a
 * missed card back to compartment 1 asks it just so often. Values computed from the formula elsewhere, printed
 * to six decimals where they do not end before.
 */
const MEANS = [
  { p: 0.5, r: 2, mean: 6 },
  { p: 0.5, r: 3, mean: 14 },
  { p: 0.9, r: 5, mean: 6.935088 },
  { p: 0.9, r: 7, mean: 10.907516 },
  { p: 0.8, r: 5, mean: 10.258789 },
  { p: 0.8, r: 7, mean: 18.841858 },
  { p: 0.95, r: 7, mean: 8.639456 },
  { p: 0.5, r: 10, mean: 2046 },
] as const;

/** Half of the last printed digit, and as much again for the cards that are still in the box at the end. */
const PRINTED = 1e-6;

/** Compartments that are visited every day: a card is asked once a day until it is kept. */
const dailyChart = (compartments: number): Chart => ({
  compartments: Array.from({ length: compartments }, () => ({ period: 1, bundles: 1, offset: 0 })),
});

function reviewsPerCard(chart: Chart, p: number, days: number): number {
  const recall = Array.from({ length: compartmentCount(chart) }, () => p);
  const newCards = (day: number): number => (day === 0 ? 1 : 0);
  return expectedLoad({ chart, recall, waiting: [], from: 1, days, newCards }).reduce(
    (sum, day) => sum + day.reviews,
    0,
  );
}

describe("the expected reviews of a card until it is kept", () => {
  // 60,000 days: for p = 0.5, r = 10, the slowest, about e^(-60000/2046) = 2e-13 of a card is left, and no more than
  // 2046 reviews would follow.
  it.each(MEANS)("are the mean waiting time for $r recalls in a row at $p: $mean", ({ p, r, mean }) => {
    expect(Math.abs(reviewsPerCard(dailyChart(r), p, 60_000) - mean)).toBeLessThan(PRINTED);
  });

  // 100,000 days are more than 400 mean lifetimes of a card in these charts.
  it.each(MEANS.filter(({ r }) => r === 7))("do not depend on the chart: $p", ({ p, mean }) => {
    for (const chart of [plainChart(7), LEVELLED_CHART]) {
      expect(Math.abs(reviewsPerCard(chart, p, 100_000) - mean)).toBeLessThan(PRINTED);
    }
  });
});

/** Worked separately, by convolution over cohorts: plain chart, seven compartments, p = 0.9, ten new cards a day. */
const WORKED = [
  { day: 32, mean: 14.906888 },
  { day: 40, mean: 185.810174 },
  { day: 96, mean: 569.380064 },
  { day: 100, mean: 130.279496 },
] as const;

const tenADay = (chart: Chart, perDay: number, days: number) =>
  expectedLoad({ chart, recall: Array(7).fill(0.9), waiting: [], from: 1, days, newCards: () => perDay });

describe("the expected load of ten new cards a day from day 1", () => {
  it.each(WORKED)("is $mean on day $day of the plain chart", ({ day, mean }) => {
    const load = tenADay(plainChart(7), 10, 100);
    expect(Math.abs((load[day - 1]?.reviews ?? 0) - mean)).toBeLessThan(PRINTED);
  });
});

/** Loads of one cycle after the box has settled: 6,000 days are about 40 mean lifetimes of a card. */
function settled(chart: Chart): { mean: number; peak: number } {
  const days = tenADay(chart, 20, 6_000 + cycleLength(chart)).slice(6_000);
  const reviews = days.map((day) => day.reviews);
  return { mean: reviews.reduce((sum, one) => sum + one, 0) / reviews.length, peak: Math.max(...reviews) };
}

const dated: Chart = { compartments: plainChart(7).compartments.map((one) => ({ ...one, bundles: one.period })) };

describe("twenty new cards a day at nine recalls in ten, in the long run", () => {
  it("ask 218 cards a day by any chart", () => {
    // 20 new cards a day, each asked 10.907516 times (Feller).
    for (const chart of [plainChart(7), LEVELLED_CHART, dated]) {
      expect(Math.abs(settled(chart).mean - 20 * 10.907516)).toBeLessThan(20 * PRINTED);
    }
  });

  it("ask 1,453 on the worst day of the plain chart, far more than six times the mean", () => {
    const { mean, peak } = settled(plainChart(7));
    // Worked value, printed without decimals.
    expect(Math.abs(peak - 1453)).toBeLessThan(0.5);
    expect(peak / mean).toBeGreaterThan(6.5);
  });

  it("ask about 1.266 times the mean on the worst day of the levelled chart", () => {
    const { mean, peak } = settled(LEVELLED_CHART);
    // Worked value with three decimals.
    expect(Math.abs(peak / mean - 1.266)).toBeLessThan(0.001);
  });

  it("ask the same every day where each card has its own date", () => {
    const { mean, peak } = settled(dated);
    expect(Math.abs(peak / mean - 1)).toBeLessThan(1e-9);
  });

  it("visit a card promoted on any day within its wait in every one of these charts", () => {
    for (const chart of [plainChart(7), LEVELLED_CHART, dated]) {
      chart.compartments.forEach(({ period, bundles }, i) => {
        for (let day = 1; day <= 128; day++) {
          const wait = arrival(chart, i + 1, day).due - day;
          expect(wait).toBeGreaterThan(period - period / bundles);
          expect(wait).toBeLessThanOrEqual(period);
        }
      });
    }
  });
});
