// The edit distance against fastest-levenshtein 1.0.16 (MIT), a general library that counts UTF-16 code units: the same
// for texts in which every character is one of these.

import fc from "fast-check";
import { distance } from "fastest-levenshtein";
import { expect, it } from "vitest";
import { editDistance } from "../../src/core/text/edit-distance.ts";

it("agrees with fastest-levenshtein", () => {
  const letter = fc.constantFrom(..."abcdeäöß-αβγабв星座ベ ");
  const text = fc.string({ unit: letter, maxLength: 60 });
  fc.assert(
    fc.property(text, text, (one, other) => {
      expect(editDistance(one, other)).toBe(distance(one, other));
    }),
    { numRuns: 2_000 },
  );
});
