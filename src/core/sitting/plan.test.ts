import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chooseNewCards, type DueCard, planSitting } from "./plan.ts";

const anyDue: fc.Arbitrary<readonly DueCard[]> = fc
  .uniqueArray(
    fc.record({
      n: fc.nat(99),
      compartment: fc.integer({ min: 1, max: 7 }),
      bundle: fc.integer({ min: 1, max: 4 }),
    }),
    { selector: (one) => one.n, maxLength: 40 },
  )
  .map((all) =>
    all.map(({ n, compartment, bundle }) => {
      const fact = `star ${n % 20}`;
      return { card: `${fact}:${n}`, fact, compartment, bundle };
    }),
  );

const planOf = (due: readonly DueCard[], sitting = "a sitting") => planSitting({ sitting, day: 5, due, fresh: [] });

describe("the plan of a sitting", () => {
  it("has its piles from the highest compartment to the lowest, bundles of one compartment in order", () => {
    fc.assert(
      fc.property(anyDue, (due) => {
        const order = planOf(due).piles.map(({ compartment, bundle }) => compartment * 100 - bundle);
        expect(order).toEqual([...new Set(order)].sort((a, b) => b - a));
      }),
    );
  });

  it("holds every due card once, in the pile where it lies", () => {
    fc.assert(
      fc.property(anyDue, (due) => {
        const planned = planOf(due).piles.flatMap(({ compartment, bundle, cards }) =>
          cards.map(({ card, fact }) => ({ card, fact, compartment, bundle })),
        );
        const byCard = (a: DueCard, b: DueCard) => (a.card < b.card ? -1 : 1);
        expect([...planned].sort(byCard)).toEqual([...due].sort(byCard));
      }),
    );
  });

  it("comes out the same in whatever order the cards are found", () => {
    fc.assert(
      fc.property(
        anyDue.chain((due) =>
          fc.tuple(fc.constant(due), fc.shuffledSubarray([...due], { minLength: due.length, maxLength: due.length })),
        ),
        ([due, found]) => {
          expect(planOf(found)).toEqual(planOf(due));
        },
      ),
    );
  });

  it("keeps cards of one fact apart in a pile that allows it", () => {
    fc.assert(
      fc.property(anyDue, (due) => {
        for (const { cards } of planOf(due).piles) {
          const most = Math.max(...cards.map((one) => cards.filter((other) => other.fact === one.fact).length));
          if (most > Math.ceil(cards.length / 2)) continue;
          expect(cards.some((ref, i) => i > 0 && ref.fact === cards[i - 1]?.fact)).toBe(false);
        }
      }),
    );
  });

  it("is in another order on another day", () => {
    const due = Array.from({ length: 12 }, (_, i) => ({ card: `${i}`, fact: `${i}`, compartment: 1, bundle: 1 }));
    expect(planOf(due, "Saturday").piles).not.toEqual(planOf(due, "Sunday").piles);
  });
});

describe("choosing new cards", () => {
  const ref = (fact: string, angle: string) => ({ card: `${fact}:${angle}`, fact });
  const stock = [ref("Vega", "forward"), ref("Vega", "reverse"), ref("Deneb", "forward"), ref("Rigel", "forward")];
  const chosen = (count: number, busy: readonly string[] = []) =>
    chooseNewCards(stock, count, new Set(busy)).map(({ card }) => card);

  it("takes them from the front of the stock, one card of a fact", () => {
    expect(chosen(2)).toEqual(["Vega:forward", "Deneb:forward"]);
  });

  it("lets facts wait of which a card was introduced on this day already", () => {
    expect(chosen(2, ["Vega"])).toEqual(["Deneb:forward", "Rigel:forward"]);
  });

  it("takes a second card of a fact only where the stock has nothing else", () => {
    expect(chosen(4)).toEqual(["Vega:forward", "Deneb:forward", "Rigel:forward", "Vega:reverse"]);
    expect(chosen(9)).toHaveLength(4);
    expect(chosen(0)).toEqual([]);
  });

  it("takes as many as asked for where the stock has them, and repeats a fact only if it must", () => {
    const anyStock = fc.array(fc.nat(9), { maxLength: 25 }).map((all) => all.map((n, i) => ref(`${n}`, `${i}`)));
    const anyBusy = fc.uniqueArray(fc.nat(9).map(String));
    fc.assert(
      fc.property(anyStock, fc.nat(12), anyBusy, (cards, count, busy) => {
        const picked = chooseNewCards(cards, count, new Set(busy));
        expect(picked).toHaveLength(Math.min(count, cards.length));
        expect(new Set(picked).size).toBe(picked.length);
        const free = new Set(cards.map(({ fact }) => fact).filter((fact) => !busy.includes(fact)));
        const fresh = new Set(picked.map(({ fact }) => fact).filter((fact) => !busy.includes(fact)));
        expect(fresh.size).toBe(Math.min(count, free.size));
      }),
    );
  });
});
