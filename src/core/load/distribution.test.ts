import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BinomialTerm, LEFT_OUT, moments, type Pmf, quantile, sumOfBinomials } from "./distribution.ts";

/** What is left out, and a rounding of 1e-16 for each of some thousand products and sums. */
const ROUNDING = LEFT_OUT + 1e-13;

const anyChance = fc.oneof(
  fc.double({ min: 0, max: 1, noNaN: true }),
  fc.constantFrom(0, 1, 0.5, 0.9, 1e-9, 1e-300, 1 - 1e-12),
);
const anyTerms = fc.array(fc.record<BinomialTerm>({ count: fc.nat(30), chance: anyChance }), { maxLength: 12 });

const total = (pmf: Pmf): number => pmf.chances.reduce((sum, one) => sum + one, 0);
const chanceOf = (pmf: Pmf, count: number): number => pmf.chances[count - pmf.first] ?? 0;

/** Chances of every count, adding one card after the other. */
function cardByCard(terms: readonly BinomialTerm[]): readonly number[] {
  let chances = [1];
  for (const { count, chance } of terms) {
    for (let card = 0; card < count; card++) {
      chances = [...chances, 0].map((one, i) => one * (1 - chance) + (chances[i - 1] ?? 0) * chance);
    }
  }
  return chances;
}

describe("the distribution of a sum of binomial counts", () => {
  it("is that of the cards one by one", () => {
    fc.assert(
      fc.property(anyTerms, (terms) => {
        const pmf = sumOfBinomials(terms);
        for (const [count, chance] of cardByCard(terms).entries()) {
          expect(Math.abs(chanceOf(pmf, count) - chance)).toBeLessThan(ROUNDING);
        }
      }),
    );
  });

  it("adds up to 1 and has the mean and the sd of its moments", () => {
    fc.assert(
      fc.property(anyTerms, (terms) => {
        const pmf = sumOfBinomials(terms);
        const { mean, sd } = moments(terms);
        const sum = (value: (count: number) => number): number =>
          pmf.chances.reduce((all, chance, i) => all + chance * value(pmf.first + i), 0);
        expect(Math.abs(total(pmf) - 1)).toBeLessThan(ROUNDING);
        // Counts go up to 360, and their squares to 130,000.
        expect(Math.abs(sum((count) => count) - mean)).toBeLessThan(360 * ROUNDING);
        expect(Math.abs(sum((count) => (count - mean) ** 2) - sd ** 2)).toBeLessThan(130_000 * ROUNDING);
      }),
    );
  });

  it("does not depend on the order of the terms, nor on cards of one chance being told apart", () => {
    fc.assert(
      fc.property(anyTerms, fc.integer({ min: 1, max: 20 }), anyChance, (terms, count, chance) => {
        const whole = sumOfBinomials([...terms, { count, chance }]);
        const apart = sumOfBinomials([{ count: 1, chance }, ...[...terms].reverse(), { count: count - 1, chance }]);
        const last = Math.max(whole.first + whole.chances.length, apart.first + apart.chances.length);
        for (let i = 0; i < last; i++) expect(Math.abs(chanceOf(whole, i) - chanceOf(apart, i))).toBeLessThan(ROUNDING);
      }),
    );
  });

  // Binomial(4, 1/2): 1, 4, 6, 4, 1 sixteenths, exact in binary.
  it("is Pascal's row for a coin", () => {
    expect(sumOfBinomials([{ count: 4, chance: 0.5 }])).toEqual({
      first: 0,
      chances: Float64Array.of(1 / 16, 4 / 16, 6 / 16, 4 / 16, 1 / 16),
    });
  });

  it("is certain where nothing is left to chance", () => {
    expect(sumOfBinomials([])).toEqual({ first: 0, chances: Float64Array.of(1) });
    const settled = [
      { count: 7, chance: 1 },
      { count: 5, chance: 0 },
    ];
    expect(sumOfBinomials(settled)).toEqual({ first: 7, chances: Float64Array.of(1) });
    expect(moments(settled)).toEqual({ mean: 7, sd: 0 });
  });

  // Computed elsewhere with exact integers: sums of C(10000, k) 3^k 7^(10000 - k) against 10^10000.
  it("is that of exact arithmetic for ten thousand cards asked with a chance of 0.3", () => {
    const pmf = sumOfBinomials([
      { count: 9_000, chance: 0.3 },
      { count: 1_000, chance: 0.3 },
    ]);
    const levels = [0.001, 0.05, 0.5, 0.95, 0.999];
    expect(levels.map((level) => quantile(pmf, level))).toEqual([2859, 2925, 3000, 3075, 3142]);
    expect(Math.abs(chanceOf(pmf, 3000) - 0.008705361365067)).toBeLessThan(ROUNDING);
  });

  // sd = sqrt(2 x 500,000 / 4) = 500; eight and a half sd to each side leave out less than 1e-16, ten are never needed.
  it("keeps a window of some standard deviations of a sum of a million", () => {
    const pmf = sumOfBinomials([
      { count: 500_000, chance: 0.5 },
      { count: 500_000, chance: 0.5 + 1e-9 },
    ]);
    expect(Math.abs(total(pmf) - 1)).toBeLessThan(1e-12);
    expect(pmf.chances.length).toBeLessThan(2 * 10 * 500);
    expect(pmf.chances.length).toBeGreaterThan(2 * 7 * 500);
  });
});

describe("a quantile", () => {
  // Binomial(4, 1/2), cumulative: 1, 5, 11, 15, 16 sixteenths.
  it.each([
    [1e-9, 0],
    [1 / 16, 0],
    [0.0626, 1],
    [5 / 16, 1],
    [0.5, 2],
    [15 / 16, 3],
    [0.9376, 4],
    [1 - 1e-16, 4],
  ])("at %d of four coins is %d: the smallest count whose cumulative probability reaches it", (level, count) => {
    expect(quantile(sumOfBinomials([{ count: 4, chance: 0.5 }]), level)).toBe(count);
  });

  it("rises with its level", () => {
    const anyLevel = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });
    fc.assert(
      fc.property(anyTerms, fc.array(anyLevel, { minLength: 2, maxLength: 6 }), (terms, levels) => {
        const pmf = sumOfBinomials(terms);
        const counts = levels.sort((a, b) => a - b).map((level) => quantile(pmf, level));
        expect(counts).toEqual([...counts].sort((a, b) => a - b));
      }),
    );
  });

  it.each([0, 1, -0.1, 1.5, Number.NaN])("has no level of %d", (level) => {
    expect(() => quantile(sumOfBinomials([]), level)).toThrow(RangeError);
  });
});
