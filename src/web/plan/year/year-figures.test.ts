import { expect, test } from "vitest";
import { addDays } from "../../../core/calendar/local-date.ts";
import type { PlanDay } from "../../../core/load/plan-load.ts";
import { monthLeap, monthParts, sumUp, worstAt } from "./year-figures.ts";

const dayOf = (date: string, cards: number, minutes: number, kind: PlanDay["kind"] = "sitting"): PlanDay => ({
  date,
  kind,
  day: kind === "sitting" ? 1 : null,
  newCards: kind === "sitting" ? 5 : 0,
  reviews: { mean: cards, sd: 1, quantiles: [cards - 2, cards + 2] },
  misses: cards / 10,
  minutes: { mean: minutes, sd: 1, quantiles: [minutes - 1, minutes + 1] },
});

const DAYS = [
  dayOf("2026-11-25", 10, 9),
  dayOf("2026-11-26", 30, 4),
  dayOf("2026-11-27", 0, 0, "rest"),
  dayOf("2026-11-28", 30, 5),
];

test("the worst day depends on what is counted, and the first of equals is it", () => {
  expect(worstAt(DAYS, "cards")).toBe(1);
  expect(worstAt(DAYS, "minutes")).toBe(0);
  expect(worstAt([], "cards")).toBe(0);
});

test("a rest day does not make the mean day easier", () => {
  const sum = sumUp(DAYS);
  expect(sum.sittings).toBe(3);
  expect(sum.cards).toBeCloseTo(70 / 3, 12);
  expect(sum.minutes).toBe(6);
  expect(sum.newCards).toBe(5);
  expect(sum.worst?.date).toBe("2026-11-25");
});

test("most days leave out the twentieth at either end", () => {
  const days = Array.from({ length: 101 }, (_, i) => dayOf(addDays("2026-11-25", i), (i * 37) % 101, 1));
  expect(sumUp(days).most).toEqual([5, 95]);
});

test("a year without a sitting has no worst day", () => {
  expect(sumUp([dayOf("2026-11-27", 0, 0, "rest")])).toMatchObject({ sittings: 0, cards: 0, worst: null });
});

const dates = (from: string, count: number) => Array.from({ length: count }, (_, i) => ({ date: addDays(from, i) }));

test("dates fall into months", () => {
  expect(monthParts(dates("2026-11-25", 40))).toEqual([
    { month: "2026-11", first: 0, days: 6 },
    { month: "2026-12", first: 6, days: 31 },
    { month: "2027-01", first: 37, days: 3 },
  ]);
});

test("a month's leap lands on the same day of the month, or on the last one there is", () => {
  const year = dates("2026-11-25", 365);
  const leap = (from: string, direction: 1 | -1) => {
    const at = year.findIndex(({ date }) => date === from);
    return year[monthLeap(year, at, direction)]?.date;
  };
  expect(leap("2027-01-31", 1)).toBe("2027-02-28");
  expect(leap("2027-03-15", -1)).toBe("2027-02-15");
  expect(leap("2026-12-03", -1)).toBe("2026-11-25");
  expect(leap("2027-11-20", 1)).toBe("2027-11-24");
  expect(leap("2026-11-26", -1)).toBe("2026-11-25");
});
