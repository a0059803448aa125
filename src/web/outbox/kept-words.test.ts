import { expect, test } from "vitest";
import type { SentEntry } from "../client.ts";
import { keptWords } from "./kept-words.ts";

const entry = (id: string): SentEntry => ({ id, box: "box", at: 1, kind: "finish", sitting: "evening" });
const nothing = { waiting: [], held: new Map<string, string>(), unstored: new Set<string>() };

test("nothing is said while nothing waits", () => {
  expect(keptWords(nothing)).toBe("");
});

test("an answer that is held back says why", () => {
  const state = { ...nothing, waiting: [entry("a"), entry("b")], held: new Map([["a", "It belongs to another box."]]) };
  expect(keptWords(state)).toBe(
    "1 answer kept here until Longhold takes it. 1 answer kept here: It belongs to another box.",
  );
});

test("answers that the browser would not store are said to hang on this page", () => {
  const state = { ...nothing, waiting: [entry("a"), entry("b")], unstored: new Set(["b"]) };
  expect(keptWords(state)).toBe("2 answers kept only while this page stays open until Longhold takes them.");
});
