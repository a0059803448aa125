import { expect, test } from "vitest";
import { isLocalDate, isoWeekday } from "../../../core/calendar/local-date.ts";
import { keyDate, monthsFrom } from "./month-days.ts";

test("a month stands in weeks that begin on Monday", () => {
  const [november] = monthsFrom("2026-11-25", 1);
  expect(november?.month).toBe("2026-11");
  expect(november?.weeks[0]).toEqual([null, null, null, null, null, null, "2026-11-01"]);
  expect(november?.weeks.at(-1)?.[0]).toBe("2026-11-30");
});

test("twelve months hold every day of theirs once, each under its weekday", () => {
  const months = monthsFrom("2027-11-25", 12);
  const days = months.flatMap(({ weeks }) => weeks.flat()).filter((day) => day !== null);
  expect(days).toHaveLength(366);
  expect(new Set(days).size).toBe(366);
  expect(days.every(isLocalDate)).toBe(true);
  const places = months.flatMap(({ weeks }) =>
    weeks.flatMap((week) => week.map((day, i) => ({ day, weekday: i + 1 }))),
  );
  expect(places.filter(({ day, weekday }) => day !== null && isoWeekday(day) !== weekday)).toEqual([]);
});

test("keys lead by days, weeks, to the ends of a week, and by months", () => {
  const from = (key: string) => keyDate(key, "2027-03-31");
  expect(["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown"].map(from)).toEqual([
    "2027-03-30",
    "2027-04-01",
    "2027-03-24",
    "2027-04-07",
  ]);
  expect(["Home", "End", "PageUp", "PageDown"].map(from)).toEqual([
    "2027-03-29",
    "2027-04-04",
    "2027-02-28",
    "2027-04-30",
  ]);
  expect(from("Tab")).toBeNull();
});
