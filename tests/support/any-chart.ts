// Charts for properties: any number of compartments, periods, bundles that divide them, and offsets.
import fc from "fast-check";
import type { Chart, ChartCompartment } from "../../src/core/chart/chart.ts";

const divisors = (n: number): readonly number[] =>
  Array.from({ length: n }, (_, i) => i + 1).filter((size) => n % size === 0);

const anyCompartment = (longest: number): fc.Arbitrary<ChartCompartment> =>
  fc.integer({ min: 1, max: longest }).chain((period) =>
    fc.record({
      period: fc.constant(period),
      bundles: fc.constantFrom(...divisors(period)),
      offset: fc.integer({ min: 0, max: period - 1 }),
    }),
  );

/** Any chart of 1 to 8 compartments with periods of up to 64 days. */
export const anyChart: fc.Arbitrary<Chart> = fc
  .array(anyCompartment(64), { minLength: 1, maxLength: 8 })
  .map((compartments) => ({ compartments }));

/** A chart small enough that cards reach its end within a few weeks; compartment 1 is visited every day. */
export const shortChart: fc.Arbitrary<Chart> = fc
  .array(anyCompartment(6), { minLength: 0, maxLength: 3 })
  .map((higher) => ({ compartments: [{ period: 1, bundles: 1, offset: 0 }, ...higher] }));
