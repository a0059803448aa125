// Where characters, words and sentences end: Unicode's conformance files for Annex 29, version 15.0.0. Spelling relies on
// the first, splitting on the others. Node's ICU follows a newer version of the standard; what differs is listed singly.
import { describe, expect, it } from "vitest";
import { graphemes } from "../../src/core/text/graphemes.ts";
import { spelt, unicodeLines } from "../support/unicode-file.ts";

/** Since Unicode 16.0 the scissors U+2701 are no emoji any more, so that a joiner does not bind to them (rules GB11 and WB3c). */
const NO_EMOJI_ANY_MORE = ["2701 200D 2701", "0061 200D 2701"].map(spelt);

/** Rows of a file: the parts into which a text is to be divided. */
const rows = (name: string): readonly (readonly string[])[] =>
  unicodeLines(name).map((line) =>
    line
      .split("÷")
      .map((part) => part.trim())
      .filter((part) => part !== "")
      .map((part) => spelt(part.replaceAll("×", " "))),
  );

const segments = (granularity: "word" | "sentence") => {
  const segmenter = new Intl.Segmenter("und", { granularity });
  return (text: string): readonly string[] => Array.from(segmenter.segment(text), (one) => one.segment);
};

/** Texts that are divided otherwise than the file says. */
const differing = (name: string, divide: (text: string) => readonly string[]): readonly string[] =>
  rows(name)
    .filter((parts) => JSON.stringify(divide(parts.join(""))) !== JSON.stringify(parts))
    .map((parts) => parts.join(""));

describe("Unicode Standard Annex 29", () => {
  it("has its 602 texts divided into characters", () => {
    expect(rows("GraphemeBreakTest")).toHaveLength(602);
    expect(differing("GraphemeBreakTest", graphemes)).toEqual(NO_EMOJI_ANY_MORE.slice(0, 1));
  });

  it("has its 1,823 texts divided into words", () => {
    expect(rows("WordBreakTest")).toHaveLength(1_823);
    expect([...differing("WordBreakTest", segments("word"))].sort()).toEqual([...NO_EMOJI_ANY_MORE].sort());
  });

  it("has its 502 texts divided into sentences", () => {
    expect(rows("SentenceBreakTest")).toHaveLength(502);
    expect(differing("SentenceBreakTest", segments("sentence"))).toEqual([]);
  });
});
