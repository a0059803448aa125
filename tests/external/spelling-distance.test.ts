// The number of steps between two spellings beside a general-purpose edit distance, on ASCII, where both count alike.
import fc from "fast-check";
import { distance } from "fastest-levenshtein";
import { expect, it } from "vitest";
import { compareSpelling } from "../../src/core/spelling/compare-spelling.ts";

it("counts as many steps as fastest-levenshtein", () => {
  const word = fc.string({ unit: fc.constantFrom("a", "b", "c", "A", "z"), maxLength: 14 });
  fc.assert(
    fc.property(word, word, (typed, right) => {
      const rule = { accents: "count", letterCase: "count" } as const;
      expect(compareSpelling(typed, right, rule).distance).toBe(distance(typed, right));
    }),
    { numRuns: 500 },
  );
});
