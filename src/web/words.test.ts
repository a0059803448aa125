import { expect, test } from "vitest";
import { about, counted, longDate, pileName, placeName } from "./words.ts";

test("times are said roughly", () => {
  expect([0, 0.4, 1, 25.3, 120].map(about)).toEqual([
    "no time at all",
    "less than a minute",
    "about 1 minute",
    "about 25 minutes",
    "about 2 hours",
  ]);
});

test("one is singular, all else plural", () => {
  expect([0, 1, 1200].map((n) => counted(n, "card"))).toEqual(["0 cards", "1 card", "1,200 cards"]);
});

test("a date is said with its weekday, whatever the time zone of the machine", () => {
  expect(longDate("2026-11-25")).toBe("Wednesday 25 November");
});

test("a bundle is named only where there is more than one", () => {
  expect([pileName(4, 1, 1), pileName(6, 2, 4)]).toEqual(["compartment 4", "compartment 6 · bundle 2"]);
});

test("a withdrawn card says where it was", () => {
  expect(placeName({ kind: "withdrawn", from: { kind: "stock" } }, [])).toBe("withdrawn (was in the stock)");
});
