import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SpellingRule } from "../facts/fact.ts";
import { compareSpelling, LONGEST_COMPARED } from "./compare-spelling.ts";

const STRICT: SpellingRule = { accents: "count", letterCase: "count" };
const LOOSE: SpellingRule = { accents: "ignore", letterCase: "ignore" };

/** The steps as text: same letters as they are, [typed>right] where they differ. */
const shown = (typed: string, right: string, rule = STRICT): string =>
  compareSpelling(typed, right, rule)
    .steps.map((step) => (step.kind === "same" ? step.typed : `[${step.typed}>${step.right}]`))
    .join("");

const isRight = (typed: string, right: string, rule = STRICT): boolean =>
  compareSpelling(typed, right, rule).distance === 0;

describe("a typed word", () => {
  it("is marked where a character is wrong, missing or too many", () => {
    expect(shown("Betelguese", "Betelgeuse")).toBe("Betelg[u>e][e>u]se");
    expect(shown("Zubeneschamai", "Zubeneschamali")).toBe("Zubeneschama[>l]i");
    expect(shown("Fomalhaut", "Fomalhaut")).toBe("Fomalhaut");
    expect(shown("Fommalhaut", "Fomalhaut")).toMatch(/^Fo(m\[m>\]|\[m>\]m)alhaut$/);
  });

  it("is compared by what a reader takes for one character, however it is composed", () => {
    expect(isRight("Boo\u0308tes", "Boötes")).toBe(true);
    expect(shown("नमस्त", "नमस्ते")).toBe("नम[स्त>स्ते]");
    expect(compareSpelling("👩‍🚀", "👨‍🚀", STRICT).steps).toEqual([{ kind: "wrong", typed: "👩‍🚀", right: "👨‍🚀" }]);
  });

  it("may be spaced as one likes, but not run together", () => {
    expect(isRight("  Kaus   Australis ", "Kaus Australis")).toBe(true);
    expect(shown("KausAustralis", "Kaus Australis")).toBe("Kaus[> ]Australis");
  });

  it("that is empty lacks every character, and one that should be empty has each too many", () => {
    expect(compareSpelling(" ", "Mira", STRICT).distance).toBe(4);
    expect(compareSpelling("Mira", "", STRICT).steps.map((step) => step.kind)).toEqual(Array(4).fill("extra"));
  });
});

describe("what counts", () => {
  it("is accents, if the fact says so", () => {
    expect(shown("Bootes", "Boötes")).toBe("Bo[o>ö]tes");
    expect(isRight("Bootes", "Boötes", { ...STRICT, accents: "ignore" })).toBe(true);
    expect(isRight("Περσευς", "Περσεύς", { ...STRICT, accents: "ignore" })).toBe(true);
    expect(isRight("نَجْم", "نجم", { ...STRICT, accents: "ignore" })).toBe(true);
  });

  it("is capital letters, if the fact says so; a final sigma is a sigma", () => {
    expect(shown("vega", "Vega")).toBe("[v>V]ega");
    expect(isRight("vega", "Vega", { ...STRICT, letterCase: "ignore" })).toBe(true);
    expect(isRight("ΠΕΡΣΕΥΣ", "Περσευς", { ...STRICT, letterCase: "ignore" })).toBe(true);
  });

  it.each([
    ["the sign of a vowel in Devanagari", "कि", "क"],
    ["a Hebrew point", "שָ", "ש"],
    ["the sign of a voiced kana", "が", "か"],
    ["a stroke that makes another letter", "ø", "o"],
  ])("is always %s", (_, typed, right) => {
    expect(isRight(typed, right, LOOSE)).toBe(false);
  });

  it("is shown with the characters as they were typed, even where the difference does not count", () => {
    expect(compareSpelling("bo", "BÖ", LOOSE).steps).toEqual([
      { kind: "same", typed: "b", right: "B" },
      { kind: "same", typed: "o", right: "Ö" },
    ]);
  });
});

describe("the steps", () => {
  const word = fc.string({ unit: fc.constantFrom("a", "á", "A", "b", "s\u0323", " ", "が"), maxLength: 9 });
  const rule = fc.constantFrom(STRICT, LOOSE);
  const tidy = (text: string): string => text.normalize("NFC").replace(/\s+/gu, " ").trim();

  it("hold all of both words in order", () => {
    fc.assert(
      fc.property(word, word, rule, (typed, right, by) => {
        const { steps } = compareSpelling(typed, right, by);
        expect(steps.map((step) => step.typed).join("")).toBe(tidy(typed));
        expect(steps.map((step) => step.right).join("")).toBe(tidy(right));
      }),
    );
  });

  it("are none to take exactly where nothing that counts differs, and never more than the longer word has characters", () => {
    fc.assert(
      fc.property(word, word, (typed, right) => {
        expect(isRight(typed, right)).toBe(tidy(typed) === tidy(right));
        const { distance } = compareSpelling(typed, right, LOOSE);
        expect(distance).toBeLessThanOrEqual(compareSpelling(typed, right, STRICT).distance);
        expect(distance).toBe(compareSpelling(right, typed, LOOSE).distance);
      }),
    );
  });

  it("of a text that is far too long end with one for all that is left", () => {
    const long = "a".repeat(LONGEST_COMPARED + 50);
    expect(compareSpelling(long, `${long}b`, STRICT)).toMatchObject({ distance: 1 });
    expect(compareSpelling(long, long, STRICT).distance).toBe(0);
  });
});
