// What a fix does to a text: no more than it says.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { list, pair, spelling, statement } from "../../../tests/support/critique-cases.ts";
import { contentProblem } from "../facts/check-content.ts";
import type { Fact } from "../facts/fact.ts";
import { gapTexts } from "../facts/gaps.ts";
import { fieldTexts, TEXT_FIELDS } from "../facts/text-fields.ts";
import { critiqueFact } from "./critique-fact.ts";
import type { Note } from "./note.ts";

/** Words and signs that a careless replacement would tear: marks on letters, pairs of surrogates, joined signs, formulae. */
const TORN = [
  "Boötes",
  "Boo\u0308tes",
  "Élise",
  "𝛼 Lyr",
  "🔭",
  "👩\u200d🚀",
  "קַשְׁתִּי",
  "قَمَر",
  "शनि",
  "ดวงจันทร์",
  "ベガ",
  "織女",
  "별",
  "\\(a^3_{[1]}\\)",
  "\\[x\\]",
  "İo",
  "ﬁre",
];
/** What sets off one rule or another. */
const SETTING_OFF = [
  "___",
  "…",
  ",",
  ";",
  " and ",
  " – ",
  "  ",
  "&amp;",
  "&#91;",
  "<b>",
  "Ã¶",
  "?",
  "(",
  ")",
  "Vega",
  "the",
];

const word = fc.constantFrom(...TORN, ...SETTING_OFF);
const text = fc.array(word, { minLength: 1, maxLength: 14 }).map((words) => words.join(" ").trim());
const said = text.filter((some) => some !== "");
const gapped = fc
  .array(fc.tuple(fc.constantFrom(...TORN, "the", ","), fc.constantFrom(...TORN, "the", "von", "x<b>")), {
    minLength: 1,
    maxLength: 6,
  })
  .map((pairs) => pairs.map(([plain, gap]) => `${plain} [${gap}]`).join(" "));
const fact: fc.Arbitrary<Fact> = fc.oneof(
  fc.tuple(said, said).map(([prompt, answer]) => pair(prompt, answer)),
  // An answer that stands in its prompt, and one that fills two blanks.
  fc.tuple(said, said).map(([before, answer]) => pair(`${before}, ${answer}, is which?`, answer)),
  fc.tuple(fc.constantFrom(...TORN), fc.constantFrom(...TORN)).map(([a, b]) => pair(`___ ${a} ___`, `${a}; ${b}`)),
  fc.tuple(said, said).map(([clue, spelt]) => spelling(clue, spelt)),
  fc.array(said, { minLength: 2, maxLength: 4 }).map((items) => list("Some", items)),
  gapped.map((some) => statement(some, { note: "kept" })),
);

const texts = ({ content }: NonNullable<Note["fix"]>): string =>
  TEXT_FIELDS.flatMap((field) => fieldTexts(content, field)).join("\n");
const lettersOf = (some: string): readonly string[] => [...some.matchAll(/[\p{L}\p{N}]\p{M}*/gu)].map(([one]) => one);

/** Whether the letters of one text stand in another in the same order, with more between them. */
function standsIn(few: readonly string[], many: readonly string[]): boolean {
  let at = 0;
  for (const one of many) if (one === few[at]) at++;
  return at === few.length;
}

const fixesOf = (one: Fact) => critiqueFact(one).flatMap((note) => (note.fix ? [{ ...note, fix: note.fix }] : []));

describe("a fix", () => {
  it("makes a fact that can be asked, and tears no character", () => {
    fc.assert(
      fc.property(fact, (one) => {
        for (const { fix } of fixesOf(one)) {
          if (contentProblem(one) === null) expect(contentProblem(fix.content)).toBeNull();
          expect(texts(fix)).not.toMatch(/\p{Cs}/u);
        }
      }),
    );
  });

  it("keeps every letter, and its order, where it only moves words", () => {
    fc.assert(
      fc.property(fact, (one) => {
        for (const { rule, fix } of fixesOf(one)) {
          const before = lettersOf(TEXT_FIELDS.flatMap((field) => fieldTexts(one, field)).join("\n"));
          const after = lettersOf(texts(fix));
          if (rule === "short-answer" || rule === "blank-size") expect([...after].sort()).toEqual([...before].sort());
          if (rule === "given-away") expect(standsIn(after, before)).toBe(true);
        }
      }),
    );
  });

  it("keeps the numbers of the gaps that stay, so that their history stays theirs", () => {
    const numbered = (one: { readonly statement: string; readonly gaps: readonly number[] }) =>
      gapTexts(one.statement).map((gap, i) => `${one.gaps[i]} ${gap.normalize("NFC").replace(/<b>/gu, "")}`);
    fc.assert(
      fc.property(gapped, (some) => {
        const one = statement(some);
        for (const { rule, angle, fix } of fixesOf(one)) {
          if (one.kind !== "statement" || fix.content.kind !== "statement") throw new Error("of another kind");
          const closed = rule === "blank-size" ? angle : null;
          const stay = numbered(one).filter((gap) => `gap-${gap.split(" ")[0]}` !== closed);
          expect(numbered(fix.content)).toEqual(stay);
          expect(fix.angles ?? one.angles).toEqual(one.angles.filter((other) => other !== closed));
        }
      }),
    );
  });
});
