import { expect, test } from "vitest";
import { addDays } from "../../../core/calendar/local-date.ts";
import type { PlanDay } from "../../../core/load/plan-load.ts";
import {
  barPath,
  dayAt,
  dayX,
  EDGE,
  highest,
  loadPaths,
  stepFor,
  valueY,
  weekPath,
  YEAR_PLOT,
} from "./year-geometry.ts";

const dayOf = (i: number, mean: number, kind: PlanDay["kind"] = "sitting"): PlanDay => ({
  date: addDays("2026-11-25", i),
  kind,
  day: null,
  newCards: 0,
  reviews: { mean, sd: 1, quantiles: [mean - 10, mean + 10] },
  misses: 0,
  minutes: { mean: mean / 10, sd: 1, quantiles: [] },
});

const FRAME = { step: 10, top: YEAR_PLOT.load };
/** A pixel a card. */
const at = (cards: number): number => EDGE - cards;
const X = YEAR_PLOT.left;

test("the skyline breaks off on a rest day", () => {
  const days = [dayOf(0, 50), dayOf(1, 70), dayOf(2, 0, "rest"), dayOf(3, 60)];
  const paths = loadPaths(days, "cards", FRAME);
  expect(paths.days).toBe(`M${X} ${at(50)}H${X + 10}M${X + 10} ${at(70)}H${X + 20}M${X + 30} ${at(60)}H${X + 40}`);
  expect(paths.ground).toBe(
    `M${X} ${at(50)}H${X + 10}V${at(70)}H${X + 20}V${EDGE}H${X}ZM${X + 30} ${at(60)}H${X + 40}V${EDGE}H${X + 30}Z`,
  );
});

test("a week's mean leaves rest days out, and a week without a sitting breaks the line", () => {
  const week = (first: number, mean: number) => Array.from({ length: 7 }, (_, i) => dayOf(first + i, mean));
  const away = week(14, 0).map((day): PlanDay => ({ ...day, kind: "rest" }));
  const half = week(0, 40).map((day, i): PlanDay => (i < 3 ? { ...day, kind: "rest" } : day));
  expect(weekPath([...half, ...week(7, 60), ...away, ...week(21, 80)], "cards", FRAME)).toBe(
    `M${X + 35} ${at(40)}L${X + 105} ${at(60)}M${X + 245} ${at(80)}`,
  );
  expect(weekPath([...week(0, 40), dayOf(7, 90)], "cards", FRAME)).toBe(`M${X + 35} ${at(40)}`);
});

test("the band runs along the upper quantile and back along the lower one", () => {
  const { band } = loadPaths([dayOf(0, 50), dayOf(1, 70)], "cards", FRAME);
  expect(band).toBe(`M${X} ${at(60)}H${X + 10}V${at(80)}H${X + 20}V${at(60)}H${X + 10}V${at(40)}H${X}Z`);
});

test("where no quantiles are known the mean stands alone", () => {
  const { band } = loadPaths([dayOf(0, 500)], "minutes", FRAME);
  expect(band).toBe(`M${X} ${at(50)}H${X + 10}V${at(50)}H${X}Z`);
});

test("rest days that follow one another make one bar", () => {
  const days = [dayOf(0, 1), dayOf(1, 0, "rest"), dayOf(2, 0, "rest"), dayOf(3, 0, "missed")];
  expect(barPath(days, "rest", FRAME)).toBe(`M${X + 10} ${EDGE + 2}H${X + 30}v5H${X + 10}Z`);
  expect(barPath(days, "missed", FRAME)).toBe(`M${X + 30} ${EDGE + 2}H${X + 40}v5H${X + 30}Z`);
});

test("a place on the plot finds its day again", () => {
  const step = stepFor(1000, 365);
  for (const i of [0, 1, 200, 364]) expect(dayAt(dayX(i, step) + step / 2, step)).toBe(i);
});

test("the drawing is as high as the upper edge of the band", () => {
  expect(highest([dayOf(0, 50), dayOf(1, 70)], "cards")).toBe(80);
  expect(valueY(0, 100)).toBe(EDGE);
  expect(valueY(100, 100)).toBe(YEAR_PLOT.head);
});
