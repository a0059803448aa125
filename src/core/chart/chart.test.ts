import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyChart } from "../../../tests/support/any-chart.ts";
import {
  arrival,
  bundleVisited,
  CHART_LIMITS,
  type Chart,
  type ChartCompartment,
  chartDay,
  checkChart,
  compartmentCount,
  cycleLength,
  lastVisit,
  sameChart,
  tabCount,
  visitsOn,
} from "./chart.ts";
import { LEVELLED_CHART, plainChart } from "./make-chart.ts";

const anyDay = fc.integer({ min: 1, max: 500 });
const inAny = fc.tuple(anyChart, fc.nat(), anyDay).map(([chart, n, day]) => {
  const k = (n % compartmentCount(chart)) + 1;
  return { chart, k, day, own: chart.compartments[k - 1] as ChartCompartment };
});

/** Bundle visited most recently on or before the day, and its next visit, found by turning calendar pages. */
function leafedThrough(chart: Chart, k: number, day: number): { bundle: number; due: number } {
  let back = day;
  while (bundleVisited(chart, k, back) === null) back--;
  const bundle = bundleVisited(chart, k, back) ?? 0;
  let due = day + 1;
  while (bundleVisited(chart, k, due) !== bundle) due++;
  return { bundle, due };
}

describe("any chart", () => {
  it("has a last visit of each compartment on or before every day", () => {
    fc.assert(
      fc.property(inAny, ({ chart, k, day }) => {
        const last = lastVisit(chart, k, day);
        const between = Array.from({ length: day - last + 1 }, (_, i) => bundleVisited(chart, k, last + i));
        expect(between.map((bundle) => bundle !== null)).toEqual(between.map((_, i) => i === 0));
      }),
    );
  });

  it("is the same as its copy, and as no chart that differs in one number or one compartment", () => {
    fc.assert(
      fc.property(inAny, ({ chart, k, own }) => {
        const other = (change: Partial<ChartCompartment>): Chart => ({
          compartments: chart.compartments.with(k - 1, { ...own, ...change }),
        });
        expect(sameChart(chart, other({}))).toBe(true);
        for (const part of ["period", "bundles", "offset"] as const) {
          expect(sameChart(chart, other({ [part]: own[part] + 1 }))).toBe(false);
        }
        const longer = { compartments: [...chart.compartments, own] };
        expect([sameChart(chart, longer), sameChart(longer, chart)]).toEqual([false, false]);
      }),
    );
  });

  it("visits every bundle of every compartment once in each of its periods, and no other", () => {
    fc.assert(
      fc.property(inAny, ({ chart, k, day, own }) => {
        const bundles = Array.from({ length: own.period }, (_, i) => bundleVisited(chart, k, day + i));
        const visited = bundles.filter((bundle) => bundle !== null).sort((a, b) => a - b);
        expect(visited).toEqual(Array.from({ length: own.bundles }, (_, i) => i + 1));
      }),
    );
  });

  it("visits bundle 1 on days congruent to the offset", () => {
    fc.assert(
      fc.property(inAny, ({ chart, k, own }) => {
        expect(bundleVisited(chart, k, own.offset + own.period)).toBe(1);
      }),
    );
  });

  it("lists the day's visits from the highest compartment to the lowest, each compartment once", () => {
    fc.assert(
      fc.property(anyChart, anyDay, (chart, day) => {
        const visits = visitsOn(chart, day).map(({ compartment }) => compartment);
        expect(visits).toEqual([...new Set(visits)].sort((a, b) => b - a));
        for (const { compartment, bundle } of visitsOn(chart, day)) {
          expect(bundleVisited(chart, compartment, day)).toBe(bundle);
        }
      }),
    );
  });

  it("says the same of a day and of the day one cycle later", () => {
    fc.assert(
      fc.property(anyChart, anyDay, (chart, day) => {
        expect(visitsOn(chart, day + cycleLength(chart))).toEqual(visitsOn(chart, day));
        expect(chartDay(chart, day + cycleLength(chart))).toBe(chartDay(chart, day));
      }),
    );
  });
});

describe("a card that arrives in a compartment", () => {
  it("joins the bundle visited most recently on or before the day and is due at its next visit", () => {
    fc.assert(
      fc.property(inAny, ({ chart, k, day }) => {
        expect(arrival(chart, k, day)).toEqual(leafedThrough(chart, k, day));
      }),
    );
  });

  it("waits more than period - period/bundles and at most the period", () => {
    fc.assert(
      fc.property(inAny, ({ chart, k, day, own: { period, bundles } }) => {
        const wait = arrival(chart, k, day).due - day;
        expect(wait).toBeGreaterThan(period - period / bundles);
        expect(wait).toBeLessThanOrEqual(period);
      }),
    );
  });

  it("waits exactly the period where every day has its own bundle", () => {
    const dated: Chart = { compartments: [{ period: 16, bundles: 16, offset: 5 }] };
    for (let day = 1; day <= 40; day++) expect(arrival(dated, 1, day).due - day).toBe(16);
  });

  // Worked by hand: compartment 7 of the plain chart is visited on days 32, 96, 160 and compartment 6 on
  // 16, 48, 80 ..., so a card promoted out of 6 waits 16 or 48 days, never 64.
  it("waits 16 or 48 days for compartment 7 of the plain chart", () => {
    const waits = [16, 48, 80, 112].map((day) => arrival(plainChart(7), 7, day).due - day);
    expect(waits).toEqual([16, 48, 16, 48]);
  });
});

describe("a chart's measures", () => {
  it("are 7 compartments, 18 tabs and a cycle of 64 days for the chart of a new box", () => {
    expect(compartmentCount(LEVELLED_CHART)).toBe(7);
    expect(tabCount(LEVELLED_CHART)).toBe(18);
    expect(cycleLength(LEVELLED_CHART)).toBe(64);
  });

  it("are the least common multiple for periods that do not divide one another", () => {
    const chart = {
      compartments: [4, 6, 10].map((period) => ({ period, bundles: 1, offset: 0 })),
    };
    expect(cycleLength(chart)).toBe(60);
  });

  it("count chart days 1 to 64 and then 1 again", () => {
    expect([1, 64, 65, 128, 129].map((day) => chartDay(plainChart(7), day))).toEqual([1, 64, 1, 64, 1]);
  });
});

describe("checking a chart", () => {
  const one = (change: Partial<ChartCompartment>): Chart => ({
    compartments: [{ period: 8, bundles: 2, offset: 0, ...change }],
  });

  it("accepts every chart that is well formed and short enough", () => {
    fc.assert(
      fc.property(anyChart, (chart) => {
        expect(checkChart(chart).ok).toBe(cycleLength(chart) <= CHART_LIMITS.cycle);
      }),
    );
  });

  it.each([
    ["no compartments", { compartments: [] }, "1 to 20 compartments"],
    ["too many", { compartments: Array.from({ length: 21 }, () => one({}).compartments[0] as never) }, "not 21"],
    ["a period of nothing", one({ period: 0 }), "whole number of days"],
    ["half a day", one({ period: 2.5 }), "whole number of days"],
    ["not a number", one({ period: Number.NaN }), "whole number of days"],
    ["an endless period", one({ period: 100_001 }), "to 100000"],
    ["bundles that do not divide", one({ bundles: 3 }), "3 bundles"],
    ["no bundles", one({ bundles: 0 }), "0 bundles"],
    ["an offset beyond the period", one({ offset: 8 }), "from 0 to 7"],
    ["an offset before it", one({ offset: -1 }), "from 0 to 7"],
  ])("refuses %s and says what is allowed", (_what, chart, words) => {
    const checked = checkChart(chart);
    expect(checked.ok).toBe(false);
    expect(checked.ok ? "" : checked.error).toContain(words);
  });

  it("refuses periods that come round together only after more days than can be counted", () => {
    const primes = [97, 101, 103, 107, 109].map((period) => ({ period, bundles: 1, offset: 0 }));
    expect(checkChart({ compartments: primes }).ok).toBe(false);
  });
});
