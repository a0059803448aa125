import { describe, expect, it } from "vitest";
import { plainChart } from "../chart/make-chart.ts";
import { type Beta, betaMean } from "../recall/beta.ts";
import { exactLoad } from "./exact-load.ts";
import { DEFAULT_PACE } from "./minutes.ts";
import { type MixedLoadQuestion, mixLoad, recallSet } from "./mixed-load.ts";

const question: MixedLoadQuestion = {
  chart: plainChart(4),
  waiting: [{ compartment: 3, due: 2, count: 30 }],
  from: 1,
  days: 40,
  newCards: () => 6,
  quantiles: [0.05, 0.5, 0.95],
  pace: DEFAULT_PACE,
};

const mixed = (posterior: readonly Beta[], sets: number) => {
  const mixture = mixLoad(question, posterior);
  for (let i = 0; i < sets; i++) mixture.add();
  return mixture.load();
};

describe("a mixed load", () => {
  it("is the exact load where recall is as good as known", () => {
    // A million answers in each compartment: a chance known to three ten-thousandths.
    const posterior = [0.9, 0.8, 0.85, 0.95].map((p) => ({ recalled: p * 1e6, missed: (1 - p) * 1e6 }));
    const exact = exactLoad({ ...question, recall: posterior.map(betaMean) });
    for (const [i, day] of mixed(posterior, 32).entries()) {
      const known = exact[i];
      expect(Math.abs(day.reviews.mean - (known?.reviews.mean ?? 0))).toBeLessThan(0.01);
      expect(Math.abs(day.reviews.sd - (known?.reviews.sd ?? 0))).toBeLessThan(0.01);
      expect(day.newCards).toBe(6);
      for (const [j, count] of day.reviews.quantiles.entries()) {
        expect(Math.abs(count - (known?.reviews.quantiles[j] ?? 0))).toBeLessThanOrEqual(1);
      }
      expect(Math.abs((day.minutes?.mean ?? 0) - (known?.minutes?.mean ?? 0))).toBeLessThan(0.01);
    }
  });

  it("is the plain mixture of the exact loads of its sets", () => {
    const posterior = Array<Beta>(4).fill({ recalled: 9, missed: 1 });
    const exact = [0, 1, 2].map((i) => exactLoad({ ...question, recall: recallSet(posterior, i) }));
    const day = 30;
    const parts = exact.map((load) => load[day]?.reviews ?? { mean: 0, sd: 0 });
    const mean = parts.reduce((sum, one) => sum + one.mean, 0) / 3;
    const square = parts.reduce((sum, one) => sum + one.sd ** 2 + one.mean ** 2, 0) / 3;
    const { reviews, missed } = mixed(posterior, 3)[day] ?? { reviews: { mean: 0, sd: 0 }, missed: 0 };
    expect(reviews.mean).toBeCloseTo(mean, 10);
    expect(reviews.sd).toBeCloseTo(Math.sqrt(square - mean ** 2), 8);
    expect(missed).toBeCloseTo(exact.reduce((sum, load) => sum + (load[day]?.missed ?? 0), 0) / 3, 10);
  });

  it("has wider bands the less is known", () => {
    const known = (answers: number) => Array<Beta>(4).fill({ recalled: 0.9 * answers, missed: 0.1 * answers });
    const widths = [10, 100, 10_000].map((answers) => {
      const bands = mixed(known(answers), 64).map(({ reviews }) => reviews.quantiles);
      return bands.reduce((sum, [low = 0, , high = 0]) => sum + high - low, 0);
    });
    expect(widths).toEqual([...widths].sort((a, b) => b - a));
    expect(new Set(widths).size).toBe(3);
  });
});

describe("the sets of chances", () => {
  it("fill each Beta distribution evenly: in any tenth lie as many as in another, give or take three", () => {
    const even = Array<Beta>(7).fill({ recalled: 1, missed: 1 });
    const sets = Array.from({ length: 100 }, (_, i) => recallSet(even, i));
    for (let k = 0; k < 7; k++) {
      for (let tenth = 0; tenth < 10; tenth++) {
        const inside = sets.filter((set) => Math.floor((set[k] ?? 0) * 10) === tenth).length;
        expect(Math.abs(inside - 10)).toBeLessThanOrEqual(3);
      }
    }
  });

  it("do not go together from compartment to compartment", () => {
    const even = Array<Beta>(7).fill({ recalled: 1, missed: 1 });
    const sets = Array.from({ length: 512 }, (_, i) => recallSet(even, i));
    for (let a = 0; a < 7; a++) {
      for (let b = a + 1; b < 7; b++) {
        const together = sets.reduce((sum, set) => sum + ((set[a] ?? 0) - 0.5) * ((set[b] ?? 0) - 0.5), 0);
        // The covariance of an even square is 0, that of equal coordinates 1/12.
        expect(Math.abs(together / 512)).toBeLessThan(0.1 / 12);
      }
    }
  });
});
