// Text as it should be: whole characters of one alphabet, joined, with single blanks.
import { contentProblem } from "../../facts/check-content.ts";
import type { Fact, FactContent } from "../../facts/fact.ts";
import { gapTexts } from "../../facts/gaps.ts";
import { mapTexts } from "../../facts/text-fields.ts";
import { languageOf } from "../languages.ts";
import { mendText } from "../mend-text.ts";
import type { Remark } from "../note.ts";

/** `damaged-text`: with the mended texts as the fix, where mending changes anything. Formulae are left as they are. */
export function damagedText(fact: Fact): readonly Remark[] {
  const found = new Set<string>();
  const damaged: string[] = [];
  const { id: _id, subject: _subject, angles: _angles, ...content } = fact;
  const mended = mapTexts(content, (text, field) => {
    if (field === "formula" || text.includes("\\(")) return text;
    const { text: next, damage } = mendText(text, languageOf(text, fact.language));
    for (const one of damage) found.add(one);
    if (damage.length > 0) damaged.push(text);
    return next;
  });
  if (found.size === 0) return [];
  const mendable = JSON.stringify(mended) !== JSON.stringify(content) && keepsParts(content, mended);
  return [
    {
      rule: "damaged-text",
      angle: null,
      message: `The text is damaged: ${[...found].join("; ")}.`,
      about: damaged.join("\n"),
      fix: mendable ? { label: "Mend it", content: mended } : null,
    },
  ];
}

/** What is mended can still be asked, and has as many gaps: a bracket that was written as a sign of a web page is none. */
function keepsParts(before: FactContent, mended: FactContent): boolean {
  if (contentProblem(mended) !== null && contentProblem(before) === null) return false;
  const gaps = (content: FactContent): number =>
    content.kind === "statement" ? gapTexts(content.statement).length : 0;
  return gaps(mended) === gaps(before);
}
