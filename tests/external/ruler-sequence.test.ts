// The plain chart against the ruler sequence, and the levelled chart's load.
import { describe, expect, it } from "vitest";
import { cycleLength, visitsOn } from "../../src/core/chart/chart.ts";
import { plainChart } from "../../src/core/chart/make-chart.ts";

/** OEIS A001511, n = 1 to 64: the exponent of 2 in 2n. Copied from oeis.org/A001511, not computed. */
const A001511 = [
  1, 2, 1, 3, 1, 2, 1, 4, 1, 2, 1, 3, 1, 2, 1, 5, 1, 2, 1, 3, 1, 2, 1, 4, 1, 2, 1, 3, 1, 2, 1, 6, 1, 2, 1, 3, 1, 2, 1,
  4, 1, 2, 1, 3, 1, 2, 1, 5, 1, 2, 1, 3, 1, 2, 1, 4, 1, 2, 1, 3, 1, 2, 1, 7,
];

/** OEIS A007814, n = 1 to 64: the exponent of 2 in n. By its definition A001511(n) - 1. */
const A007814 = A001511.map((n) => n - 1);

/** The first terms of A007814 as printed at number.house/seq/A007814. */
const A007814_PRINTED = [0, 1, 0, 2, 0, 1, 0, 3, 0, 1, 0, 2];

const visited = (compartments: number, day: number): readonly number[] =>
  visitsOn(plainChart(compartments), day).map(({ compartment }) => compartment);

describe("the two sequences as they are written down here", () => {
  it("agree where both are printed", () => {
    expect(A001511).toHaveLength(64);
    expect(A007814.slice(0, A007814_PRINTED.length)).toEqual(A007814_PRINTED);
  });
});

describe("the plain chart of seven compartments", () => {
  it("visits compartment A007814(d) + 2 and compartment 1 on day d of 64, and on day 64 compartment 1 alone", () => {
    A007814.forEach((exponent, i) => {
      expect(visited(7, i + 1)).toEqual(exponent + 2 <= 7 ? [exponent + 2, 1] : [1]);
    });
    expect(visited(7, 64)).toEqual([1]);
  });

  it("begins with 2 and 1 on day 1, and 3 and 1 on day 2 (common practice for a 64-day chart)", () => {
    expect(visited(7, 1)).toEqual([2, 1]);
    expect(visited(7, 2)).toEqual([3, 1]);
  });

  it("visits compartments 2 to 7 on 32, 16, 8, 4, 2 and 1 of its 64 days, as A001511 has its values 1 to 6", () => {
    const counts = (values: readonly number[], all: readonly number[]) =>
      values.map((value) => all.filter((one) => one === value).length);
    expect(counts([1, 2, 3, 4, 5, 6, 7], A001511)).toEqual([32, 16, 8, 4, 2, 1, 1]);
    const days = Array.from({ length: 64 }, (_, i) => visited(7, i + 1)).flat();
    expect(counts([2, 3, 4, 5, 6, 7, 1], days)).toEqual([32, 16, 8, 4, 2, 1, 64]);
  });

  // Sum of the periods' inverses: 1 + 1/2 + ... + 1/64 = 127/64 = 1.984375 exactly.
  it("visits at most two compartments a day, 1.984375 on average", () => {
    const sizes = Array.from({ length: 64 }, (_, i) => visited(7, i + 1).length);
    expect(Math.max(...sizes)).toBe(2);
    expect(sizes.reduce((sum, size) => sum + size, 0) / 64).toBe(1.984375);
  });
});

describe("plain charts of other sizes", () => {
  it.each([3, 4, 5, 6, 7, 8, 9, 10])("follow the ruler over two cycles with %i compartments", (compartments) => {
    const cycle = 2 ** (compartments - 1);
    expect(cycleLength(plainChart(compartments))).toBe(cycle);
    // A001511 beyond 64 terms: a(64 + n) = a(n) for n < 64, and a(64 m) = a(m) + 6 (its recurrence a(2n) = a(n) + 1).
    const term = (n: number): number => (n % 64 === 0 ? term(n / 64) + 6 : (A001511[(n % 64) - 1] as number));
    for (let day = 1; day <= 2 * cycle; day++) {
      const highest = term(day) + 1;
      expect(visited(compartments, day)).toEqual(highest <= compartments ? [highest, 1] : [1]);
    }
  });
});
