import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { batches, groupBy } from "./lists.ts";

describe("batches", () => {
  it("hold every item once, in order, and all but the last are full", () => {
    fc.assert(
      fc.property(fc.array(fc.nat()), fc.integer({ min: 1, max: 9 }), (items, size) => {
        const runs = [...batches(items, size)];
        expect(runs.flat()).toEqual(items);
        expect(runs.slice(0, -1).every((run) => run.length === size)).toBe(true);
        expect(runs.every((run) => run.length > 0)).toBe(true);
      }),
    );
  });
});

describe("groups", () => {
  it("hold every item once, under its key, in the order in which they came", () => {
    fc.assert(
      fc.property(fc.array(fc.nat(99)), (items) => {
        const groups = groupBy(items, (n) => n % 7);
        for (const [key, group] of groups) expect(group).toEqual(items.filter((n) => n % 7 === key));
        expect([...groups.values()].flat().length).toBe(items.length);
      }),
    );
  });
});
