// Text as it should be: whole characters of one alphabet, joined, with single blanks.
import type { Fact } from "../../facts/fact.ts";
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
  const changed = JSON.stringify(mended) !== JSON.stringify(content);
  return [
    {
      rule: "damaged-text",
      angle: null,
      message: `The text is damaged: ${[...found].join("; ")}.`,
      about: damaged.join("\n"),
      fix: changed ? { label: "Mend it", content: mended } : null,
    },
  ];
}
