import { expect, test } from "vitest";
import { plainChart } from "../../../core/chart/make-chart.ts";
import { YEAR_COLUMNS, yearCsv } from "./year-csv.ts";

test("each date is a row with the chart day that is written on it", () => {
  const spread = { mean: 12.5, sd: 2, quantiles: [9, 16] };
  const unknown = { mean: 3, sd: Number.NaN, quantiles: [] };
  const text = yearCsv(
    [
      { date: "2026-11-25", kind: "sitting", day: 9, newCards: 5, reviews: spread, misses: 1, minutes: unknown },
      { date: "2026-11-26", kind: "rest", day: null, newCards: 0, reviews: spread, misses: 0, minutes: unknown },
    ],
    plainChart(4),
  );
  const [header, first, second] = text.split("\r\n");
  expect(header).toBe(YEAR_COLUMNS.join(","));
  expect(first).toBe("2026-11-25,sitting,9,1,5,12.5,2,9,16,1,3,,,");
  expect(second).toMatch(/^2026-11-26,rest,,,0,/);
});
