// Equivalent spellings of one text: Unicode's conformance file for Annex 15, version 15.0.0, every row of it. Spelling,
// searching and the recognition of duplicates rely on NFC and NFKD.
import { describe, expect, it } from "vitest";
import { foldText } from "../../src/core/text/fold-text.ts";
import { spelt, unicodeLines } from "../support/unicode-file.ts";

const ROWS = unicodeLines("NormalizationTest")
  .filter((line) => !line.startsWith("@"))
  .map((line) => line.split(";").map(spelt));

const FORMS = ["NFC", "NFD", "NFKC", "NFKD"] as const;

describe("Unicode Standard Annex 15", () => {
  it("has all its rows", () => expect(ROWS).toHaveLength(19_074));

  it.each(FORMS)("has its invariants kept by %s", (form) => {
    for (const [c1 = "", c2 = "", c3 = "", c4 = "", c5 = ""] of ROWS) {
      const all = [c1, c2, c3, c4, c5];
      const expected = {
        NFC: [c2, c2, c2, c4, c4],
        NFD: [c3, c3, c3, c5, c5],
        NFKC: Array(5).fill(c4),
        NFKD: Array(5).fill(c5),
      };
      const got = all.map((text) => text.normalize(form));
      // Compared as a whole first: an assertion for each would take minutes.
      if (got.join("\0") !== expected[form].join("\0")) expect(got).toEqual(expected[form]);
    }
  });

  it("has equivalent spellings found by the same search", () => {
    const differing = ROWS.filter((row) => new Set(row.map(foldText)).size > 1);
    expect(differing).toEqual([]);
  });
});
