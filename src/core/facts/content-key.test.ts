import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { comparableText, contentKey } from "./content-key.ts";
import { type FactContent, NO_EXTRAS, type PairContent } from "./fact.ts";

const pair = (prompt: string, answer: string, change: Partial<PairContent> = {}): PairContent => ({
  kind: "pair",
  prompt,
  answer,
  ...NO_EXTRAS,
  ...change,
});

describe("the key of a fact's content", () => {
  it("is the same for the same words, however they are spaced and composed", () => {
    expect(contentKey(pair("  Boötes ", "the\n herdsman"))).toBe(contentKey(pair("Boo\u0308tes", "the herdsman")));
  });

  it("differs by case, accent, order and kind", () => {
    const keys = [
      pair("Boötes", "herdsman"),
      pair("Bootes", "herdsman"),
      pair("boötes", "herdsman"),
      pair("herdsman", "Boötes"),
      { ...pair("", ""), kind: "statement", statement: "Boötes herdsman", gaps: [] } as FactContent,
      { ...pair("", ""), kind: "picture", name: "Boötes", picture: "0".repeat(64) } as FactContent,
      { ...pair("", ""), kind: "picture", name: "Boötes", picture: "1".repeat(64) } as FactContent,
    ].map(contentKey);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it("does not depend on note, source, story, tags or illustration", () => {
    const dressed = { note: "n", source: "s", story: "t", tags: ["x"], picture: "2".repeat(64) };
    expect(contentKey(pair("Vega", "Lyra", dressed))).toBe(contentKey(pair("Vega", "Lyra")));
  });

  it("tells apart any two pairs whose texts differ", () => {
    const word = fc.string({ unit: fc.constantFrom("a", " ", "ö", "o\u0308", "\t"), maxLength: 4 });
    fc.assert(
      fc.property(word, word, word, word, (a, b, c, d) => {
        const equal = comparableText(a) === comparableText(c) && comparableText(b) === comparableText(d);
        expect(contentKey(pair(a, b)) === contentKey(pair(c, d))).toBe(equal);
      }),
    );
  });
});

describe("text as it is compared", () => {
  it("comes out the same if it is compared again", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        expect(comparableText(comparableText(text))).toBe(comparableText(text));
      }),
    );
  });
});
