import { describe, expect, it } from "vitest";
import { freshCalendar } from "../calendar/calendar.ts";
import { LEVELLED_CHART, plainChart, spreadChart } from "../chart/make-chart.ts";
import { boxByChart, visitsByChart } from "./plan-by-chart.ts";

const box = {
  chart: plainChart(3),
  // Compartment 3 of the plain chart is visited on days 2, 6, 10.
  waiting: [
    { compartment: 1, due: 5, count: 4 },
    { compartment: 3, due: 6, count: 7 },
  ],
  calendar: { ...freshCalendar("2026-03-14"), restWeekdays: [7] },
  last: { date: "2026-03-18", day: 4 },
  from: "2026-03-19",
};

describe("a box by another chart", () => {
  it("is the same box by its own chart", () => {
    expect(boxByChart(box, plainChart(3))).toBe(box);
  });

  // By hand: periods 1, 3, 9 spread; the nearest to a period of 4 is 3 (ratio 4/3, against 9/4). Day 5 is the first ahead.
  it("has its cards moved to the nearest periods and visits", () => {
    const chart = spreadChart([1, 3, 9]);
    const moved = boxByChart(box, chart);
    expect(moved.chart).toBe(chart);
    expect(moved.waiting).toHaveLength(2);
    expect(moved.waiting[0]).toEqual({ compartment: 1, due: 5, count: 4 });
    expect(moved.waiting[1]).toMatchObject({ compartment: 2, count: 7 });
    const due = moved.waiting[1]?.due ?? 0;
    expect(Math.abs(due - 6)).toBeLessThanOrEqual(1);
  });

  it("has its answers counted by the periods they were given for", () => {
    const visits = [1, 2, 3].map((compartment) => ({ compartment, recalled: 10 * compartment, missed: 1 }));
    const counted = visitsByChart(plainChart(3), LEVELLED_CHART, visits);
    expect(counted.map(({ compartment }) => compartment)).toEqual([1, 2, 3]);
    const coarse = visitsByChart(plainChart(3), spreadChart([1, 9]), visits);
    expect(coarse.map(({ compartment }) => compartment)).toEqual([1, 1, 2]);
  });
});
