import { describe, expect, it } from "vitest";
import { formulaeOf, formulaKey, isDrawable, refusedNotice, tieFormulae } from "./formulae.ts";
import { type KitPage, type TextRun, textItem } from "./page.ts";

const PLACE = { x: 0, y: 0, width: 50, height: 20 };
const formula = (text: string, more: Partial<TextRun> = {}): TextRun => ({ text, look: "formula", ...more });
const plain = (text: string): TextRun => ({ text, look: "plain" });
const page = (...texts: readonly (readonly [string, readonly TextRun[]])[]): KitPage => ({
  width: 210,
  height: 297,
  items: texts.map(([name, runs]) => textItem(PLACE, "", { name, runs })),
});
const box = { width: 1, ascent: 1, depth: 0 };

describe("the formulae of pages", () => {
  it("are each drawn once, and apart if they stand alone somewhere", () => {
    const wanted = formulaeOf([
      page(["a", [plain("Kepler: "), formula("T^2")]], ["b", [formula("T^2", { alone: true })]]),
      page(["c", [formula("T^2"), plain("a^3")]]),
    ]);
    expect([...wanted.keys()]).toEqual([formulaKey(formula("T^2")), formulaKey(formula("T^2", { alone: true }))]);
    expect([...(wanted.get(formulaKey(formula("T^2")))?.places ?? [])]).toEqual(["a", "c"]);
  });

  it("that cannot be drawn are told with where they stand and how they begin", () => {
    const places = new Set(["the prompt of card 1042-9", "the answer of card 318-2"]);
    expect(refusedNotice({ tex: "\\foo", alone: true, places })).toBe(
      "A formula in the prompt of card 1042-9 and 1 more cannot be drawn, so it is printed as it was written: \\foo",
    );
    expect(refusedNotice({ tex: "x".repeat(2000), alone: true, places }).length).toBeLessThan(200);
  });

  it.each([
    [{ width: 1, ascent: 1, depth: 0.2 }, true],
    [{ width: 0, ascent: 1, depth: 0 }, false],
    [{ width: 1, ascent: 1, depth: -1 }, false],
    [{ width: Number.NaN, ascent: 1, depth: 0 }, false],
    [{ width: 1e6, ascent: 1, depth: 0 }, false],
    [{ width: 1, ascent: 1, depth: 1e6 }, false],
  ])("of the size %j: of use is %s", (size, use) => {
    expect(isDrawable(size)).toBe(use);
  });
});

describe("a drawn formula in a line", () => {
  const n = formula("n", { box });
  const texts = (...runs: readonly TextRun[]) => tieFormulae(runs).map((run) => run.text);

  it("is tied to letters, figures and dashes that touch it", () => {
    expect(texts(plain("the "), n, plain("th"))).toEqual(["the ", "n", "\u2060th"]);
    expect(texts(plain("2"), n, plain("-fold"))).toEqual(["2\u2060", "n", "\u2060-fold"]);
  });

  it("is not tied to spaces, nor to marks that no line begins with", () => {
    expect(texts(plain("the "), n, plain(", and"))).toEqual(["the ", "n", ", and"]);
  });

  it("that is set as it was written is text like any other", () => {
    expect(texts(plain("the"), formula("n"), plain("th"))).toEqual(["the", "n", "th"]);
  });
});
