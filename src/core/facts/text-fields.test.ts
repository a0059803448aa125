import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyContent } from "../../../tests/support/any-fact.ts";
import { addedWords, statedWords } from "./fact-words.ts";
import { freshGaps } from "./gaps.ts";
import { fieldTexts, mapTexts, TEXT_FIELDS } from "./text-fields.ts";

const words = fc.string({ unit: "grapheme" });
const contents = anyContent(
  { text: words, filled: words, line: words, statement: words, tag: words, picture: "f".repeat(64) },
  freshGaps,
);

describe("the texts of a fact", () => {
  it("are all its words but its tags", () => {
    fc.assert(
      fc.property(contents, (content) => {
        const all = [...statedWords(content), ...addedWords({ ...content, tags: [] })];
        expect(TEXT_FIELDS.flatMap((field) => fieldTexts(content, field)).sort()).toEqual([...all].sort());
      }),
    );
  });

  it("are each changed once, and nothing else is", () => {
    fc.assert(
      fc.property(contents, (content) => {
        const marked = mapTexts(content, (text, field) => `${field}:${text}`);
        for (const field of TEXT_FIELDS)
          expect(fieldTexts(marked, field)).toEqual(fieldTexts(content, field).map((text) => `${field}:${text}`));
        const back = mapTexts(marked, (text, field) => text.slice(field.length + 1));
        expect(back).toEqual(content);
      }),
    );
  });
});
