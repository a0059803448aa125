// The rate of forgetting against the experiment that it was fitted to, fitted anew by a search of its own.
import { expect, it } from "vitest";
import { FORGETTING_RATE } from "../../src/core/recall/forgetting.ts";

/**
 * Recall after six retention intervals, in days: Carpenter, Pashler, Wixted & Vul, "The effects of tests on learning
 * and forgetting", Memory & Cognition 36 (2008), experiment 1, as listed in the programs that go with Farrell &
 * Lewandowsky, Computational Modeling of Cognition and Behavior (2018).
 */
const MEASURED = [
  { days: 0.0035, recall: 0.93 },
  { days: 1, recall: 0.88 },
  { days: 2, recall: 0.86 },
  { days: 7, recall: 0.66 },
  { days: 14, recall: 0.47 },
  { days: 42, recall: 0.34 },
] as const;

/** Least squares of a (b t + 1)^-c, computed elsewhere and printed to six decimals. */
const PRINTED = { a: 0.948033, b: 0.132075, c: 0.581753, rmse: 0.026204 } as const;

/** The sum of squares is so flat at its lowest that the parameters agree between programs to five decimals only. */
const FLAT = 1e-5;
/** Half of the last printed digit. */
const DIGIT = 5e-7;

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

/** The best a for b and c, which is linear, and the mean square that is left. */
function fitScale(b: number, c: number) {
  const curve = MEASURED.map(({ days }) => (b * days + 1) ** -c);
  const a = sum(MEASURED.map(({ recall }, i) => recall * (curve[i] ?? 0))) / sum(curve.map((one) => one ** 2));
  const left = sum(MEASURED.map(({ recall }, i) => (recall - a * (curve[i] ?? 0)) ** 2)) / MEASURED.length;
  return { a, b, c, left };
}

/** A compass search: a step in each direction while that is better, then half the step. */
function fit() {
  let best = fitScale(1, 1);
  for (let step = 0.5; step > 1e-12; ) {
    const around = [
      [step, 0],
      [-step, 0],
      [0, step],
      [0, -step],
      [step, -step],
      [-step, step],
    ] as const;
    const next = around
      // Factors keep both parameters above 0.
      .map(([up, along]) => fitScale(best.b * Math.exp(up), best.c * Math.exp(along)))
      .reduce((a, b) => (b.left < a.left ? b : a));
    if (next.left < best.left) best = next;
    else step /= 2;
  }
  return best;
}

it("fitted to six retention intervals the power law forgets at the rate that Longhold uses", () => {
  const { a, b, c, left } = fit();
  expect(Math.abs(b - FORGETTING_RATE)).toBeLessThan(FLAT);
  expect(Math.abs(b - PRINTED.b)).toBeLessThan(FLAT);
  expect(Math.abs(a - PRINTED.a)).toBeLessThan(FLAT);
  expect(Math.abs(c - PRINTED.c)).toBeLessThan(FLAT);
  expect(Math.abs(Math.sqrt(left) - PRINTED.rmse)).toBeLessThan(DIGIT);
});
