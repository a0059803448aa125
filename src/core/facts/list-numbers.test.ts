import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { freshNumbers, renumberItems } from "./list-numbers.ts";

const before = { items: ["Mercury", "Venus", "Mars", "Jupiter"], numbers: [1, 2, 3, 4] };
const after = (...items: string[]) => renumberItems(before, items, before.numbers);

describe("the items of a list that is changed", () => {
  it("keep their numbers where one is taken out or put in between", () => {
    expect(after("Mercury", "Mars", "Jupiter")).toEqual([1, 3, 4]);
    expect(after("Mercury", "Venus", "Earth", "Mars", "Jupiter")).toEqual([1, 2, 5, 3, 4]);
  });

  it("keep their numbers wherever they are moved", () => {
    expect(after("Jupiter", "Mars", "Venus", "Mercury")).toEqual([4, 3, 2, 1]);
  });

  it("keep their numbers when they are reworded in place, several side by side too", () => {
    expect(after("Mercury", "venus", "mars", "Jupiter")).toEqual([1, 2, 3, 4]);
    expect(after("the messenger", "Venus", "Mars", "the king")).toEqual([1, 2, 3, 4]);
  });

  it("never take over the history of one that is gone from another place", () => {
    expect(after("Mercury", "Mars", "Jupiter", "Saturn")).toEqual([1, 3, 4, 5]);
  });

  it("get a number that was never used, even by an item given up long ago", () => {
    expect(renumberItems(before, [...before.items, "Saturn"], [9])).toEqual([1, 2, 3, 4, 10]);
  });

  it("that say the same twice have a number each", () => {
    const verse = { items: ["row", "row", "boat"], numbers: [1, 2, 3] };
    expect(renumberItems(verse, ["row", "boat", "row"], [])).toEqual([1, 3, 2]);
  });

  it("always have numbers of their own, and those that stay have theirs", () => {
    const list = fc.uniqueArray(fc.constantFrom(..."abcdefghij"), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(list, list, (old, items) => {
        const numbers = renumberItems({ items: old, numbers: freshNumbers(old) }, items, []);
        expect(new Set(numbers).size).toBe(items.length);
        items.forEach((item, i) => {
          if (old.includes(item)) expect(numbers[i]).toBe(old.indexOf(item) + 1);
        });
      }),
    );
  });
});
