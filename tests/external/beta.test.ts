// The Beta distribution against intervals and binomial tails published by others. The exact interval of Clopper and
// Pearson for k of n has the ends betaQuantile(k, n - k + 1) and betaQuantile(k + 1, n - k); the chance of k or more of n
// at p is the Beta distribution of k, n - k + 1 at p.
import { describe, expect, it } from "vitest";
import { betaCdf, betaQuantile } from "../../src/core/recall/beta.ts";

/** Half of the last printed digit. */
const TEN_DIGITS = 0.5e-10;
const SIX_DIGITS = 0.5e-6;

const interval = (k: number, n: number): readonly [number, number] => [
  k === 0 ? 0 : betaQuantile({ recalled: k, missed: n - k + 1 }, 0.025),
  k === n ? 1 : betaQuantile({ recalled: k + 1, missed: n - k }, 0.975),
];

describe("exact intervals by the Beta distribution", () => {
  it("are those in SciPy's manual of binomtest, proportion_ci, for 7 of 50: 0.0581917003 to 0.2673960025", () => {
    const [low, high] = interval(7, 50);
    expect(Math.abs(low - 0.0581917003)).toBeLessThan(TEN_DIGITS);
    expect(Math.abs(high - 0.2673960025)).toBeLessThan(TEN_DIGITS);
  });

  it("have the one-sided lower limit in SciPy's manual for 3 of 15 at 95 %: 0.0568468676", () => {
    expect(Math.abs(betaQuantile({ recalled: 3, missed: 13 }, 0.05) - 0.0568468676)).toBeLessThan(TEN_DIGITS);
  });

  // Newcombe, Statistics in Medicine 17, 1998, 857; his table from memory, and recomputed elsewhere to these digits.
  it.each([
    { k: 81, n: 263, low: 0.25274, high: 0.36762, printed: 0.5e-5 },
    { k: 0, n: 20, low: 0, high: 0.168433, printed: SIX_DIGITS },
    { k: 1, n: 29, low: 0.000873, high: 0.177644, printed: SIX_DIGITS },
  ])("are Newcombe's for $k of $n", ({ k, n, low, high, printed }) => {
    const ends = interval(k, n);
    expect(Math.abs(ends[0] - low)).toBeLessThan(printed);
    expect(Math.abs(ends[1] - high)).toBeLessThan(printed);
  });
});

describe("binomial tails by the Beta distribution", () => {
  it("have SciPy's 0.1840610691 for 3 or more of 15 at 0.1", () => {
    expect(Math.abs(betaCdf({ recalled: 3, missed: 13 }, 0.1) - 0.1840610691)).toBeLessThan(TEN_DIGITS);
  });
});
