import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { recallOnceKept } from "../recall/forgetting.ts";
import { checkChart, cycleLength, tabCount } from "./chart.ts";
import { meanWaits } from "./mean-waits.ts";
import { LADDERS, type LadderFigures, type LadderQuestion, ladderPeriods, searchLadders } from "./search-ladders.ts";
import { steadyLoad } from "./steady-load.ts";

/** Relative: the tolerance of a steady load, and rounding. */
const EXACT = 1e-9;

function searched(question: LadderQuestion): readonly LadderFigures[] {
  const ladders = searchLadders(question);
  if (!ladders.ok) throw new Error(ladders.error);
  return ladders.value;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

describe("the periods of a ladder", () => {
  it("are the powers of a whole ratio", () => {
    expect(ladderPeriods(5, 3)).toEqual([1, 3, 9, 27, 81]);
    expect(ladderPeriods(7, 2)).toEqual([1, 2, 4, 8, 16, 32, 64]);
    expect(ladderPeriods(4, 5)).toEqual([1, 5, 25, 125]);
  });

  it("begin with every day, grow all the way, stay near an even growth and come round within a year", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 10 }),
        fc.double({ min: 1.3, max: 6, noNaN: true }),
        (compartments, ratio) => {
          const periods = ladderPeriods(compartments, ratio);
          if (periods === null) return;
          expect(periods).toHaveLength(compartments);
          expect(periods[0]).toBe(1);
          expect(periods).toEqual([...new Set(periods)].sort((a, b) => a - b));
          const bare = periods.map((period) => ({ period, bundles: 1, offset: 0 }));
          expect(cycleLength({ compartments: bare })).toBeLessThanOrEqual(365);
          periods.forEach((period, k) => {
            const even = ratio ** k;
            expect(Math.abs(period - even)).toBeLessThanOrEqual(Math.max(1, LADDERS.slack * even));
          });
        },
      ),
      { numRuns: 50 },
    );
  });

  it("are none where they would take more than a year", () => {
    expect(ladderPeriods(10, 2)).toBeNull();
    expect(ladderPeriods(7, 3)).toBeNull();
    expect(ladderPeriods(4, Number.NaN)).toBeNull();
  });
});

describe("the ladders side by side", () => {
  it("have the figures of a chart within the tabs", () => {
    const recall = 0.85;
    const ladders = searched({ recall, tabs: 12, budget: 200 });
    expect(ladders.length).toBeGreaterThan(20);
    for (const { compartments, periods, chart, tabs, cycle, ...figures } of ladders) {
      expect(checkChart(chart).ok).toBe(true);
      expect(chart.compartments.map(({ period }) => period)).toEqual(periods);
      expect(periods).toHaveLength(compartments);
      expect(tabs).toBe(tabCount(chart));
      expect(tabs).toBeLessThanOrEqual(12);
      expect(cycle).toBe(cycleLength(chart));
      const load = steadyLoad(chart, Array(compartments).fill(recall));
      expect(figures).toMatchObject({ daysUntilKept: load.daysUntilKept, longestWait: load.longestWait });
      expect(figures.peakToMean).toBe(load.peakToMean);
      // Feller, vol. 1, XIII.7: mean waiting time for a run of K successes.
      const feller = (1 - recall ** compartments) / ((1 - recall) * recall ** compartments);
      expect(Math.abs(figures.reviewsPerCard / feller - 1)).toBeLessThan(EXACT);
    }
  });

  it("tell the recall a year after a card was kept, as if it had waited in a compartment more", () => {
    const ladders = searched({ recall: 0.8, tabs: 9, budget: 20 });
    for (const { chart, recallAYearOn } of ladders) {
      expect(recallAYearOn).toBe(recallOnceKept(meanWaits(chart), 0.8, 365));
      expect(recallAYearOn).toBeGreaterThan(0);
    }
    // Powers of 5 up to 125 would go on with hundreds of days, so that a year is less than the wait measured: above 0.8. Periods
    // that grow by half reach 24 days at most.
    const of = (wanted: string): number => ladders.find(({ periods }) => periods.join() === wanted)?.recallAYearOn ?? 0;
    expect(of("1,5,25,125")).toBeGreaterThan(0.8);
    expect(of("1,2,3,4,5,8,12,18,24")).toBeLessThan(0.8);
  });

  it("hold both harmonic ladders unless something else is asked", () => {
    const ladders = searched({ recall: 0.9, tabs: 9, budget: 20 });
    expect(ladders).toContainEqual(expect.objectContaining({ compartments: 5, ratio: 3, periods: [1, 3, 9, 27, 81] }));
    const doubling = [1, 2, 4, 8, 16, 32, 64];
    expect(ladders).toContainEqual(expect.objectContaining({ compartments: 7, ratio: 2, periods: doubling }));
    const periods = ladders.map((one) => one.periods.join());
    expect(new Set(periods).size).toBe(periods.length);
  });

  it("hold ladders that are not powers of one number", () => {
    const ladders = searched({ recall: 0.9, tabs: 20, budget: 20, compartments: [5], ratios: [1.75] });
    expect(ladders.map(({ periods }) => periods)).toEqual([[1, 2, 3, 5, 9]]);
  });

  it("go from few compartments to many and from slow growth to fast", () => {
    const ladders = searched({ recall: 0.9, tabs: 9, budget: 20, compartments: [5, 4], ratios: [3, 2] });
    expect(ladders.map(({ compartments, ratio }) => [compartments, ratio])).toEqual([
      [4, 2],
      [4, 3],
      [5, 2],
      [5, 3],
    ]);
  });

  // By hand: with a tab for every day a card waits 1, 2, 4, 8 and 16 days in the five compartments, in which it is
  // asked p^(k-6) times until it is kept.
  it("tell the days until a dated card is kept, its longest wait and an even load", () => {
    const [ladder] = searched({ recall: 0.9, tabs: 31, compartments: [5], ratios: [2] });
    const days = sum([1, 2, 4, 8, 16].map((period, k) => period * 0.9 ** (k - 5)));
    expect(Math.abs((ladder?.daysUntilKept ?? 0) / days - 1)).toBeLessThan(EXACT);
    expect(ladder).toMatchObject({ tabs: 31, longestWait: 16, exact: true, cycle: 16 });
    expect(Math.abs((ladder?.peakToMean ?? 0) - 1)).toBeLessThan(EXACT);
  });

  it("list the same periods once, by the slowest growth that leads to them", () => {
    const ladders = searched({ recall: 0.9, tabs: 9, budget: 20, compartments: [4], ratios: [2.01, 2, 1.99] });
    expect(ladders.map(({ ratio, periods }) => [ratio, periods])).toEqual([[1.99, [1, 2, 4, 8]]]);
  });

  it("leave out those with more compartments than tabs", () => {
    const ladders = searched({ recall: 0.9, tabs: 5, budget: 20 });
    expect([...new Set(ladders.map(({ compartments }) => compartments))]).toEqual([4, 5]);
    expect(searched({ recall: 0.9, tabs: 3 })).toEqual([]);
  });

  it("are refused for a recall of nothing or periods that do not grow", () => {
    expect(searchLadders({ recall: 0, tabs: 9 })).toMatchObject({ ok: false });
    expect(searchLadders({ recall: 0.9, tabs: 9, ratios: [1] })).toMatchObject({ ok: false });
    expect(searchLadders({ recall: 0.9, tabs: 9, budget: 0 })).toMatchObject({ ok: false });
  });
});
