import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkChart, tabCount, visitsOn } from "./chart.ts";
import { doublingPeriods, LEVELLED_CHART, plainChart, spreadChart } from "./make-chart.ts";

describe("the plain chart", () => {
  it("has the offsets of the ruler: compartment k on days congruent to 2^(k-2) modulo 2^(k-1)", () => {
    for (let size = 1; size <= 12; size++) {
      const offsets = plainChart(size).compartments.map(({ offset, period }) => ({ offset, period }));
      const ruler = doublingPeriods(size).map((period) => ({ offset: period === 1 ? 0 : period / 2, period }));
      expect(offsets).toEqual(ruler);
    }
  });

  it("has one tab for each compartment", () => {
    expect(tabCount(plainChart(7))).toBe(7);
  });
});

describe("spreading a chart", () => {
  const anyPeriods = fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 7 });

  it("keeps the periods that were asked for and gives offsets that a chart may have", () => {
    fc.assert(
      fc.property(anyPeriods, (periods) => {
        const { compartments } = spreadChart(periods);
        expect(compartments.map(({ period }) => period)).toEqual(periods);
        for (const one of compartments) expect(checkChart({ compartments: [one] }).ok).toBe(true);
      }),
    );
  });

  it("gives the second compartment the quietest days: apart from the first wherever the two need not meet", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 12 }), fc.integer({ min: 2, max: 12 }), (period, times) => {
        const chart = spreadChart([period, period * times]);
        const busiest = Math.max(...Array.from({ length: period * times }, (_, i) => visitsOn(chart, i + 1).length));
        expect(busiest).toBe(1);
      }),
    );
  });

  it("places bundles by their own step", () => {
    const { compartments } = spreadChart([1, 4], [1, 2]);
    expect(compartments[1]).toMatchObject({ period: 4, bundles: 2 });
    expect(visitsOn({ compartments }, 1)).toHaveLength(2);
    expect(visitsOn({ compartments }, 2)).toHaveLength(1);
    expect(visitsOn({ compartments }, 3)).toHaveLength(2);
  });
});

describe("the chart of a new box", () => {
  it("is one that a box may have, with doubling periods and bundles 1, 1, 1, 1, 2, 4, 8", () => {
    expect(checkChart(LEVELLED_CHART).ok).toBe(true);
    expect(LEVELLED_CHART.compartments.map(({ period }) => period)).toEqual(doublingPeriods(7));
    expect(LEVELLED_CHART.compartments.map(({ bundles }) => bundles)).toEqual([1, 1, 1, 1, 2, 4, 8]);
  });
});
