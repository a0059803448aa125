import { expect, test } from "vitest";
import { plainChart } from "../../core/chart/make-chart.ts";
import { patternTicks, placeTicks, RULER } from "./ruler-geometry.ts";

test("the plain chart draws the pattern of a ruler", () => {
  expect(patternTicks(plainChart(4)).map((tick) => tick.top)).toEqual([2, 3, 2, 4, 2, 3, 2, 1]);
});

test("a tick is longer the higher its compartment, within the drawing", () => {
  const ticks = placeTicks(patternTicks(plainChart(4)), null, 4, 15);
  expect(ticks[3]?.length).toBe(RULER.longest);
  expect(ticks[7]?.length).toBe(RULER.shortest);
});

test("a day missed while the chart waits is a short tick, a rest day none", () => {
  const day = { day: null, chartDay: null, top: 0, sat: false, reviews: 0 };
  const missed = { ...day, date: "2026-11-23", rest: false };
  const rest = { ...day, date: "2026-11-24", rest: true };
  const ticks = placeTicks([missed, rest], "2026-11-25", 7, 15);
  expect(ticks.map((tick) => [tick.missed, tick.length])).toEqual([
    [true, RULER.shortest],
    [false, 0],
  ]);
});

test("ticks know the past from what is ahead", () => {
  const day = { day: 1, chartDay: 1, top: 1, rest: false, sat: true, reviews: 3 };
  const dates = ["2026-11-24", "2026-11-25", "2026-11-26"].map((date) => ({ ...day, date }));
  expect(placeTicks(dates, "2026-11-25", 7, 15).map((tick) => tick.when)).toEqual(["past", "today", "ahead"]);
});
