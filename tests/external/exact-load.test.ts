// The exact load against worked values, the theory of success runs, common practice, and a simulation that shares
// nothing with it.
import { describe, expect, it } from "vitest";
import type { Chart } from "../../src/core/chart/chart.ts";
import { meanReviews } from "../../src/core/chart/chart-flow.ts";
import { plainChart } from "../../src/core/chart/make-chart.ts";
import { steadyLoad } from "../../src/core/chart/steady-load.ts";
import { walkCard } from "../../src/core/load/cohorts.ts";
import { type ExactDay, exactLoad } from "../../src/core/load/exact-load.ts";
import { type DaySample, samplePiles } from "../support/sampled-piles.ts";

/** Half of the last of six printed digits, doubled for the last rounding of the worked values themselves. */
const PRINTED = 1e-6;

/** Relative, against formulas; what is left out of sums and rounding is far below. */
const FORMULA = 1e-9;

const tenADay = (newPerDay: number, days: number): readonly ExactDay[] =>
  exactLoad({
    chart: plainChart(7),
    recall: Array(7).fill(0.9),
    waiting: [],
    from: 1,
    days,
    newCards: () => newPerDay,
    quantiles: [0.05, 0.95],
  });

/** Worked separately, by convolution over cohorts: plain chart, seven compartments, p = 0.9, ten new cards a day. */
const WORKED = [
  { day: 32, mean: 14.906888, sd: 2.140719, quantiles: [12, 19] },
  { day: 40, mean: 185.810174, sd: 6.275754, quantiles: [176, 196] },
  { day: 96, mean: 569.380064, sd: 7.974451, quantiles: [556, 582] },
  { day: 100, mean: 130.279496, sd: 6.963796, quantiles: [119, 142] },
] as const;

describe("ten new cards a day from day 1 by the plain chart", () => {
  it.each(WORKED)("bring $mean ± $sd reviews on day $day, and $quantiles at 5 % and 95 %", (worked) => {
    const { mean, sd, quantiles } = (tenADay(10, worked.day)[worked.day - 1] as ExactDay).reviews;
    expect(Math.abs(mean - worked.mean)).toBeLessThan(PRINTED);
    expect(Math.abs(sd - worked.sd)).toBeLessThan(PRINTED);
    expect(quantiles).toEqual(worked.quantiles);
  });
});

/**
 * Mean and variance of the trials until r successes in a row, q = 1 - p: (1 - p^r) / (q p^r) and
 * 1 / (q p^r)^2 - (2r + 1) / (q p^r) - p / q^2.
 * Feller, An Introduction to Probability Theory and Its Applications, vol. 1, XIII.7; the values printed here were
 * computed elsewhere, the variance from the absorbing Markov chain.
 */
const RUNS = [
  { p: 0.5, r: 2, mean: 6, variance: 22 },
  { p: 0.5, r: 3, mean: 14, variance: 142 },
  { p: 0.9, r: 5, mean: 6.935088, variance: 10.511233 },
  { p: 0.9, r: 7, mean: 10.907516, variance: 33.51148 },
  { p: 0.8, r: 5, mean: 10.258789, variance: 44.983964 },
  { p: 0.8, r: 7, mean: 18.841858, variance: 190.80632 },
  { p: 0.95, r: 7, mean: 8.639456, variance: 10.626584 },
  { p: 0.5, r: 10, mean: 2046, variance: 4151294 },
] as const;

const feller = (p: number, r: number): { mean: number; variance: number } => {
  const run = (1 - p) * p ** r;
  return { mean: (1 - p ** r) / run, variance: 1 / run ** 2 - (2 * r + 1) / run - p / (1 - p) ** 2 };
};

/** Every compartment visited every day: a card is asked daily until it is kept, so that days count reviews. */
const daily = (compartments: number): Chart => ({
  compartments: Array.from({ length: compartments }, () => ({ period: 1, bundles: 1, offset: 0 })),
});

/** Chance that a card has more than n reviews until it is kept, at n = 0, 1, 2 …: that it is asked on day n + 1. */
const moreThan = (p: number, r: number, most: number): Float64Array =>
  walkCard({ chart: daily(r), recall: Array(r).fill(p), from: 1, days: most }, { compartment: 1, due: 1 }).asked;

describe("a card's number of reviews until it is kept", () => {
  // 100,000 days: for p = 0.5, r = 10, the slowest, e^(-100000/2046) = 6e-22 of a card is left.
  it.each(RUNS)("has Feller's mean and variance for $r recalls in a row at $p: $mean, $variance", (run) => {
    const chances = moreThan(run.p, run.r, 100_000);
    // E N = Σ P(N > n); E N² = Σ (2n + 1) P(N > n).
    const mean = chances.reduce((sum, chance) => sum + chance, 0);
    const square = chances.reduce((sum, chance, n) => sum + (2 * n + 1) * chance, 0);
    const variance = square - mean ** 2;
    const formula = feller(run.p, run.r);
    expect(Math.abs(mean - formula.mean)).toBeLessThan(FORMULA * formula.mean);
    expect(Math.abs(variance - formula.variance)).toBeLessThan(FORMULA * formula.variance);
    expect(Math.abs(mean - run.mean)).toBeLessThan(PRINTED);
    expect(Math.abs(variance - run.variance)).toBeLessThan(PRINTED);
  });

  // Chances by the tribonacci numbers over 2^n, and cumulative ones of the absorbing Markov chain, computed elsewhere.
  it("has the distribution of the success run", () => {
    const coins = moreThan(0.5, 3, 12);
    const exactly = [3, 4, 5, 6, 7, 8, 9, 10].map((n) => (coins[n - 1] ?? 0) - (coins[n] ?? 0));
    expect(exactly).toEqual([1 / 8, 1 / 16, 1 / 16, 1 / 16, 7 / 128, 13 / 256, 3 / 64, 11 / 256]);
    const nines = moreThan(0.9, 7, 31);
    for (const [n, atMost] of [
      [7, 0.478297],
      [10, 0.621786],
      [14, 0.813105],
      [20, 0.928507],
      [30, 0.986412],
    ] as const) {
      expect(Math.abs(1 - (nines[n] ?? 0) - atMost)).toBeLessThan(PRINTED);
    }
  });

  it.each(RUNS)("is what the box asks in the long run for each new card: $mean at $p", ({ p, r }) => {
    const recall = Array<number>(r).fill(p);
    const { mean } = feller(p, r);
    expect(Math.abs(meanReviews(recall) - mean)).toBeLessThan(FORMULA * mean);
    for (const chart of [daily(r), plainChart(r)]) {
      // The mean day of the solved flow, not the mean that the formula gives.
      const { byDay } = steadyLoad(chart, recall);
      const settled = byDay.reduce((all, one) => all + one, 0) / byDay.length;
      expect(Math.abs(settled - mean)).toBeLessThan(FORMULA * mean);
    }
  });
});

describe("common practice", () => {
  it("holds: twenty new cards a day are 218 reviews a day in the long run, and about 1,453 on the worst", () => {
    const { mean, peak, peakToMean } = steadyLoad(plainChart(7), Array(7).fill(0.9));
    // Worked values, printed without decimals.
    expect(Math.round(20 * mean)).toBe(218);
    expect(Math.round(20 * peak)).toBe(1453);
    expect(peakToMean).toBeGreaterThan(6.6);
    expect(peakToMean).toBeLessThan(6.7);
  });

  it("holds: a hundred new cards a day bring a day of more than a thousand reviews, for certain", () => {
    const load = tenADay(100, 64);
    const low = Math.max(...load.map(({ reviews }) => reviews.quantiles[0] ?? 0));
    expect(low).toBeGreaterThan(1_000);
  });
});

/** Boxes that are played, and days of each. */
const BOXES = 20_000;
const DAYS = 100;

/** Standard errors that a fair sample may depart: one in 1.7 million does so by more than five. */
const ERRORS = 5;

describe("twenty thousand boxes played card by card", () => {
  const played = samplePiles({ boxes: BOXES, days: DAYS, newPerDay: 10, recall: 0.9, seed: 20_240_229 });
  const load = tenADay(10, DAYS);
  const each = (check: (sample: DaySample, exact: ExactDay["reviews"]) => void): void => {
    for (const [i, sample] of played.entries()) check(sample, (load[i] as ExactDay).reviews);
  };

  it("have the exact mean of each day", () => {
    each((sample, { mean, sd }) => {
      expect(Math.abs(sample.mean - mean)).toBeLessThanOrEqual((ERRORS * sd) / Math.sqrt(BOXES));
    });
  });

  it("have the exact spread of each day", () => {
    // Standard error of a sample variance: the root of (fourth central moment - variance squared) / boxes.
    each((sample, { sd }) => {
      const error = Math.sqrt((sample.fourth - sample.variance ** 2) / BOXES);
      expect(Math.abs(sample.variance - sd ** 2)).toBeLessThanOrEqual(ERRORS * error);
    });
  });

  it("reach the exact quantiles of each day with their share, and not one card before", () => {
    const error = ERRORS * Math.sqrt((0.05 * 0.95) / BOXES);
    each((sample, { quantiles: [low = 0, high = 0] }) => {
      expect(sample.atMost(low)).toBeGreaterThanOrEqual(0.05 - error);
      expect(sample.atMost(low - 1)).toBeLessThan(0.05 + error);
      expect(sample.atMost(high)).toBeGreaterThanOrEqual(0.95 - error);
      expect(sample.atMost(high - 1)).toBeLessThan(0.95 + error);
    });
  });
});
