import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { keepApart } from "./keep-apart.ts";

/** How many neighbours share a group. */
const meetings = (groups: readonly string[]): number =>
  groups.filter((group, i) => i > 0 && group === groups[i - 1]).length;

/** The fewest meetings of any order, by trying all orders of the group counts. */
function fewest(groups: readonly string[]): number {
  const counts = new Map<string, number>();
  for (const group of groups) counts.set(group, (counts.get(group) ?? 0) + 1);
  const search = (last: string | null, left: number): number => {
    if (left === 0) return 0;
    let best = Number.POSITIVE_INFINITY;
    for (const [group, count] of counts) {
      if (count === 0) continue;
      counts.set(group, count - 1);
      best = Math.min(best, (group === last ? 1 : 0) + search(group, left - 1));
      counts.set(group, count);
    }
    return best;
  };
  return search(null, groups.length);
}

const apart = (pile: readonly string[]) => keepApart(pile, (card) => card.slice(0, 1));

describe("keeping cards of one fact apart", () => {
  it("leaves a pile alone whose neighbours differ already", () => {
    expect(apart(["a1", "b1", "a2", "c1"])).toEqual(["a1", "b1", "a2", "c1"]);
  });

  it("puts another card between two of one fact", () => {
    expect(apart(["a1", "a2", "b1", "c1"])).toEqual(["a1", "b1", "a2", "c1"]);
    expect(apart(["b1", "a1", "a2", "a3"])).toEqual(["a1", "b1", "a2", "a3"]);
  });

  it("copes with an empty pile and with one card", () => {
    expect(apart([])).toEqual([]);
    expect(apart(["a1"])).toEqual(["a1"]);
  });

  it("has the fewest meetings that any order has, and none where that is possible", () => {
    const pile = fc.array(fc.constantFrom("a", "b", "c", "d"), { maxLength: 8 });
    fc.assert(
      fc.property(pile, (groups) => {
        expect(meetings(keepApart(groups, (group) => group))).toBe(fewest(groups));
      }),
      { numRuns: 500 },
    );
  });

  // A group of m among n cards meets itself at least 2m - n - 1 times: n - m others make n - m + 1 gaps.
  it("has no more meetings than the largest group must have, in piles of any size", () => {
    const pile = fc.array(
      fc.nat(40).map((n) => `fact ${Math.floor(Math.sqrt(n))}`),
      { maxLength: 200 },
    );
    fc.assert(
      fc.property(pile, (groups) => {
        const sizes = groups.map((group) => groups.filter((other) => other === group).length);
        const least = Math.max(0, 2 * Math.max(0, ...sizes) - groups.length - 1);
        expect(meetings(keepApart(groups, (group) => group))).toBe(least);
      }),
    );
  });

  it("loses no card and adds none, and keeps the order within a fact", () => {
    fc.assert(
      fc.property(fc.array(fc.nat(5), { maxLength: 60 }), (facts) => {
        const cards = facts.map((fact, i) => ({ fact: `${fact}`, i }));
        const after = keepApart(cards, (card) => card.fact);
        expect([...after].sort((a, b) => a.i - b.i)).toEqual(cards);
        for (const fact of new Set(facts)) {
          const own = after.filter((card) => card.fact === `${fact}`).map((card) => card.i);
          expect(own).toEqual([...own].sort((a, b) => a - b));
        }
      }),
    );
  });
});
