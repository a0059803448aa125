// Charts that come round within a few weeks, so that a settled load can be found by waiting for it.
import fc from "fast-check";
import type { Chart } from "../../src/core/chart/chart.ts";

const divisorsOf = (n: number): readonly number[] =>
  Array.from({ length: n }, (_, i) => i + 1).filter((size) => n % size === 0);

/** Periods of 1 to `most` compartments, all of which divide `cycle` days. */
export const periodsWithin = (cycle: number, most: number): fc.Arbitrary<number[]> =>
  fc.array(fc.constantFrom(...divisorsOf(cycle)), { minLength: 1, maxLength: most });

/** Any chart of 1 to `most` compartments that comes round within 12, 16, 18 or 30 days. */
export const shortCycleChart = (most: number): fc.Arbitrary<Chart> =>
  fc
    .constantFrom(12, 16, 18, 30)
    .chain((cycle) => periodsWithin(cycle, most))
    .chain((periods) =>
      fc.tuple(
        ...periods.map((period) =>
          fc.record({
            period: fc.constant(period),
            bundles: fc.constantFrom(...divisorsOf(period)),
            offset: fc.nat(period - 1),
          }),
        ),
      ),
    )
    .map((compartments) => ({ compartments }));

/** A chart with chances of recall of at least `least`, one for each compartment. */
export const chartWithRecall = (most: number, least: number): fc.Arbitrary<{ chart: Chart; recall: number[] }> =>
  shortCycleChart(most).chain((chart) => {
    const size = { minLength: chart.compartments.length, maxLength: chart.compartments.length };
    return fc.record({
      chart: fc.constant(chart),
      recall: fc.array(fc.double({ min: least, max: 1, noNaN: true }), size),
    });
  });
