import { expect, test } from "vitest";
import { holidayProblem, typedHoliday, withHoliday } from "./holidays.tsx";

test("a holiday of one day needs no end", () => {
  expect(typedHoliday({ from: "2026-12-24", to: "" })).toEqual({ from: "2026-12-24", to: "2026-12-24" });
});

test("a holiday that ends before it begins is explained and not taken", () => {
  const typed = { from: "2026-12-24", to: "2026-12-20" };
  expect(typedHoliday(typed)).toBe(null);
  expect(holidayProblem(typed)).toBe("The holiday ends before it begins.");
});

test("holidays stand in order, each once", () => {
  const winter = { from: "2026-12-24", to: "2026-12-26" };
  const summer = { from: "2026-07-01", to: "2026-07-14" };
  expect(withHoliday([winter], summer)).toEqual([summer, winter]);
  expect(withHoliday([summer, winter], winter)).toEqual([summer, winter]);
});
