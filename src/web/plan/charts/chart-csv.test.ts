import { expect, test } from "vitest";
import { spreadChart } from "../../../core/chart/make-chart.ts";
import { chartCsv } from "./chart-csv.ts";

test("each day of the cycle is a row with what is visited and the cards", () => {
  const chart = spreadChart([1, 2, 4], [1, 1, 2]);
  const rows = chartCsv(chart, [10, 12.5, 9, 8]).trimEnd().split("\r\n");
  expect(rows[0]).toBe("chart_day,visited,cards_mean");
  expect(rows).toHaveLength(5);
  // Compartment 2 on odd days, the two bundles of compartment 3 in turn on even ones.
  expect(rows.slice(1)).toEqual(["1,2 1,10", "2,3·1 1,12.5", "3,2 1,9", "4,3·2 1,8"]);
});
