import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyChart } from "../../../tests/support/any-chart.ts";
import { type Chart, tabCount } from "../chart/chart.ts";
import { doublingPeriods, spreadChart } from "../chart/make-chart.ts";
import { dividerPages, dividersOf, shapeOf, TAB } from "./divider-pages.ts";
import { SHEETS, type Size } from "./paper.ts";

const A7: Size = { width: 105, height: 74 };
const plain = spreadChart(doublingPeriods(7), [1, 1, 1, 1, 1, 1, 1]);

describe("dividers", () => {
  it("are one for every bundle, one for the stock and one for what is kept", () => {
    fc.assert(
      fc.property(anyChart, (chart: Chart) => {
        expect(dividersOf(chart, A7.width)).toHaveLength(tabCount(chart) + 2);
      }),
    );
  });

  it("have tabs that never hide the tab behind them, and that stay within the card", () => {
    fc.assert(
      fc.property(anyChart, fc.integer({ min: 40, max: 200 }), (chart, width) => {
        const cell = { x: 7, y: 9, width, height: 60, turned: false };
        const tabs = dividersOf(chart, width).map((divider) => shapeOf(divider, cell).tab);
        for (const [i, tab] of tabs.entries()) {
          expect(tab.x).toBeGreaterThanOrEqual(cell.x);
          expect(tab.x + tab.width).toBeLessThanOrEqual(cell.x + cell.width + 1e-9);
          const next = tabs[i + 1];
          if (next) expect(next.x >= tab.x + tab.width - 1e-9 || next.x + next.width <= tab.x + 1e-9).toBe(true);
        }
      }),
    );
  });

  it("say on which chart days their pile is visited and where its cards go", () => {
    // Common practice for the plain chart of 64 days: compartment 7 on day 32, compartment 3 on days 2, 6, 10 …
    const dividers = dividersOf(plain, A7.width);
    expect(dividers.find((one) => one.label === "3")?.lines[0]).toBe(
      "Visited every 4 days: on chart days 2, 6, 10, 14 … of 64.",
    );
    expect(dividers.find((one) => one.label === "7")?.lines).toEqual([
      "Visited every 64 days: on chart day 32 of 64.",
      "Recalled: the card is kept.",
      "Missed: back to compartment 1.",
    ]);
  });

  it("name the bundle where a compartment is divided", () => {
    const labels = dividersOf(spreadChart([1, 4], [1, 2]), A7.width).map((one) => one.label);
    expect(labels).toEqual(["Stock", "1", "2·1", "2·2", "Kept"]);
  });

  it("have an outline that is closed and as high as card and tab", () => {
    const cell = { x: 0, y: 0, width: A7.width, height: A7.height + TAB.height, turned: false };
    const { outline } = shapeOf({ position: 1 }, cell);
    for (const [i, line] of outline.entries()) expect(line.from).toEqual(outline.at(i - 1)?.to);
    expect(Math.max(...outline.map((line) => line.from[1]))).toBe(A7.height + TAB.height);
  });

  it("are refused where not even one fits", () => {
    expect(dividerPages(plain, { width: 105, height: 290 }, SHEETS.a4 as Size)).toMatchObject({ ok: false });
  });
});
