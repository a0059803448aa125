import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { foldText } from "./fold-text.ts";

describe("folding", () => {
  it.each([
    ["Boötes", "bootes"],
    ["ÉTOILE", "etoile"],
    ["Ёлка й", "елка и"],
    ["Ἀλφα", "αλφα"],
    ["שָׁלוֹם", "שלום"],
    ["كَوْكَب", "كوكب"],
    ["ﬁrst ²", "first 2"],
    ["Ｖｅｇａ", "vega"],
  ])("makes %s %s", (text, folded) => expect(foldText(text)).toBe(folded.normalize("NFKD")));

  it.each([
    ["चित्रा", "चित्रे"],
    ["かき", "がき"],
    ["ดาว", "ดาว์"],
    ["Vega", "Vela"],
    ["별", "벌"],
  ])("keeps %s and %s apart", (one, other) => expect(foldText(one)).not.toBe(foldText(other)));

  it("has nothing left to do the second time", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        expect(foldText(foldText(text))).toBe(foldText(text));
      }),
    );
  });
});
