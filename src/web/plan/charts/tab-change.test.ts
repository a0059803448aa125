import { expect, test } from "vitest";
import { doublingPeriods, spreadChart } from "../../../core/chart/make-chart.ts";
import { tabChange } from "./tab-change.ts";

const chart = (...bundles: readonly number[]) => spreadChart(doublingPeriods(bundles.length), bundles);

test("the same bundles keep their tabs", () => {
  expect(tabChange(chart(1, 1, 2, 4), chart(1, 1, 2, 4))).toEqual({ write: [], drop: [] });
});

test("more bundles need further tabs, fewer leave some over", () => {
  expect(tabChange(chart(1, 1, 2, 4), chart(1, 1, 4, 2))).toEqual({ write: ["3·3 to 3·4"], drop: ["4·3 to 4·4"] });
});

test("a compartment that is first divided, or no longer, has its tabs written anew", () => {
  expect(tabChange(chart(1, 1), chart(1, 2))).toEqual({ write: ["2·1 to 2·2"], drop: ["2"] });
  expect(tabChange(chart(1, 2), chart(1, 1))).toEqual({ write: ["2"], drop: ["2·1 to 2·2"] });
});

test("compartments come and go with their tabs", () => {
  expect(tabChange(chart(1, 1), chart(1, 1, 4, 1))).toEqual({ write: ["3·1 to 3·4", "4"], drop: [] });
  expect(tabChange(chart(1, 1, 4, 1), chart(1, 1))).toEqual({ write: [], drop: ["3·1 to 3·4", "4"] });
});
