import { describe, expect, it } from "vitest";
import { LONGEST_FORMULA } from "../text/formula-limits.ts";
import { contentProblem, MOST_PARTS } from "./check-content.ts";
import { type FactContent, NO_EXTRAS, type PictureLabel } from "./fact.ts";

const PHOTO = "a".repeat(64);
const label = (change: Partial<PictureLabel> = {}): PictureLabel => ({
  ...{ number: 1, name: "Rigel", x: 0.6, y: 0.7, width: 0.1, height: 0.1 },
  ...change,
});
const list = (...items: string[]): FactContent => ({
  ...NO_EXTRAS,
  kind: "list",
  title: "Planets",
  items,
  numbers: items.map((_, i) => i + 1),
});
const labelled = (...labels: PictureLabel[]): FactContent => ({
  ...NO_EXTRAS,
  kind: "labelled",
  picture: PHOTO,
  labels,
});
const spelling = (clue: string, sound: string | null): FactContent => ({
  ...NO_EXTRAS,
  ...{ kind: "spelling", clue, word: "Zubenelgenubi", accents: "count", letterCase: "count", sound },
});
const formula = (text: string): FactContent => ({ ...NO_EXTRAS, kind: "formula", name: "Kepler", formula: text });

describe("a fact can be asked", () => {
  it.each([
    ["a list of two", list("Mercury", "Venus")],
    ["a spelling with a clue", spelling("alpha Librae", null)],
    ["a spelling that is only heard", spelling("", PHOTO)],
    ["a formula", formula("T^2 \\propto a^3")],
    ["a label in the corner", labelled(label({ x: 0.9, y: 0.9 }))],
    ["a label whose digits add up to a little more than the whole", labelled(label({ x: 0.667, width: 0.3334 }))],
  ])("if it is %s", (_, content) => {
    expect(contentProblem(content)).toBeNull();
  });
});

describe("a fact cannot be asked", () => {
  it.each([
    ["a list of one", list("Mercury"), "at least two"],
    ["a list with an empty item", list("Mercury", " "), "item 2 is empty"],
    ["a list with an item of two lines", list("Mer\ncury", "Venus"), "item 1 has more than one line"],
    ["a list without a title", { ...list("a", "b"), title: "" } as FactContent, "title is still empty"],
    ["a list that is too long", list(...Array.from({ length: MOST_PARTS + 1 }, String)), "at most 200 items"],
    ["a spelling with nothing to ask it with", spelling("", null), "neither a clue nor a sound"],
    ["a formula that is too long", formula("x".repeat(LONGEST_FORMULA + 1)), "more than 2,000"],
    ["a picture without labels", labelled(), "no label yet"],
    ["a label without a name", labelled(label({ name: "" })), "label 1 has no name"],
    ["a label outside", labelled(label(), label({ x: 0.95 })), "label 2 does not lie inside"],
    ["a label without an area", labelled(label({ width: 0 })), "does not lie inside"],
    ["a label at no place", labelled(label({ x: Number.NaN })), "does not lie inside"],
  ])("if it is %s", (_, content, reason) => {
    expect(contentProblem(content)?.reason).toContain(reason);
  });

  it("if its statement has no gap, with the place of the trouble", () => {
    const statement: FactContent = { ...NO_EXTRAS, kind: "statement", statement: "Vega [rises", gaps: [] };
    expect(contentProblem(statement)).toEqual({ at: 6, reason: "a [ is never closed" });
  });
});
