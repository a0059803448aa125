import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { editDistance } from "./edit-distance.ts";

const text = fc.string({ unit: fc.constantFrom("a", "b", "ö", "क्षि", "👩‍🚀"), maxLength: 12 });

describe("the edit distance", () => {
  it.each([
    ["Vega", "Vela", 1],
    ["kitten", "sitting", 3],
    ["", "Lyra", 4],
    ["Lyra", "Lyra", 0],
    ["👩‍🚀", "👨‍🚀", 1],
    ["क्षि", "क्षी", 1],
  ])("of %s and %s is %i", (one, other, distance) => expect(editDistance(one, other)).toBe(distance));

  it("is the same both ways, and no way round is shorter", () => {
    fc.assert(
      fc.property(text, text, text, (a, b, c) => {
        expect(editDistance(a, b)).toBe(editDistance(b, a));
        expect(editDistance(a, c)).toBeLessThanOrEqual(editDistance(a, b) + editDistance(b, c));
      }),
    );
  });

  it("is told as one more than the most that is asked for, where it is more", () => {
    fc.assert(
      fc.property(text, text, fc.nat(8), (a, b, most) => {
        expect(editDistance(a, b, most)).toBe(Math.min(editDistance(a, b), most + 1));
      }),
    );
  });
});
