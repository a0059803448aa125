import { expect, test } from "vitest";
import type { DeadlineChoice } from "../../../core/load/deadline.ts";
import { CURVE_BASE, CURVE_PLOT, curvePaths, dateX, nearestChoice, numberY } from "./curve-geometry.ts";

const choiceOn = (last: string, mean: number): DeadlineChoice => ({
  each: 5,
  last,
  introduced: 100,
  recalled: { mean, sd: 2, quantiles: [mean - 5, mean + 5] },
});
/** Ten pixels a day. */
const FRAME = { width: CURVE_PLOT.left + CURVE_PLOT.right + 100, from: "2026-12-01", to: "2026-12-11", top: 150 };
const CURVE = [choiceOn("2026-12-03", 80), choiceOn("2026-12-08", 90)];

test("dates run from left to right and numbers upwards", () => {
  expect(dateX("2026-12-01", FRAME)).toBe(CURVE_PLOT.left);
  expect(dateX("2026-12-03", FRAME)).toBe(CURVE_PLOT.left + 20);
  expect(numberY(0, 150)).toBe(CURVE_BASE);
  expect(numberY(80, 150)).toBe(CURVE_BASE - 80);
});

test("the band lies around the line", () => {
  const [x, y] = [CURVE_PLOT.left, CURVE_BASE];
  const { mean, band } = curvePaths(CURVE, FRAME);
  expect(mean).toBe(`M${x + 20}.0 ${y - 80}.0L${x + 70}.0 ${y - 90}.0`);
  expect(band).toBe(
    `M${x + 20}.0 ${y - 85}.0L${x + 70}.0 ${y - 95}.0L${x + 70}.0 ${y - 85}.0L${x + 20}.0 ${y - 75}.0Z`,
  );
  expect(curvePaths([], FRAME)).toEqual({ mean: "", band: "" });
});

test("the nearest point of the curve is found from both sides", () => {
  expect(nearestChoice(CURVE, CURVE_PLOT.left + 30, FRAME)).toBe(0);
  expect(nearestChoice(CURVE, CURVE_PLOT.left + 60, FRAME)).toBe(1);
  expect(nearestChoice([], 0, FRAME)).toBe(0);
});
