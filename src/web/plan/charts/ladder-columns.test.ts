import { describe, expect, it } from "vitest";
import { type LadderFigures, searchLadders } from "../../../core/chart/search-ladders.ts";
import { FIRST_ORDER, inOrder, LADDER_COLUMNS, orderPressed } from "./ladder-columns.ts";

function ladders(): readonly LadderFigures[] {
  const found = searchLadders({ recall: 0.9, tabs: 12, budget: 50, compartments: [4, 5, 7], ratios: [1.5, 2, 3] });
  if (!found.ok) throw new Error(found.error);
  return found.value;
}

const LADDERS = ladders();

describe("the order of ladders", () => {
  it("begins with the ladder by which a card is kept soonest", () => {
    const soonest = Math.min(...LADDERS.map(({ daysUntilKept }) => daysUntilKept));
    expect(inOrder(LADDERS, FIRST_ORDER)[0]?.daysUntilKept).toBe(soonest);
  });

  it("leaves ladders that are alike in it as they were", () => {
    const fours = LADDERS.filter(({ compartments }) => compartments === 4);
    expect(inOrder(fours, { by: "reviews", falling: true })).toEqual(fours);
  });

  it.each(LADDER_COLUMNS)("rises and falls by $key", ({ key, value }) => {
    const rising = inOrder(LADDERS, { by: key, falling: false }).map(value);
    expect(rising).toEqual([...rising].sort((a, b) => a - b));
    const falling = inOrder(LADDERS, { by: key, falling: true }).map(value);
    expect(falling).toEqual([...rising].reverse());
  });

  it("turns round when the same heading is pressed again", () => {
    const once = orderPressed(FIRST_ORDER, "wait");
    expect(once).toEqual({ by: "wait", falling: false });
    expect(orderPressed(once, "wait")).toEqual({ by: "wait", falling: true });
    expect(orderPressed(once, "year")).toEqual({ by: "year", falling: false });
  });
});

describe("the columns of ladders", () => {
  it("tell the figures of each at the pace", () => {
    const five = LADDERS.find(({ periods }) => periods.join() === "1,3,9,27,81");
    if (!five) throw new Error("the ladder of five is missing");
    const words = new Map(LADDER_COLUMNS.map((column) => [column.key, column.words(five, 20)]));
    expect(words.get("periods")).toBe("1, 3, 9, 27, 81");
    expect(words.get("growth")).toBe("3");
    // Feller, vol. 1, XIII.7: 6.935088 trials until five successes in a row at 0.9.
    expect(words.get("reviews")).toBe("6.9");
    expect(words.get("peak")).toBe(`${Math.round(6.935088 * 20 * five.peakToMean)}`);
    expect(words.get("proved")).toBe(five.exact ? "yes" : "no");
  });
});
