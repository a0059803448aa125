import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { anyContent } from "../../tests/support/any-fact.ts";
import { possibleAngles } from "../core/cards/cards.ts";
import { defaultAngles } from "../core/cards/default-angles.ts";
import { cleanText } from "../core/facts/clean-text.ts";
import { contentKey } from "../core/facts/content-key.ts";
import { type FactContent, NO_EXTRAS } from "../core/facts/fact.ts";
import { freshGaps } from "../core/facts/gaps.ts";
import type { WrittenFact } from "./fact-cells.ts";
import { createListReader } from "./read-list.ts";
import { writeTable } from "./write-table.ts";

// Quick alone; room for a busy machine.
vi.setConfig({ testTimeout: 30_000 });

const HASH = "0123456789abcdef".repeat(4);
const fileName = (hash: string): string => `${hash}.png`;
const byName = (name: string): string | null => (/^[\da-f]{64}\.png$/.test(name) ? name.slice(0, 64) : null);
const NOTHING = NO_EXTRAS;
const vega: FactContent = { kind: "pair", prompt: "Vega", answer: "Lyra", ...NOTHING };

describe("a written table", () => {
  it("has the columns that an import knows, and lines that end with CRLF", () => {
    expect(writeTable([vega], { fileName })).toBe(
      "prompt,answer,statement,note,source,picture,story,tags\r\nVega,Lyra,,,,,,\r\n",
    );
  });

  it("writes each kind of fact into its own columns", () => {
    const facts: FactContent[] = [
      { kind: "statement", statement: "[Vega] is in [Lyra]", gaps: [2, 5], ...NOTHING, tags: ["star", "summer"] },
      { kind: "picture", name: "Vega", ...NOTHING, picture: HASH },
    ];
    expect(writeTable(facts, { delimiter: ";", fileName }).split("\r\n").slice(1)).toEqual([
      ';;[Vega] is in [Lyra];;;;;"star; summer"',
      `;Vega;;;;${HASH}.png;;`,
      "",
    ]);
  });

  it("quotes what needs quotes, and breaks lines inside a cell with LF", () => {
    const fact: FactContent = { ...vega, prompt: 'the "Lyre",\r\nα', answer: " Vega", note: "a\tb;c" };
    expect(writeTable([fact], { fileName })).toContain('\r\n"the ""Lyre"",\nα"," Vega",,a\tb;c,,,,\r\n');
    expect(writeTable([fact], { delimiter: "\t", fileName })).toContain('\t"a\tb;c"\t');
  });

  it("begins with a byte order mark if one is wanted", () => {
    expect(writeTable([], { mark: true, fileName })).toMatch(/^\ufeffprompt,/);
  });
});

const wild = fc.oneof(
  fc.string({ unit: "grapheme", maxLength: 20 }),
  fc.string({ unit: "binary", maxLength: 12 }),
  fc.string({
    unit: fc.constantFrom('"', ",", ";", "\t", "\r", "\n", "[", "]", "\\", " ", "=", "a", "é", "🔭"),
    maxLength: 12,
  }),
);
const text = wild.map(cleanText);
const filled = text.filter((value) => value !== "");
const tag = fc
  .string({ unit: "grapheme", maxLength: 10 })
  // Cleaned first: the normal form of the Greek question mark is a semicolon.
  .map((value) => cleanText(value).replace(/[,;]/g, "").replace(/\s+/gu, " ").trim())
  .filter((value) => value !== "");
const escaped = (value: string): string => value.replace(/[[\]\\]/g, "\\$&");
const statement = fc
  .array(fc.tuple(text, filled), { minLength: 1, maxLength: 3 })
  .map((parts) => cleanText(parts.map(([before, gap]) => `${escaped(before)} [${escaped(gap)}]`).join("")));
const line = filled.map((value) => value.replace(/\s+/gu, " ").trim()).filter((value) => value !== "");
const fact = anyContent({ text, filled, line, statement, tag, picture: HASH }, freshGaps);

/** A fact asked from some of its angles. */
const asked = fact.chain((content) =>
  fc.subarray([...possibleAngles(content)], { minLength: 1 }).map((angles): WrittenFact => ({ ...content, angles })),
);

describe("what was written", () => {
  it("is asked again from the angles that were chosen", () => {
    fc.assert(
      fc.property(fc.uniqueArray(asked, { selector: contentKey, minLength: 1, maxLength: 4 }), (facts) => {
        const bytes = Buffer.from(writeTable(facts, { fileName }), "utf8");
        const list = createListReader(bytes, {}, { picture: byName, sound: byName });
        if (!list.ok) throw new Error(list.error.message);
        const read = [...list.value.drafts()].map((item) =>
          item.kind === "fact" ? { ...item.content, angles: item.angles ?? defaultAngles(item.content) } : item,
        );
        expect(read).toEqual(facts);
      }),
      { numRuns: 200 },
    );
  });

  it("is read again as it was, with any delimiter, nothing being said about how it is written", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fact, { selector: contentKey, minLength: 1, maxLength: 6 }),
        fc.constantFrom("," as const, "\t" as const, ";" as const),
        fc.boolean(),
        (facts, delimiter, mark) => {
          const bytes = Buffer.from(writeTable(facts, { delimiter, mark, fileName }), "utf8");
          const list = createListReader(bytes, {}, { picture: byName, sound: byName });
          if (!list.ok) throw new Error(list.error.message);
          expect(list.value).toMatchObject({ delimiter, header: true, encoding: "utf-8" });
          const read = [...list.value.drafts()].map((item) =>
            item.kind === "problems" ? item.problems : item.content,
          );
          expect(read).toEqual(facts);
        },
      ),
      { numRuns: 400 },
    );
  });
});
