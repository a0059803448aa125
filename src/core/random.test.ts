import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hash32, shuffleByKey, uniform } from "./random.ts";

const STARS = ["Altair", "Antares", "Arcturus", "Capella", "Deneb", "Polaris", "Regulus", "Rigel", "Spica", "Vega"];

describe("a seeded shuffle", () => {
  it("does not depend on the order in which the items come", () => {
    const anyItems = fc.uniqueArray(fc.string(), { maxLength: 30 });
    fc.assert(
      fc.property(
        anyItems.chain((items) =>
          fc.tuple(
            fc.constant(items),
            fc.shuffledSubarray(items, { minLength: items.length, maxLength: items.length }),
            fc.string(),
          ),
        ),
        ([items, other, seed]) => {
          const shuffled = shuffleByKey(items, seed, (item) => item);
          expect(shuffleByKey(other, seed, (item) => item)).toEqual(shuffled);
          expect([...shuffled].sort()).toEqual([...items].sort());
        },
      ),
    );
  });

  it("differs from seed to seed", () => {
    const orders = new Set(
      Array.from({ length: 50 }, (_, i) => shuffleByKey(STARS, `seed ${i}`, (star) => star).join()),
    );
    // Two of 50 random orders of ten cards are equal with a chance of 50 * 49 / 2 / 10! = 0.0003.
    expect(orders.size).toBe(50);
  });

  it("leaves the list that it was given as it was", () => {
    const stars = [...STARS];
    shuffleByKey(stars, "seed", (star) => star);
    expect(stars).toEqual(STARS);
  });

  it("puts every card first about equally often", () => {
    const runs = 5_000;
    const first = new Map<string, number>();
    for (let i = 0; i < runs; i++) {
      const star = shuffleByKey(STARS, `sitting ${i}`, (one) => one)[0] ?? "";
      first.set(star, (first.get(star) ?? 0) + 1);
    }
    const expected = runs / STARS.length;
    const chiSquare = STARS.reduce((sum, star) => sum + ((first.get(star) ?? 0) - expected) ** 2 / expected, 0);
    // 99.9 % point of chi-square with 9 degrees of freedom: 27.88 (statistical tables). The seeds are fixed,
    // so this passes or fails for good.
    expect(chiSquare).toBeLessThan(27.88);
  });
});

describe("a seeded number", () => {
  it("lies from 0 up to but not at 1 and is the same for the same seed and key", () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), (seed, key) => {
        const number = uniform(seed, key);
        expect(number).toBeGreaterThanOrEqual(0);
        expect(number).toBeLessThan(1);
        expect(uniform(seed, key)).toBe(number);
      }),
    );
  });

  it("tells seed and key apart where their letters run together", () => {
    expect(hash32("ve", "ga")).not.toBe(hash32("v", "ega"));
    expect(hash32("", "vega")).not.toBe(hash32("vega", ""));
  });
});
