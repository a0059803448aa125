import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FORGETTING_RATE, recallAfter, recallOnceKept, waitBeyond } from "./forgetting.ts";

/** Relative: a power and two logarithms, each right to a few units in the last place. */
const ROUNDING = 1e-12;

const chance = fc.double({ min: 0.01, max: 0.99, noNaN: true });
const wait = fc.integer({ min: 1, max: 1_000 });
const days = fc.double({ min: 0, max: 4_000, noNaN: true });

describe("recall after some days", () => {
  it("is certain right after a card was asked", () => {
    fc.assert(
      fc.property(chance, wait, (p, w) => {
        expect(recallAfter(p, w, 0)).toBe(1);
      }),
    );
  });

  it("is what was measured once the wait is over", () => {
    fc.assert(
      fc.property(chance, wait, (p, w) => {
        expect(Math.abs(recallAfter(p, w, w) - p)).toBeLessThan(ROUNDING);
      }),
    );
  });

  it("falls from day to day and stays a chance", () => {
    fc.assert(
      fc.property(chance, wait, days, (p, w, d) => {
        const after = recallAfter(p, w, d + 1);
        expect(after).toBeLessThan(recallAfter(p, w, d));
        expect(after).toBeGreaterThan(0);
      }),
    );
  });

  it("is higher the longer the wait after which it was measured", () => {
    fc.assert(
      fc.property(chance, wait, wait, days, (p, w, more, d) => {
        expect(recallAfter(p, w + more, d + 1)).toBeGreaterThan(recallAfter(p, w, d + 1));
      }),
    );
  });

  // By hand: after w = 10 days 1 + βw = 2.32075; its square is 1 + βd for d = 2w + βw² = 20 + 13.2075 days, where the
  // logarithms are as 2 to 1 and the chance is 0.9² = 0.81.
  it("is the square of what was measured once 1 + βt has squared", () => {
    expect(FORGETTING_RATE).toBe(0.132075);
    expect(Math.abs(recallAfter(0.9, 10, 33.2075) - 0.81)).toBeLessThan(ROUNDING);
  });
});

describe("recall once kept", () => {
  it("is that of the last compartment after the period that a further one would have", () => {
    // Doubling periods up to 64 go on with 128, powers of 3 up to 81 with 243.
    expect(recallOnceKept([1, 2, 4, 8, 16, 32, 64], 0.9, 128)).toBeCloseTo(0.9, 12);
    expect(recallOnceKept([1, 3, 9, 27, 81], 0.8, 243)).toBeCloseTo(0.8, 12);
  });

  // By hand: β·365 = 48.207375 and β·128 = 16.9056, ln 49.207375 = 3.896044 and ln 17.9056 = 2.885114, their ratio
  // 1.350395; 0.9 to that power is e^(-0.105361 × 1.350395) = 0.867380.
  it("is about 0.867 a year on for seven doubling periods at nine recalls in ten", () => {
    expect(recallOnceKept([1, 2, 4, 8, 16, 32, 64], 0.9, 365)).toBeCloseTo(0.86738, 5);
  });

  it("takes a lone period to double, and periods that fall to stay", () => {
    expect(waitBeyond([5])).toBe(10);
    expect(waitBeyond([8, 4])).toBe(4);
    expect(waitBeyond([1, 4, 6])).toBe(9);
  });
});
