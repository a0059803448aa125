import { describe, expect, it } from "vitest";
import { changeWords, loadWords, tabWords } from "./change-words.ts";

describe("a change of chart in words", () => {
  it("says that every card is kept, and how many move", () => {
    expect(changeWords({ cards: 488, moved: 212, days: [] })).toBe(
      "The box keeps all of its 488 cards. 212 cards move to the bundle whose next visit is nearest to their own day.",
    );
    expect(changeWords({ cards: 1, moved: 1, days: [] })).toBe(
      "The box keeps its one card. It moves to the bundle whose next visit is nearest to its own day.",
    );
    expect(changeWords({ cards: 488, moved: 0, days: [] })).toMatch(/each stays where it is\.$/);
    expect(changeWords({ cards: 0, moved: 0, days: [] })).toMatch(/no cards in its compartments yet/);
  });

  it("compares the coming days", () => {
    const days = [
      { date: "2026-11-25", sits: true, before: 140, after: 90 },
      { date: "2026-11-26", sits: true, before: 60, after: 110.4 },
    ];
    expect(loadWords(days)).toBe(
      "In the coming 2 days the heaviest asks 140 cards as it is (Wed 25 Nov) and 110 cards with the new chart (Thu 26 Nov). In all 200 and 200.",
    );
    expect(loadWords([])).toBe("");
  });

  it("says what to do with tabs of paper", () => {
    expect(tabWords({ write: ["5·3 to 5·4"], drop: ["7"] })).toMatch(
      /^On paper write these tabs: 5·3 to 5·4; take these out: 7; put each card where the Box page shows it/,
    );
    expect(tabWords({ write: [], drop: [] })).toMatch(/^On paper the tabs stay as they are; put each card/);
  });
});
