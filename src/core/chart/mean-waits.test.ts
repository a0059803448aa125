import fc from "fast-check";
import { expect, test } from "vitest";
import { anyChart } from "../../../tests/support/any-chart.ts";
import { step } from "./chart.ts";
import { plainChart } from "./make-chart.ts";
import { meanWaits } from "./mean-waits.ts";
import { steadyLoad } from "./steady-load.ts";

// By hand: promoted to 7 on days 16 and 48 of the plain chart, visited on day 32: waits of 16 and 48 days. To 2 on any
// day, visited on odd days, today's visit counting as just gone: 2 days and 1.
test("cards of the plain chart wait for half their period", () => {
  expect(meanWaits(plainChart(7))).toEqual([1, 1.5, 2, 4, 8, 16, 32]);
});

test("cards with a date of their own wait for their period", () => {
  const dated = { compartments: [1, 3, 9, 27].map((period) => ({ period, bundles: period, offset: 0 })) };
  expect(meanWaits(dated)).toEqual([1, 3, 9, 27]);
});

test("every mean lies where waits can lie", () => {
  fc.assert(
    fc.property(anyChart, (chart) => {
      for (const [i, wait] of meanWaits(chart).entries()) {
        const compartment = chart.compartments[i];
        if (!compartment) throw new Error("a compartment is missing");
        expect(wait).toBeGreaterThan(compartment.period - step(compartment));
        expect(wait).toBeLessThanOrEqual(compartment.period);
      }
    }),
  );
});

test("where nothing is missed and new cards come daily, the waits of a chart of dated cards add up to the days until kept", () => {
  const dated = { compartments: [1, 2, 4, 8].map((period) => ({ period, bundles: period, offset: 0 })) };
  const sum = meanWaits(dated).reduce((all, one) => all + one, 0);
  expect(steadyLoad(dated, [1, 1, 1, 1]).daysUntilKept).toBeCloseTo(sum, 9);
});
