import { expect, it } from "vitest";
import { outcomeWords } from "./outcome-words.ts";

const NOTHING = {
  ...{ sitting: "", date: "2026-03-14", day: 1 },
  ...{ recalled: 0, missed: 0, kept: 0, introduced: 0, left: 0, overtaken: 0 },
};

it("what results come to is said in whole sentences, one or many", () => {
  expect(outcomeWords(NOTHING)).toBe("");
  expect(outcomeWords({ ...NOTHING, recalled: 2, kept: 1, missed: 1, left: 1 })).toBe(
    "1 recalled card moves on, 1 card is kept for good, 1 missed card goes back to compartment 1, 1 card stays due.",
  );
  expect(outcomeWords({ ...NOTHING, introduced: 2, overtaken: 3 })).toBe(
    "2 new cards come into the box. 3 answers of later days no longer count, because the cards were not due any more by then.",
  );
  expect(outcomeWords({ ...NOTHING, overtaken: 1 })).toMatch(/^1 answer of a later day no longer counts, /);
});
