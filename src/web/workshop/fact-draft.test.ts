import { expect, test } from "vitest";
import { type Fact, NO_EXTRAS } from "../../core/facts/fact.ts";
import {
  anglesOf,
  draftCards,
  draftOf,
  EMPTY_DRAFT,
  inputOf,
  previewFact,
  problemOf,
  saveProblem,
} from "./fact-draft.ts";

const statement = (text: string) => ({ ...EMPTY_DRAFT, kind: "statement" as const, statement: text });

const kept: Fact = {
  id: "f",
  subject: "s",
  kind: "statement",
  statement: "[Vega] lies in [Lyra]",
  gaps: [1, 2],
  angles: ["gap-1", "gap-2"],
  ...NO_EXTRAS,
  tags: ["star"],
};

test("a draft makes cards only when nothing keeps it from being saved", () => {
  expect(draftCards({ ...EMPTY_DRAFT, prompt: "Vega" }, null)).toEqual([]);
  expect(draftCards({ ...EMPTY_DRAFT, prompt: "Vega", answer: "Lyra" }, null).map((card) => card.angle)).toEqual([
    "forward",
    "reverse",
  ]);
});

test("a gap that cannot be read is explained with its place", () => {
  expect(problemOf(statement("Vega lies in [Lyra"))).toBe("Character 14: a [ is never closed.");
});

test("a reworded statement keeps the numbers of its gaps", () => {
  const fact = previewFact(statement("In [Lyra] lies [Vega] with [Sheliak]"), kept);
  expect(fact.kind === "statement" && fact.gaps).toEqual([2, 1, 3]);
});

test("angles are sent only when one is or was switched off", () => {
  const draft = draftOf(kept);
  expect(anglesOf(draft, kept)).toEqual({});
  expect(anglesOf({ ...draft, off: ["gap-2"] }, kept)).toEqual({ angles: ["gap-1"] });
});

test("a fact that is asked from nowhere is not saved", () => {
  const pair = { ...EMPTY_DRAFT, prompt: "Vega", answer: "Lyra" };
  expect(saveProblem(pair, null)).toBe(null);
  expect(saveProblem({ ...pair, off: ["forward", "reverse"] }, null)).toBe("Tick at least one way to ask it.");
});

test("tags are trimmed, and each is sent once", () => {
  expect(inputOf({ ...EMPTY_DRAFT, tags: " star, Lyra ,star," }, null).tags).toEqual(["star", "Lyra"]);
});
