import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Beta, betaCdf, betaMean, betaQuantile } from "./beta.ts";

/** Some hundred products and sums of doubles, and a logarithm of gamma right to about 1e-14 of values up to 1e4. */
const ROUNDING = 1e-10;

const anyBeta = fc.record<Beta>({
  recalled: fc.double({ min: 0.5, max: 2_000, noNaN: true }),
  missed: fc.double({ min: 0.5, max: 2_000, noNaN: true }),
});
const anyLevel = fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true });

describe("the Beta distribution", () => {
  // By hand: Beta(1, 1) is even, Beta(2, 1) has density 2x, Beta(1, 3) leaves (1 - x)^3 above x.
  it.each([
    [{ recalled: 1, missed: 1 }, 0.3, 0.3],
    [{ recalled: 2, missed: 1 }, 0.3, 0.09],
    [{ recalled: 1, missed: 3 }, 0.3, 1 - 0.7 ** 3],
    [{ recalled: 9, missed: 1 }, 0.9, 0.9 ** 9],
  ])("of %o has chance up to %d: %d", (beta, x, chance) => {
    expect(Math.abs(betaCdf(beta, x) - chance)).toBeLessThan(1e-13);
  });

  it("reaches each level at its quantile", () => {
    fc.assert(
      fc.property(anyBeta, anyLevel, (beta, level) => {
        const x = betaQuantile(beta, level);
        expect(x).toBeGreaterThan(0);
        expect(x).toBeLessThanOrEqual(1);
        // Where the density is steep, one unit in the last place of x is much of the chance.
        if (x < 1 - 1e-9) expect(Math.abs(betaCdf(beta, x) - level)).toBeLessThan(ROUNDING);
      }),
    );
  });

  it("is turned about when successes and failures change places", () => {
    fc.assert(
      // Below 1 the density has no bound at an end, and the rounding of 1 - x shows.
      fc.property(anyBeta, fc.double({ min: 0, max: 1, noNaN: true }), (beta, x) => {
        const [recalled, missed] = [beta.recalled + 0.5, beta.missed + 0.5];
        const other = betaCdf({ recalled: missed, missed: recalled }, 1 - x);
        expect(Math.abs(betaCdf({ recalled, missed }, x) + other - 1)).toBeLessThan(ROUNDING);
      }),
    );
  });

  it("has the mean of its quantiles, taken evenly", () => {
    const beta = { recalled: 27, missed: 4 };
    const steps = 20_000;
    let sum = 0;
    for (let i = 0; i < steps; i++) sum += betaQuantile(beta, (i + 0.5) / steps);
    // The midpoint rule; only the two ends, where quantiles are steep, err by more than 1 / steps squared.
    expect(Math.abs(sum / steps - betaMean(beta))).toBeLessThan(1e-5);
  });

  it.each([-0.1, 1.5, Number.NaN])("has no level of %d", (level) => {
    expect(() => betaQuantile({ recalled: 1, missed: 1 }, level)).toThrow(RangeError);
  });

  it("lies between 0 and 1", () => {
    const beta = { recalled: 3, missed: 2 };
    expect([betaCdf(beta, -1), betaCdf(beta, 0), betaCdf(beta, 1), betaCdf(beta, 2)]).toEqual([0, 0, 1, 1]);
    expect([betaQuantile(beta, 0), betaQuantile(beta, 1)]).toEqual([0, 1]);
  });
});
