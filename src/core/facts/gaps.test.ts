import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { freshGaps, gapTexts, parseStatement, renumberGaps } from "./gaps.ts";

/** A text as it is typed inside a statement, its brackets and backslashes marked as meant. */
const escaped = (text: string): string => text.replace(/[[\]\\]/g, "\\$&");

const anyText = fc.string({ unit: fc.constantFrom("V", "e", "g", "a", " ", "[", "]", "\\", "α", "🔭", "\n") });
const anyGap = anyText.filter((text) => text.trim() !== "");
const anyParts = fc
  .tuple(anyText, fc.array(fc.tuple(anyGap, anyText), { minLength: 1, maxLength: 5 }))
  .map(([first, rest]) => ({ first, rest }));

const reason = (statement: string) => {
  const parsed = parseStatement(statement);
  return parsed.ok ? null : parsed.error;
};

describe("a statement", () => {
  it("is split at its gaps", () => {
    expect(parseStatement("The Pleiades are an open cluster in [Taurus], listed as [M45].")).toEqual({
      ok: true,
      value: [
        { text: "The Pleiades are an open cluster in ", gap: false },
        { text: "Taurus", gap: true },
        { text: ", listed as ", gap: false },
        { text: "M45", gap: true },
        { text: ".", gap: false },
      ],
    });
  });

  it("may hold brackets and backslashes that are meant as such", () => {
    expect(gapTexts("The forbidden line [\\[O III\\]] of nebulae has 500.7 nm")).toEqual(["[O III]"]);
    expect(gapTexts("a \\\\[b]")).toEqual(["b"]);
    expect(gapTexts("a \\x [b\\y]")).toEqual(["b\\y"]);
  });

  it("gives back any texts and gaps that were written into it", () => {
    fc.assert(
      fc.property(anyParts, ({ first, rest }) => {
        const typed = escaped(first) + rest.map(([gap, after]) => `[${escaped(gap)}]${escaped(after)}`).join("");
        const parsed = parseStatement(typed);
        expect(parsed.ok).toBe(true);
        expect(gapTexts(typed)).toEqual(rest.map(([gap]) => gap));
        const whole = parsed.ok ? parsed.value.map((part) => part.text).join("") : "";
        expect(whole).toBe(first + rest.flat().join(""));
      }),
    );
  });

  it("is refused at the place of the trouble, counted from 1", () => {
    expect(reason("[Vega")).toMatchObject({ at: 1, reason: expect.stringContaining("never closed") });
    expect(reason("Vega]")).toMatchObject({ at: 5, reason: expect.stringContaining("no [") });
    expect(reason("a [b [c]]")).toMatchObject({ at: 6, reason: expect.stringContaining("inside another") });
    expect(reason("in [ ] lies")).toMatchObject({ at: 4, reason: expect.stringContaining("empty") });
    expect(reason("no gap")).toMatchObject({ at: 1, reason: expect.stringContaining("no gap") });
    expect(reason("[a\\]")).toMatchObject({ at: 1, reason: expect.stringContaining("never closed") });
  });

  it("has no gap texts if it cannot be read", () => {
    expect(gapTexts("Vega]")).toEqual([]);
  });

  it("is read without throwing, whatever was typed", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const parsed = parseStatement(text);
        if (!parsed.ok) {
          expect(parsed.error.at).toBeGreaterThanOrEqual(1);
          expect(parsed.error.at).toBeLessThanOrEqual(Math.max(1, text.length));
        }
      }),
    );
  });
});

describe("gap numbers", () => {
  const before = { statement: "[Deneb], [Vega] and [Altair] form the Summer Triangle", gaps: [1, 2, 3] };

  it("begin at 1 in the order of the gaps", () => {
    expect(freshGaps(before.statement)).toEqual([1, 2, 3]);
  });

  it("go with their texts when a statement is turned round", () => {
    const turned = "The Summer Triangle: [Altair], [Deneb], [Vega]";
    expect(renumberGaps(before, turned, [1, 2, 3])).toEqual([3, 1, 2]);
  });

  it("stay with a gap whose text is corrected", () => {
    expect(renumberGaps(before, "[Deneb], [Wega] and [Altair]", [1, 2, 3])).toEqual([1, 2, 3]);
  });

  it("are new for a gap that is added, and never one that was used before", () => {
    expect(renumberGaps(before, `${before.statement} of [Lyra]`, [1, 2, 3, 7])).toEqual([1, 2, 3, 8]);
    expect(renumberGaps({ statement: "[Deneb]", gaps: [1] }, "[Deneb] and [Vega]", [1, 2, 3])).toEqual([1, 4]);
  });

  const names = ["Deneb", "Vega", "Altair", "Lyra", "Cygnus"];
  const anyGaps = fc.array(fc.constantFrom(...names), { minLength: 1, maxLength: 6 });
  const written = (texts: readonly string[]): string => texts.map((text) => `[${text}]`).join(", ");
  const anyRewording = fc
    .tuple(fc.uniqueArray(fc.integer({ min: 1, max: 30 }), { minLength: 6, maxLength: 6 }), anyGaps, anyGaps)
    .map(([numbers, old, texts]) => ({ old, gaps: numbers.slice(0, old.length), used: numbers, texts }));

  it("are all different after any rewording, and either the fact's own or never used", () => {
    fc.assert(
      fc.property(anyRewording, ({ old, gaps, used, texts }) => {
        const after = renumberGaps({ statement: written(old), gaps }, written(texts), used);
        expect(new Set(after).size).toBe(texts.length);
        for (const number of after) expect(gaps.includes(number) || number > Math.max(...used)).toBe(true);
      }),
    );
  });

  it("keep with every text as many of its numbers as the text is found again", () => {
    fc.assert(
      fc.property(anyRewording, ({ old, gaps, used, texts }) => {
        const after = renumberGaps({ statement: written(old), gaps }, written(texts), used);
        for (const name of names) {
          const had = gaps.filter((_, i) => old[i] === name);
          const has = after.filter((_, i) => texts[i] === name);
          const again = Math.min(had.length, has.length);
          expect(has.filter((number) => had.includes(number))).toEqual(had.slice(0, again));
        }
      }),
    );
  });
});
