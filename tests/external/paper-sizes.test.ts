// Sizes of paper by their rule. ISO 216: A0 has an area of 1 m² and sides as 1 to √2, in whole millimetres; each
// further size is the one before halved across its longer side, fractions dropped. An inch is 25.4 mm exactly (since 1959).
import { describe, expect, it } from "vitest";
import { parseCardSize, parseSheetSize, type Size } from "../../src/core/kit/paper.ts";

/** The sides of A0, A1 … in millimetres, the shorter first. */
function isoA(number: number): readonly [number, number] {
  const width = Math.round(1000 / 2 ** 0.25);
  let sides: readonly [number, number] = [width, Math.round(1000 * 2 ** 0.25)];
  for (let i = 0; i < number; i++) sides = [Math.floor(sides[1] / 2), sides[0]];
  return sides;
}

const sides = (size: { readonly ok: boolean; readonly value?: Size }): readonly number[] =>
  [size.value?.width ?? 0, size.value?.height ?? 0].sort((a, b) => a - b);

describe("a size of paper", () => {
  it("by the rule of ISO 216 has the sides that the standard lists", () => {
    // ISO 216:2007, table 1.
    expect([0, 4, 6, 7].map(isoA)).toEqual([
      [841, 1189],
      [210, 297],
      [105, 148],
      [74, 105],
    ]);
  });

  it.each([
    ["A4", isoA(4)],
    ["Letter", [8.5 * 25.4, 11 * 25.4]],
  ])("%s is that of its rule", (name, expected) => {
    for (const [i, side] of sides(parseSheetSize(name)).entries()) expect(side).toBeCloseTo(expected[i] ?? 0, 9);
  });

  it.each([
    ["a6", isoA(6)],
    ["a7", isoA(7)],
    ["3x5in", [3 * 25.4, 5 * 25.4]],
    ["85x55mm", [55, 85]],
  ])("%s, of cards, is that of its rule", (name, expected) => {
    for (const [i, side] of sides(parseCardSize(name)).entries()) expect(side).toBeCloseTo(expected[i] ?? 0, 9);
  });
});
