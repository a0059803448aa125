import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { RECALL_PRIOR, recallByCompartment } from "./estimate.ts";

describe("the chance of recall", () => {
  it("is nine in ten in every compartment before anything was asked", () => {
    expect(recallByCompartment([], 3)).toEqual([0.9, 0.9, 0.9]);
  });

  it("follows the box's own answers, compartment by compartment", () => {
    // (9 + 30) / (10 + 50) and (9 + 0) / (10 + 10).
    const counts = [
      { compartment: 3, recalled: 30, missed: 20 },
      { compartment: 1, recalled: 0, missed: 10 },
    ];
    expect(recallByCompartment(counts, 3)).toEqual([9 / 20, 0.9, 39 / 60]);
  });

  it("lies between the prior and what was observed, nearer to the latter the more was asked", () => {
    const count = fc.integer({ min: 1, max: 2000 });
    fc.assert(
      fc.property(count, count, (recalled, missed) => {
        const [estimate = 0] = recallByCompartment([{ compartment: 1, recalled, missed }], 1);
        const observed = recalled / (recalled + missed);
        const prior = RECALL_PRIOR.recalled / (RECALL_PRIOR.recalled + RECALL_PRIOR.missed);
        // The posterior mean is the mean of the two, weighted by their numbers of answers.
        const weight = 10 / (10 + recalled + missed);
        expect(estimate).toBeCloseTo(weight * prior + (1 - weight) * observed, 12);
      }),
    );
  });
});
