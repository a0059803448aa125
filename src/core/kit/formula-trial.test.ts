import { describe, expect, it } from "vitest";
import { type FormulaBox, type TextRun, textItem } from "./page.ts";
import { sizeTrial } from "./size-trial.ts";

/** Every character half an em wide. */
const widthOf = (text: string): number => text.length / 2;
const trial = (runs: readonly TextRun[], place: { readonly width: number; readonly height: number }) =>
  sizeTrial(textItem({ x: 0, y: 0, ...place }, "", { runs, most: 20, least: 8 }), widthOf);
const formula = (box: FormulaBox): TextRun => ({ text: "x", look: "formula", alone: true, box });
const POINT = 25.4 / 72;

describe("the sizes of a text with formulae", () => {
  it("are those at which the formula is no wider than the box", () => {
    const { whole } = trial([formula({ width: 10, ascent: 1, depth: 0 })], { width: 120 * POINT, height: 50 });
    expect(whole[0]).toBe(12);
    expect(whole.at(-1)).toBe(8);
  });

  it("are those at which it is no higher", () => {
    const { whole } = trial([formula({ width: 1, ascent: 2, depth: 1 })], { width: 50, height: 30 * POINT });
    expect(whole[0]).toBe(10);
  });

  it("are larger in a line, where it may reach as far as letters with tails", () => {
    const run = { text: "x", look: "formula", box: { width: 1, ascent: 2, depth: 1 } } as const;
    expect(trial([run], { width: 50, height: 30 * POINT }).whole[0]).toBe(11.5);
  });

  it("are none if it is too large at the least", () => {
    const { whole, sure } = trial([formula({ width: 10, ascent: 1, depth: 0 })], { width: 79 * POINT, height: 50 });
    expect(whole).toEqual([]);
    expect(sure).toBeNull();
  });

  it("count the lines that words beside it take at the least", () => {
    // 200 characters of 0.45 × 0.5 em are 45 em, and with the formula 50: at 20 pt two lines of 500 pt or more.
    const runs = [{ text: "x".repeat(200), look: "plain" } as const, formula({ width: 5, ascent: 1, depth: 0 })];
    const high = (0.6 + 0.55 + 0.6) * 20 * POINT;
    expect(trial(runs, { width: 500 * POINT, height: high }).whole[0]).toBe(20);
    expect(trial(runs, { width: 490 * POINT, height: high }).whole[0]).toBeLessThan(20);
  });
});
