import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyChart } from "../../../tests/support/any-chart.ts";
import { anyLoad, anyLoadWithGaps } from "../../../tests/support/any-load.ts";
import { arrival, compartmentCount, cycleLength } from "../chart/chart.ts";
import { plainChart } from "../chart/make-chart.ts";
import { type CardPlace, cohortsOf, waitTables, walkCard, walkCohorts } from "./cohorts.ts";
import type { LoadQuestion } from "./expected.ts";

/** Sums of some hundred chances, each right to about 1e-16. */
const ROUNDING = 1e-12;

const cardIn = (questions: fc.Arbitrary<LoadQuestion>) =>
  questions.chain((question) =>
    fc.record({
      question: fc.constant(question),
      start: fc.record({
        compartment: fc.integer({ min: 1, max: compartmentCount(question.chart) }),
        due: fc.integer({ min: 1, max: 260 }),
      }),
    }),
  );

const chances = (question: LoadQuestion, start: CardPlace): readonly number[] => [...walkCard(question, start).asked];

const anyCard = cardIn(anyLoad(anyChart, 150));

/** The same chances from the distribution over every compartment and due day, kept in full from day to day. */
function spelledOut(question: LoadQuestion, start: CardPlace): readonly number[] {
  const { chart, recall, from, days, sits = () => true } = question;
  let places = new Map([[`${start.compartment} ${Math.max(start.due, from)}`, 1]]);
  return Array.from({ length: days }, (_, i) => {
    const next = new Map<string, number>();
    const add = (k: number, due: number, chance: number): void => {
      next.set(`${k} ${due}`, (next.get(`${k} ${due}`) ?? 0) + chance);
    };
    let asked = 0;
    for (const [place, chance] of places) {
      const [k = 0, due = 0] = place.split(" ").map(Number);
      if (due > from + i || !sits(i)) {
        add(k, due, chance);
        continue;
      }
      const p = recall[k - 1] ?? 0;
      asked += chance;
      if (k < compartmentCount(chart)) add(k + 1, arrival(chart, k + 1, from + i).due, chance * p);
      add(1, arrival(chart, 1, from + i).due, chance * (1 - p));
    }
    places = next;
    return asked;
  });
}

describe("the chance that a card is asked", () => {
  it("is that of the distribution over compartment and due day", () => {
    fc.assert(
      fc.property(fc.oneof(anyCard, cardIn(anyLoadWithGaps(anyChart, 150))), ({ question, start }) => {
        const full = spelledOut(question, start);
        for (const [i, chance] of chances(question, start).entries()) {
          expect(Math.abs(chance - (full[i] ?? Number.NaN))).toBeLessThan(ROUNDING);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("is a chance: from 0 to 1 on every day, 1 on the day the card is due, and 0 before", () => {
    fc.assert(
      fc.property(anyCard, ({ question, start }) => {
        const asked = chances(question, start);
        const first = Math.max(0, start.due - question.from);
        expect(asked).toHaveLength(question.days);
        expect(asked.every((chance) => chance >= 0 && chance <= 1)).toBe(true);
        expect(asked.slice(0, first).every((chance) => chance === 0)).toBe(true);
        if (first < question.days) expect(asked[first]).toBe(1);
      }),
    );
  });

  it("is the same for a card that starts one cycle later, one cycle later", () => {
    fc.assert(
      fc.property(anyCard, ({ question, start }) => {
        const cycle = cycleLength(question.chart);
        const later = { ...start, due: start.due + cycle };
        expect(chances({ ...question, from: question.from + cycle }, later)).toEqual(chances(question, start));
      }),
    );
  });

  // By hand, plain chart of two: compartment 1 daily, 2 on odd days. Due in 1 on day 1: asked on day 1; recalled (p),
  // it waits in 2 for day 3; missed (q), it is asked on day 2; then (recalled) in 2 on day 3 too, or in 1 on day 3.
  it("is worked by hand for two compartments: 1, q, 1, then the misses of day 3", () => {
    const [p, r] = [0.75, 0.5];
    const [one, two, three, four] = walkCard(
      { chart: plainChart(2), recall: [p, r], from: 1, days: 4 },
      { compartment: 1, due: 1 },
    ).asked;
    expect([one, two, three]).toEqual([1, 0.25, 1]);
    // On day 3: in compartment 2 with chance p + q p = 0.9375, in 1 with q q = 0.0625. Missed: 0.9375 (1 - r) + 0.0625 q.
    expect(four).toBe(0.9375 * 0.5 + 0.0625 * 0.25);
  });
});

describe("the cohorts of a box", () => {
  it("hold every card that is asked within the days, waiting or new, and no other", () => {
    fc.assert(
      fc.property(anyLoad(anyChart, 40), (question) => {
        const { chart, from, days, newCards } = question;
        const waiting = question.waiting
          .filter(({ due }) => due < from + days)
          .reduce((sum, one) => sum + one.count, 0);
        let fresh = 0;
        for (let i = 0; i < days; i++) if (arrival(chart, 1, from + i).due < from + days) fresh += newCards(i);
        const cohorts = cohortsOf(question);
        expect(cohorts.reduce((sum, one) => sum + one.count, 0)).toBe(waiting + fresh);
        const places = cohorts.map(({ start }) => `${start.compartment} ${start.due}`);
        expect(new Set(places).size).toBe(places.length);
        const dues = cohorts.map(({ start }) => start.due);
        expect(dues).toEqual([...dues].sort((a, b) => a - b));
        for (const due of dues) expect(due).toBeGreaterThanOrEqual(from);
      }),
    );
  });

  it("walk as each would alone, though those of the same phase share their work", () => {
    fc.assert(
      fc.property(anyLoad(anyChart, 100), (question) => {
        for (const { start, asked } of walkCohorts(question)) {
          expect([...asked]).toEqual(chances(question, start).slice(start.due - question.from));
        }
      }),
      { numRuns: 40 },
    );
  });

  it.each([-1, 2.5, Number.NaN])("are not made of %d cards", (count) => {
    const question = { chart: plainChart(3), recall: [0.9, 0.9, 0.9], waiting: [], from: 1, days: 5 };
    expect(() => cohortsOf({ ...question, newCards: () => count })).toThrow(RangeError);
  });
});

describe("the table of waits", () => {
  it("says how long a card waits that arrives on a day", () => {
    // Plain chart: compartment 3 is visited on days 2, 6, 10 ...
    expect([...(waitTables({ chart: plainChart(3), from: 1, days: 6 })[2] ?? [])]).toEqual([1, 4, 3, 2, 1, 4]);
  });
});
