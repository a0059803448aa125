import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chartWithRecall } from "../../../tests/support/short-cycle.ts";
import { cycleLength } from "./chart.ts";
import { createOffsetSearch, isBetter, offsetSpace, randomOffsets, SAME_PEAK } from "./offset-search.ts";
import { steadyLoad } from "./steady-load.ts";

/** Relative: an evaluation's tolerance and rounding. */
const EVALUATED = 1e-9;

/** Relative: peaks nearer than `SAME_PEAK` count as the same, and a chain of such steps may lead a little upwards. */
const ABOUT_SAME = 100 * SAME_PEAK;

const anySearch = chartWithRecall(4, 0.6).map(({ chart, recall }) => {
  const periods = chart.compartments.map(({ period }) => period);
  const bundles = chart.compartments.map((one) => one.bundles);
  const offsets = chart.compartments.map(({ offset }) => offset);
  return { chart, recall, periods, bundles, offsets, search: createOffsetSearch(periods, recall, cycleLength(chart)) };
});

describe("an evaluation", () => {
  it("finds the peak of the steady load", () => {
    fc.assert(
      fc.property(anySearch, ({ chart, recall, bundles, offsets, search }) => {
        const { peak, mean } = steadyLoad(chart, recall);
        expect(Math.abs(search.place(bundles, offsets).peak - peak) / mean).toBeLessThan(EVALUATED);
        expect(search.evaluations()).toBe(1);
        expect(search.accurate()).toBe(true);
      }),
    );
  });

  it("that is cut short has never hidden a chart better than its rival", () => {
    fc.assert(
      fc.property(anySearch, fc.string(), ({ recall, chart, periods, bundles, offsets, search }, key) => {
        const rival = search.place(bundles, randomOffsets(periods, bundles, key));
        const { peak } = steadyLoad(chart, recall);
        const placed = search.place(bundles, offsets, rival);
        // Nearer than that they count as the same, and the smoother is better.
        const near = 2 * SAME_PEAK * rival.peak;
        if (peak < rival.peak - near) expect(isBetter(placed, rival)).toBe(true);
        if (peak > rival.peak + near) expect(isBetter(placed, rival)).toBe(false);
      }),
    );
  });
});

describe("an evaluation against a rival that is barely worse", () => {
  it("is not cut short, whatever was evaluated before", () => {
    fc.assert(
      fc.property(anySearch, fc.string(), ({ chart, recall, bundles, periods, offsets, search }, key) => {
        const { peak } = steadyLoad(chart, recall);
        const before = search.place(bundles, randomOffsets(periods, bundles, key));
        const rival = { ...before, peak: peak * (1 + ABOUT_SAME) };
        const placed = search.place(bundles, offsets, rival);
        expect(Math.abs(placed.peak / peak - 1)).toBeLessThan(EVALUATED);
      }),
    );
  });
});

describe("of two charts", () => {
  const chart = { bundles: [1, 2], offsets: [0, 0], peak: 10, roughness: 50 };

  it("the lower peak is better, then fewer tabs, then smoother days", () => {
    expect(isBetter({ ...chart, peak: 9, bundles: [2, 2], roughness: 60 }, chart)).toBe(true);
    expect(isBetter({ ...chart, bundles: [1, 1], roughness: 60 }, chart)).toBe(true);
    expect(isBetter({ ...chart, bundles: [2, 2], roughness: 40 }, chart)).toBe(false);
    expect(isBetter({ ...chart, roughness: 40 }, chart)).toBe(true);
    expect(isBetter(chart, chart)).toBe(false);
  });
});

describe("going downhill", () => {
  it("never ends above its start, nor where moving one compartment would gain", () => {
    fc.assert(
      fc.property(anySearch, ({ periods, bundles, offsets, search }) => {
        const start = search.place(bundles, offsets);
        const end = search.descend(start, Number.POSITIVE_INFINITY);
        expect(end.peak).toBeLessThanOrEqual(start.peak * (1 + ABOUT_SAME));
        periods.forEach((period, k) => {
          for (let offset = 0; offset < period / (bundles[k] ?? 1); offset++) {
            const moved = search.place(bundles, end.offsets.with(k, offset));
            expect(moved.peak).toBeGreaterThanOrEqual(end.peak * (1 - ABOUT_SAME));
          }
        });
      }),
      { numRuns: 40 },
    );
  });

  it("stops when the evaluations are spent", () => {
    fc.assert(
      fc.property(anySearch, fc.integer({ min: 1, max: 20 }), ({ bundles, offsets, search }, until) => {
        search.descend(search.place(bundles, offsets), until);
        expect(search.evaluations()).toBeLessThanOrEqual(until);
      }),
    );
  });
});

describe("trying all offsets", () => {
  it("finds the lowest peak of all offsets there are, with one evaluation for each that differs in load", () => {
    fc.assert(
      fc.property(
        anySearch.filter(({ periods }) => periods.reduce((all, period) => all * period, 1) <= 1_500),
        ({ recall, periods, bundles, offsets, search }) => {
          const start = search.place(bundles, offsets);
          const best = search.exhaust(bundles, start);
          expect(search.evaluations()).toBe(1 + offsetSpace(periods, bundles));
          const peaks = everyOffset(periods).map((chosen) => {
            const compartments = periods.map((period, k) => ({
              period,
              bundles: bundles[k] ?? 1,
              offset: chosen[k] ?? 0,
            }));
            return steadyLoad({ compartments }, recall).peak;
          });
          expect(Math.abs(best.peak / Math.min(...peaks) - 1)).toBeLessThan(ABOUT_SAME);
        },
      ),
      { numRuns: 25 },
    );
  });
});

/** Every offset of every compartment, equal loads and turned charts included. */
const everyOffset = (periods: readonly number[]): readonly (readonly number[])[] =>
  periods.reduce<readonly (readonly number[])[]>(
    (all, period) => all.flatMap((chosen) => Array.from({ length: period }, (_, offset) => [...chosen, offset])),
    [[]],
  );

describe("seeded offsets", () => {
  it("are below the steps, the same for the same key and not always the same", () => {
    const periods = [1, 2, 4, 8, 16];
    const bundles = [1, 1, 2, 1, 4];
    const drawn = Array.from({ length: 50 }, (_, i) => randomOffsets(periods, bundles, `${i}`));
    for (const offsets of drawn) {
      for (const [k, offset] of offsets.entries()) expect(offset).toBeLessThan([1, 2, 2, 8, 4][k] ?? 0);
    }
    expect(randomOffsets(periods, bundles, "7")).toEqual(drawn[7]);
    expect(new Set(drawn.map((offsets) => offsets.join())).size).toBeGreaterThan(20);
  });
});
