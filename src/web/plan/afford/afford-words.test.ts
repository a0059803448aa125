import { expect, test } from "vitest";
import type { ExactDay } from "../../../core/load/exact-load.ts";
import { affordWords } from "./afford-words.ts";

const WORST: ExactDay = {
  day: 200,
  newCards: 9,
  reviews: { mean: 180, sd: 9, quantiles: [195] },
  missed: 18,
  minutes: { mean: 26, sd: 2, quantiles: [29.2] },
};
const FOUND = { each: 9, worst: WORST, minutes: 29.2, within: true, date: "2027-07-14" };

test("the pace is said with its busiest day and how sure that is", () => {
  expect(affordWords(FOUND, 0.95)).toBe(
    "9 new cards a day. The busiest day is then Wednesday 14 July 2027, at most 29 minutes on 95 days in 100.",
  );
});

test("a limit without room for new cards says whether the old ones keep it", () => {
  expect(affordWords({ ...FOUND, each: 0 }, 0.9)).toMatch(/^No new cards\. The busiest day/);
  expect(affordWords({ ...FOUND, each: 0, within: false }, 0.9)).toMatch(/ask for more than that without any new ones/);
});

test("a year without a sitting has nothing to afford", () => {
  expect(affordWords({ ...FOUND, worst: null, date: null }, 0.9)).toBe("There is no sitting in the coming year.");
});
