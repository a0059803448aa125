import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Draw, LEFT_OUT, moments, type Pmf, quantile, REVIEWS, type Steps, sumOf } from "./distribution.ts";

/** What is left out, and a rounding of 1e-16 for each of some thousand products and sums. */
const ROUNDING = LEFT_OUT + 1e-13;

const anyChance = fc.oneof(
  fc.double({ min: 0, max: 1, noNaN: true }),
  fc.constantFrom(0, 1, 0.5, 0.9, 1e-9, 1e-300, 1 - 1e-12),
);
const anyDraw = fc
  .record({ count: fc.nat(30), asked: anyChance, miss: anyChance })
  .map<Draw>(({ count, asked, miss }) => ({ count, recalled: asked - asked * miss, missed: asked * miss }));
const anyDraws = fc.array(anyDraw, { maxLength: 12 });
const anySteps = fc.constantFrom<Steps>(
  REVIEWS,
  { recalled: 2, missed: 5 },
  { recalled: 0, missed: 1 },
  { recalled: 3, missed: 1 },
  { recalled: 6, missed: 4 },
);

/** Cards of which each is asked with a chance, and always recalled. */
const asked = (count: number, chance: number): Draw => ({ count, recalled: chance, missed: 0 });

const total = (pmf: Pmf): number => pmf.chances.reduce((sum, one) => sum + one, 0);
const chanceOf = (pmf: Pmf, sum: number): number => pmf.chances[sum - pmf.first] ?? 0;

/** Chances of every sum, adding one card after the other: positive numbers only, nothing cancels. */
function cardByCard(draws: readonly Draw[], steps: Steps): readonly number[] {
  let chances = [1];
  const longest = Math.max(steps.recalled, steps.missed);
  for (const { count, recalled, missed } of draws) {
    const rest = Math.max(0, 1 - recalled - missed);
    for (let card = 0; card < count; card++) {
      chances = Array.from(
        { length: chances.length + longest },
        (_, i) =>
          (chances[i] ?? 0) * rest +
          (chances[i - steps.recalled] ?? 0) * recalled +
          (chances[i - steps.missed] ?? 0) * missed,
      );
    }
  }
  return chances;
}

describe("the distribution of a day's sum", () => {
  it("is that of the cards one by one", () => {
    fc.assert(
      fc.property(anyDraws, anySteps, (draws, steps) => {
        const pmf = sumOf(draws, steps);
        for (const [sum, chance] of cardByCard(draws, steps).entries()) {
          expect(Math.abs(chanceOf(pmf, sum) - chance)).toBeLessThan(ROUNDING);
        }
      }),
    );
  });

  it("adds up to 1 and has the mean and the sd of its moments", () => {
    fc.assert(
      fc.property(anyDraws, anySteps, (draws, steps) => {
        const pmf = sumOf(draws, steps);
        const { mean, sd } = moments(draws, steps);
        const sum = (value: (count: number) => number): number =>
          pmf.chances.reduce((all, chance, i) => all + chance * value(pmf.first + i), 0);
        expect(Math.abs(total(pmf) - 1)).toBeLessThan(1000 * ROUNDING);
        // Sums go up to 2,160, and their squares to five million.
        expect(Math.abs(sum((count) => count) - mean)).toBeLessThan(2160 * ROUNDING);
        expect(Math.abs(sum((count) => (count - mean) ** 2) - sd ** 2)).toBeLessThan(5e6 * ROUNDING);
      }),
    );
  });

  it("does not depend on the order of the draws, nor on cards of one chance being told apart", () => {
    fc.assert(
      fc.property(anyDraws, fc.integer({ min: 1, max: 20 }), anyDraw, anySteps, (draws, count, draw, steps) => {
        const whole = sumOf([...draws, { ...draw, count }], steps);
        const apart = sumOf([{ ...draw, count: 1 }, ...[...draws].reverse(), { ...draw, count: count - 1 }], steps);
        const last = Math.max(whole.first + whole.chances.length, apart.first + apart.chances.length);
        for (let i = 0; i < last; i++) expect(Math.abs(chanceOf(whole, i) - chanceOf(apart, i))).toBeLessThan(ROUNDING);
      }),
    );
  });

  // Binomial(4, 1/2): 1, 4, 6, 4, 1 sixteenths.
  it("is Pascal's row for a coin", () => {
    const { first, chances } = sumOf([asked(4, 0.5)], REVIEWS);
    expect(first).toBe(0);
    expect([...chances].map((chance) => Math.round(chance * 16e12) / 1e12)).toEqual([1, 4, 6, 4, 1]);
  });

  // By hand: two cards, each recalled (2 steps) with 1/2, missed (5 steps) with 1/4, else not asked.
  it("adds different steps for a recalled and a missed card", () => {
    const pmf = sumOf([{ count: 2, recalled: 0.5, missed: 0.25 }], { recalled: 2, missed: 5 });
    const sixteenths = Array.from({ length: 11 }, (_, sum) => Math.round(chanceOf(pmf, sum) * 16e12) / 1e12);
    expect(sixteenths).toEqual([1, 0, 4, 0, 4, 2, 0, 4, 0, 0, 1]);
  });

  it("is certain where nothing is left to chance", () => {
    expect(sumOf([], REVIEWS)).toEqual({ first: 0, chances: Float64Array.of(1) });
    const settled = [asked(7, 1), asked(5, 0)];
    expect(sumOf(settled, REVIEWS)).toEqual({ first: 7, chances: Float64Array.of(1) });
    expect(moments(settled, REVIEWS)).toEqual({ mean: 7, sd: 0 });
  });

  // Computed elsewhere with exact integers: sums of C(10000, k) 3^k 7^(10000 - k) against 10^10000.
  it("is that of exact arithmetic for ten thousand cards asked with a chance of 0.3", () => {
    const pmf = sumOf([asked(9_000, 0.3), asked(1_000, 0.3)], REVIEWS);
    const levels = [0.001, 0.05, 0.5, 0.95, 0.999];
    expect(levels.map((level) => quantile(pmf, level))).toEqual([2859, 2925, 3000, 3075, 3142]);
    // A rounding of 1e-16 of one card's part is multiplied by the number of cards.
    expect(Math.abs(chanceOf(pmf, 3000) - 0.008705361365067)).toBeLessThan(9_000 * 1e-16);
  });

  // sd = sqrt(2 x 500,000 / 4) = 500; Bernstein's bound keeps some eight and a half of them on each side.
  it("keeps a window of some standard deviations of a sum of a million", () => {
    const pmf = sumOf([asked(500_000, 0.5), asked(500_000, 0.5 + 1e-9)], REVIEWS);
    expect(pmf.chances.length).toBeLessThan(2 * 10 * 500);
    expect(pmf.chances.length).toBeGreaterThan(2 * 7 * 500);
    // The normal density at the mean; the next term of its expansion is of the order of 1 / variance.
    const mode = Math.max(...pmf.chances);
    expect(Math.abs(mode * 500 * Math.sqrt(2 * Math.PI) - 1)).toBeLessThan(1 / 500 ** 2);
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
    expect(quantile(sumOf([asked(4, 0.5)], REVIEWS), level)).toBe(count);
  });

  it("rises with its level", () => {
    const anyLevel = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });
    fc.assert(
      fc.property(anyDraws, anySteps, fc.array(anyLevel, { minLength: 2, maxLength: 6 }), (draws, steps, levels) => {
        const pmf = sumOf(draws, steps);
        const counts = levels.sort((a, b) => a - b).map((level) => quantile(pmf, level));
        expect(counts).toEqual([...counts].sort((a, b) => a - b));
      }),
    );
  });

  it.each([0, 1, -0.1, 1.5, Number.NaN])("has no level of %d", (level) => {
    expect(() => quantile(sumOf([], REVIEWS), level)).toThrow(RangeError);
  });
});
