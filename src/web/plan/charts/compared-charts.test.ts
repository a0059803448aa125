import { describe, expect, it } from "vitest";
import { LEVELLED_CHART, plainChart, spreadChart } from "../../../core/chart/make-chart.ts";
import { chartKey, comparedCharts } from "./compared-charts.ts";

const names = (...args: Parameters<typeof comparedCharts>): readonly string[] =>
  comparedCharts(...args).map(({ name }) => name);

const TRIPLING = spreadChart([1, 3, 9, 27, 81]);

describe("the charts side by side", () => {
  it("begin with the box's own, the same without bundles and with a tab for every day", () => {
    expect(names({ chart: TRIPLING }, [], TRIPLING)).toEqual([
      "Your chart",
      // Without bundles it is what it is already.
      "Dated cards",
      "Levelled chart",
    ]);
    expect(names({ chart: LEVELLED_CHART }, [], LEVELLED_CHART)).toEqual(["Your chart", "Plain chart", "Dated cards"]);
  });

  it("begin with the levelled chart without a box", () => {
    expect(names(null, [], LEVELLED_CHART)).toEqual(["Levelled chart", "Plain chart", "Dated cards"]);
  });

  it("have dated cards only while their tabs can be kept apart", () => {
    expect(names({ chart: plainChart(9) }, [], plainChart(9))).toContain("Dated cards");
    // 1 + 2 + … + 512 = 1,023 tabs.
    expect(names({ chart: plainChart(10) }, [], plainChart(10))).not.toContain("Dated cards");
  });

  it("hold what was found, each chart once, and only that can be put away", () => {
    const found = [
      { name: "Designed, 5 tabs", chart: TRIPLING },
      { name: "Designed, 18 tabs", chart: LEVELLED_CHART },
    ];
    const charts = comparedCharts({ chart: LEVELLED_CHART }, found, TRIPLING);
    expect(charts.map(({ name }) => name)).toEqual(["Your chart", "Plain chart", "Dated cards", "Designed, 5 tabs"]);
    expect(charts.map(({ found }) => found)).toEqual([false, false, false, true]);
  });

  it("hold the planned chart wherever it came from", () => {
    const charts = comparedCharts({ chart: LEVELLED_CHART }, [], TRIPLING);
    expect(charts.at(-1)).toMatchObject({ name: "Planned chart", chart: TRIPLING, found: false });
  });

  it("are told apart by bundles and offsets, not by who made them", () => {
    const moved = {
      compartments: LEVELLED_CHART.compartments.map((one, i) => (i === 6 ? { ...one, offset: 3 } : one)),
    };
    expect(chartKey(moved)).not.toBe(chartKey(LEVELLED_CHART));
    expect(chartKey({ compartments: LEVELLED_CHART.compartments.map((one) => ({ ...one })) })).toBe(
      chartKey(LEVELLED_CHART),
    );
  });
});
