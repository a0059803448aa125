import { expect, test } from "vitest";
import { about, counted } from "./words.ts";

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
