import { expect, test } from "vitest";
import type { PlanDay } from "../../../core/load/plan-load.ts";
import { comparedWords, dayWords, meanWords, paceWords, worstWords } from "./year-words.ts";

const dayOf = (date: string, cards: number, change: Partial<PlanDay> = {}): PlanDay => ({
  date,
  kind: "sitting",
  day: 1,
  newCards: 10,
  reviews: { mean: cards, sd: 12, quantiles: [cards - 21, cards + 21] },
  misses: cards / 10,
  minutes: { mean: cards / 6.7, sd: 2, quantiles: [cards / 6.7 - 3, cards / 6.7 + 3] },
  ...change,
});
const NOTHING = { mean: 0, sd: 0, quantiles: [0, 0] };
const YEAR = [dayOf("2027-07-13", 140), dayOf("2027-07-14", 276), dayOf("2027-07-15", 208)];

test("the worst day is named with its cards and its minutes", () => {
  expect(worstWords(YEAR, "cards")).toBe(
    "The worst day is Wednesday 14 July 2027: about 276 cards and 10 new ones, 41 minutes.",
  );
});

test("a mean sitting is said with the range of most days", () => {
  expect(meanWords(YEAR)).toBe(
    "A sitting has about 208 cards and takes about 31 minutes; on most days it has 140 to 276.",
  );
});

test("a year without work says so instead of naming a worst day", () => {
  const idle = dayOf("2027-07-14", 0, { newCards: 0, reviews: NOTHING, minutes: NOTHING });
  expect(worstWords([idle], "cards")).toBe("There is nothing to do in the coming year.");
  expect(meanWords([idle])).toBe("");
});

test("a day is said in full, in the unit that is shown", () => {
  const day = dayOf("2027-07-14", 276);
  expect(dayWords(day, "cards")).toBe(
    "Wednesday 14 July 2027: about 276 cards and 10 new ones, 41 minutes; nine times in ten 255 to 297 cards.",
  );
  expect(dayWords(day, "minutes")).toMatch(/nine times in ten 38 to 44 minutes\.$/);
});

test("rest days and missed days are said to be such", () => {
  expect(dayWords(dayOf("2026-11-29", 0, { kind: "rest" }), "cards")).toBe("Sunday 29 November 2026: a rest day.");
  expect(dayWords(dayOf("2026-11-30", 0, { kind: "missed" }), "cards")).toMatch(/missed/);
});

test("two plans are compared by their mean sitting", () => {
  const lighter = YEAR.map((day) => dayOf(day.date, day.reviews.mean - 40));
  expect(comparedWords(lighter, YEAR, "cards")).toBe(
    "On average a sitting has about 40 cards more than in the pinned plan.",
  );
  expect(comparedWords(YEAR, lighter, "minutes")).toBe(
    "On average a sitting takes about 6 minutes less than in the pinned plan.",
  );
  expect(comparedWords(YEAR, YEAR, "cards")).toMatch(/as much as/);
});

test("what the minutes are reckoned with is said, and whether it was measured", () => {
  const pace = { recalled: 8, missed: 20, fresh: 45 };
  expect(paceWords({ pace, paceMeasured: false })).toBe(
    "Minutes count 8 seconds for a card recalled, 20 for one missed and asked again, 45 for a new one: as is common, until your own sittings are measured.",
  );
  expect(paceWords({ pace, paceMeasured: true })).toMatch(/as your own sittings usually take\.$/);
});
