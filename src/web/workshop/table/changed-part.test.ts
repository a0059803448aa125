import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { changedParts } from "./changed-part.ts";

describe("the changed part", () => {
  it.each([
    ["Vega is blue", "Vega is white", ["blu", "whit"]],
    ["Lyra", "the Lyra", ["", "the "]],
    ["same", "same", ["", ""]],
    ["aaa", "aa", ["a", ""]],
    ["Boötes", "Boo\u0308tes", ["ö", "o\u0308"]],
  ])("of %s and %s", (one, other, expected) => {
    expect(changedParts(one, other).map((part) => part.changed)).toEqual(expected);
  });

  it("makes up the whole with what is common", () => {
    const text = fc.string({ unit: fc.constantFrom("a", "b", "é", "क्षि", "👩‍🚀") });
    fc.assert(
      fc.property(text, text, (one, other) => {
        const [a, b] = changedParts(one, other);
        expect([a.before + a.changed + a.after, b.before + b.changed + b.after]).toEqual([one, other]);
        expect([a.before, a.after]).toEqual([b.before, b.after]);
      }),
    );
  });
});
