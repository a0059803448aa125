import { expect, test } from "vitest";
import type { DeadlineChoice, DeadlinePlan } from "../../../core/load/deadline.ts";
import { cautionWords, choiceWords, gentleWords, readyWords } from "./ready-words.ts";

const BEST: DeadlineChoice = {
  each: 7,
  last: "2026-12-28",
  introduced: 200,
  recalled: { mean: 188.6, sd: 3, quantiles: [183, 194] },
};
const GENTLE: DeadlineChoice = {
  each: 4,
  last: "2027-01-21",
  introduced: 200,
  recalled: { mean: 187.1, sd: 3, quantiles: [181, 193] },
};
const NONE: DeadlineChoice = { each: 0, last: null, introduced: 0, recalled: { mean: 0, sd: 0, quantiles: [0, 0] } };
const PLAN: DeadlinePlan = { best: BEST, gentle: GENTLE, curve: [BEST, GENTLE], sittings: 82, within: true };
const WISH = { by: "2027-03-01", cards: 200 };

test("the pace, the last day and the number recalled are said in one sentence each", () => {
  expect(readyWords(PLAN, WISH)).toEqual([
    "7 new cards a day, the last on Monday 28 December 2026. On 1 March 2027 about 189 of the 200 are recalled, nine times in ten 183 to 194.",
  ]);
});

test("a gentler choice is offered only where it is slower", () => {
  expect(gentleWords(PLAN)).toMatch(
    /^Gentler: 4 new cards a day, the last on Thursday 21 January 2027, and still about 187/,
  );
  expect(gentleWords({ ...PLAN, gentle: BEST })).toBeNull();
});

test("cards that do not fit are said to be left over", () => {
  const wish = { ...WISH, cards: 260 };
  expect(readyWords(PLAN, wish)[1]).toBe("There is room for 200 of the 260 cards before the date.");
});

test("a date without a way says why there is none", () => {
  const none = { ...PLAN, best: NONE, gentle: NONE, curve: [] };
  expect(readyWords({ ...none, sittings: 0 }, WISH)).toEqual(["There is no sitting before 1 March 2027."]);
  expect(readyWords({ ...none, within: false }, WISH)[0]).toMatch(/without any new ones/);
  expect(readyWords(none, WISH)[0]).toMatch(/no room/);
  expect(gentleWords({ ...none, within: false })).toBeNull();
});

test("a point of the curve is said in full", () => {
  expect(choiceWords(GENTLE)).toBe(
    "Last new cards on Thursday 21 January 2027, 4 cards a day: about 187 of the 200 are recalled, nine times in ten 181 to 193.",
  );
});

test("it is said what the range holds", () => {
  expect(cautionWords(true)).toMatch(/The range holds chance and what is not yet known about your recall\.$/);
  expect(cautionWords(false)).toMatch(/The range holds chance alone, as if recall were known\.$/);
});
