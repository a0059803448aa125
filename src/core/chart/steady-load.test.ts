import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chartWithRecall } from "../../../tests/support/short-cycle.ts";
import { expectedLoad } from "../load/expected.ts";
import { arrival, type Chart, cycleLength } from "./chart.ts";
import { plainChart } from "./make-chart.ts";
import { steadyLoad } from "./steady-load.ts";

/**
 * Relative: after 30 cycles three compartments at nine recalls in ten are full but for less than 1.84^-26 = 1.3e-7 of
 * the cards (1.84 is the root beyond 1/p of 1 − s + (1 − p) p^3 s^4, Feller, vol. 1, XIII.7; four cycles to fill).
 */
const NEARLY_FULL = 1e-6;

/** Relative: the solver's tolerance, and rounding in sums of a thousand numbers. */
const EXACT = 1e-9;

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

/** The same chart with a bundle for every day, so that every card waits exactly its period. */
const dated = (chart: Chart): Chart => ({
  compartments: chart.compartments.map((one) => ({ ...one, bundles: one.period })),
});

/** Mean days until a card is kept, from the other end: by value iteration over where and when it arrives. */
function daysLeft(chart: Chart, recall: readonly number[]): number {
  const cycle = cycleLength(chart);
  const size = recall.length;
  const waits = recall.map((_, k) =>
    Array.from({ length: cycle }, (_, day) => arrival(chart, k + 1, day + cycle).due - day - cycle),
  );
  let left = recall.map(() => new Array<number>(cycle).fill(0));
  for (let change = 1; change > 1e-13; ) {
    const before = left;
    left = waits.map((row, k) =>
      row.map((wait, day) => {
        const then = (day + wait) % cycle;
        const p = recall[k] ?? 0;
        const up = k + 1 < size ? (before[k + 1]?.[then] ?? 0) : 0;
        return wait + p * up + (1 - p) * (before[0]?.[then] ?? 0);
      }),
    );
    change = Math.max(...left.flatMap((row, k) => row.map((one, day) => one - (before[k]?.[day] ?? 0))));
  }
  return sum(left[0] ?? []) / cycle;
}

describe("the steady load", () => {
  it("is the last cycle of a box that has been filled for thirty", () => {
    fc.assert(
      fc.property(chartWithRecall(3, 0.9), ({ chart, recall }) => {
        const cycle = cycleLength(chart);
        const days = 30 * cycle;
        const filled = expectedLoad({ chart, recall, waiting: [], from: 1, days, newCards: () => 1 }).slice(-cycle);
        const { byDay, mean, peak } = steadyLoad(chart, recall);
        expect(byDay).toHaveLength(cycle);
        for (const [i, { reviews }] of filled.entries()) {
          expect(Math.abs((byDay[i] ?? 0) - reviews) / mean).toBeLessThan(NEARLY_FULL);
        }
        const worst = Math.max(...filled.map(({ reviews }) => reviews));
        expect(Math.abs(peak - worst) / mean).toBeLessThan(NEARLY_FULL);
      }),
    );
  });

  it("has its mean on the mean day, a peak that no day exceeds, and a small error", () => {
    fc.assert(
      fc.property(chartWithRecall(5, 0.3), ({ chart, recall }) => {
        const { byDay, mean, peak, peakToMean, error } = steadyLoad(chart, recall);
        expect(Math.abs(sum(byDay) / byDay.length / mean - 1)).toBeLessThan(EXACT);
        expect(peak).toBe(Math.max(...byDay));
        expect(peakToMean).toBe(peak / mean);
        expect(error).toBeLessThan(EXACT);
      }),
    );
  });

  it("is the same every day where every card has its own date", () => {
    fc.assert(
      fc.property(chartWithRecall(4, 0.5), ({ chart, recall }) => {
        const { byDay, mean } = steadyLoad(dated(chart), recall);
        for (const reviews of byDay) expect(Math.abs(reviews / mean - 1)).toBeLessThan(EXACT);
      }),
    );
  });

  // By hand: one compartment visited every second day, one card in two recalled. Two new cards and the misses come up
  // together on the visit, n = 2 + n/2, so 4 on every other day.
  it("is 0 and 4 reviews by turns for one compartment that is visited every second day", () => {
    const { byDay, mean, peakToMean } = steadyLoad({ compartments: [{ period: 2, bundles: 1, offset: 0 }] }, [0.5]);
    expect(byDay[0]).toBeCloseTo(0, 12);
    expect(byDay[1]).toBeCloseTo(4, 11);
    expect(mean).toBe(2);
    expect(peakToMean).toBeCloseTo(2, 11);
  });

  // By hand: compartment 1 is visited on days 2, 4 and 6, compartment 2 on days 3 and 6. A card missed on day 4 is asked
  // again on day 4, and none comes back to it otherwise: n = 2 + 0.999 n, so n = 2,000. Two of these go up and are asked
  // on day 3, and those missed there join day 2: m = 2 + 1.998 + 0.999 m, so m = 3,998. Thousands of cycles pass before.
  it("is solved where recall is so low that sweeps do not settle", () => {
    const chart = [3, 2].map((bundles) => ({ period: 6, bundles, offset: 0 }));
    const { byDay, mean, error } = steadyLoad({ compartments: chart }, [0.001, 0.001]);
    // A million reviews a card cost six digits of sixteen.
    expect(Math.abs((byDay[3] ?? 0) / 2_000 - 1)).toBeLessThan(1e-7);
    expect(Math.abs((byDay[1] ?? 0) / 3_998 - 1)).toBeLessThan(1e-7);
    expect(Math.abs(sum(byDay) / byDay.length / mean - 1)).toBeLessThan(1e-7);
    expect(error).toBeLessThan(1e-7);
  });

  it("is refused for recalls that are missing, nothing or more than certain", () => {
    for (const recall of [[0.9], [0.9, 0], [0.9, 1.1], [0.9, Number.NaN]]) {
      expect(() => steadyLoad(plainChart(2), recall)).toThrow(RangeError);
    }
  });
});

describe("the days until a card is kept", () => {
  it("are those of one card after another, worked from the far end", () => {
    fc.assert(
      fc.property(chartWithRecall(4, 0.5), ({ chart, recall }) => {
        const { daysUntilKept } = steadyLoad(chart, recall);
        expect(Math.abs(daysUntilKept / daysLeft(chart, recall) - 1)).toBeLessThan(EXACT);
      }),
      { numRuns: 40 },
    );
  });

  // By hand: for one card kept, 8 reviews in compartment 1, 4 in 2 and 2 in 3, after waits of 1, 2 and 4 days.
  it("are 8·1 + 4·2 + 2·4 = 24 for dated cards at one recall in two", () => {
    const { daysUntilKept, longestWait } = steadyLoad(dated(plainChart(3)), [0.5, 0.5, 0.5]);
    expect(daysUntilKept).toBeCloseTo(24, 9);
    expect(longestWait).toBe(4);
  });

  // A card promoted out of compartment 6 of the plain chart waits 16 or 48 days for compartment 7, never 64.
  it("hold no wait of more than 48 days in the plain chart of seven compartments", () => {
    expect(steadyLoad(plainChart(7), Array(7).fill(0.9)).longestWait).toBe(48);
  });
});
