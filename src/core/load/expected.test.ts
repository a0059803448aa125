import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyChart, shortChart } from "../../../tests/support/any-chart.ts";
import { arrival, type Chart, compartmentCount } from "../chart/chart.ts";
import { plainChart } from "../chart/make-chart.ts";
import { expectedLoad, type LoadQuestion, type Waiting } from "./expected.ts";

/** Relative: doubles carry about sixteen digits, and adding ten thousand of them may cost the last six. */
const ROUNDING = 1e-9;

const anyRecall = (chart: Chart) =>
  fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
    minLength: compartmentCount(chart),
    maxLength: compartmentCount(chart),
  });

const anyQuestion = (charts: fc.Arbitrary<Chart>, days: number): fc.Arbitrary<LoadQuestion> =>
  charts.chain((chart) =>
    fc.record({
      chart: fc.constant(chart),
      recall: anyRecall(chart),
      waiting: fc.array(
        fc.record<Waiting>({
          compartment: fc.integer({ min: 1, max: compartmentCount(chart) }),
          due: fc.integer({ min: 1, max: 60 }),
          count: fc.integer({ min: 1, max: 20 }),
        }),
        { maxLength: 8 },
      ),
      from: fc.integer({ min: 1, max: 200 }),
      days: fc.constant(days),
      newCards: fc.nat(12).map((each) => (day: number) => (day < 10 ? each : 0)),
    }),
  );

/** The same mean, card by card: each waiting card walks the chart alone, its chance of being asked added up. */
function walked(question: LoadQuestion): readonly number[] {
  const { chart, recall, from, days } = question;
  const asked = new Array<number>(days).fill(0);
  const chances = new Map<string, number>();
  const add = (k: number, due: number, chance: number): void => {
    const day = Math.max(due, from);
    if (day < from + days) chances.set(`${day} ${k}`, (chances.get(`${day} ${k}`) ?? 0) + chance);
  };
  for (const { compartment, due, count } of question.waiting) add(compartment, due, count);
  for (let day = from; day < from + days; day++) {
    for (let k = 1; k <= compartmentCount(chart); k++) {
      const chance = chances.get(`${day} ${k}`) ?? 0;
      const up = chance * (recall[k - 1] ?? 0);
      asked[day - from] = (asked[day - from] ?? 0) + chance;
      if (k < compartmentCount(chart)) add(k + 1, arrival(chart, k + 1, day).due, up);
      add(1, arrival(chart, 1, day).due, chance - up);
    }
    add(1, arrival(chart, 1, day).due, question.newCards(day - from));
  }
  return asked;
}

describe("the expected load", () => {
  it("is that of every card walking the chart on its own", () => {
    fc.assert(
      fc.property(anyQuestion(anyChart, 120), (question) => {
        const reviews = expectedLoad(question).map((day) => day.reviews);
        for (const [i, asked] of walked(question).entries()) expect(reviews[i]).toBeCloseTo(asked, 8);
      }),
      { numRuns: 50 },
    );
  });

  it("asks a card every day as long as it is never recalled", () => {
    const load = expectedLoad({
      chart: plainChart(7),
      recall: [0, 0, 0, 0, 0, 0, 0],
      waiting: [],
      from: 1,
      days: 5,
      newCards: (day) => (day === 0 ? 3 : 0),
    });
    expect(load.map(({ reviews, missed }) => [reviews, missed])).toEqual([
      [0, 0],
      [3, 3],
      [3, 3],
      [3, 3],
      [3, 3],
    ]);
  });

  // By hand: introduced on day 1; compartment 1 on day 2, 2 on 3, 3 on 6, 4 on 12, 5 on 24, 6 on 48, 7 on 96.
  it("follows a card that is always recalled through the plain chart and out of it", () => {
    const load = expectedLoad({
      chart: plainChart(7),
      recall: [1, 1, 1, 1, 1, 1, 1],
      waiting: [],
      from: 1,
      days: 300,
      newCards: (day) => (day === 0 ? 1 : 0),
    });
    expect(load.filter(({ reviews }) => reviews > 0).map(({ day }) => day)).toEqual([2, 3, 6, 12, 24, 48, 96]);
  });

  it("asks on the first day everything that fell due before it", () => {
    const load = expectedLoad({
      chart: plainChart(7),
      recall: [1, 1, 1, 1, 1, 1, 1],
      waiting: [
        { compartment: 2, due: 3, count: 4 },
        { compartment: 5, due: 20, count: 6 },
      ],
      from: 20,
      days: 1,
      newCards: () => 0,
    });
    expect(load[0]).toMatchObject({ day: 20, reviews: 10, missed: 0 });
  });
});

/**
 * Expected reviews of a card from each compartment until it is kept, for its own chances of recall:
 * E(k) = 1 + p(k) E(k+1) + (1 - p(k)) E(1), E(K+1) = 0. From below, E(1) = sum of p(1)...p(k-1) over the
 * product of all p; the others follow from it.
 */
function reviewsUntilKept(recall: readonly number[]): readonly number[] {
  let reached = 1;
  let sum = 0;
  for (const p of recall) {
    sum += reached;
    reached *= p;
  }
  const first = sum / reached;
  const from: number[] = [];
  let later = 0;
  for (const p of [...recall].reverse()) {
    later = 1 + p * later + (1 - p) * first;
    from.unshift(later);
  }
  expect(from[0]).toBeCloseTo(first, 8);
  return from;
}

describe("the expected load of a box to the end", () => {
  // At least half recalled, at most 4 compartments and 6 days between visits: of a card, less than e^-40 is left.
  const FAR = 12_000;

  it("neither loses nor makes cards: new and waiting cards are asked as often as their walks are long", () => {
    fc.assert(
      fc.property(
        anyQuestion(shortChart, FAR).map((question) => ({
          ...question,
          recall: question.recall.map((p) => 0.5 + p / 2),
        })),
        (question) => {
          const load = expectedLoad(question);
          const each = reviewsUntilKept(question.recall);
          const added = load.reduce((sum, day) => sum + day.newCards, 0);
          const walks = question.waiting.reduce((sum, one) => sum + one.count * (each[one.compartment - 1] ?? 0), 0);
          const total = load.reduce((sum, day) => sum + day.reviews, 0);
          expect(Math.abs(total - walks - added * (each[0] ?? 0))).toBeLessThan(ROUNDING * (1 + total));
        },
      ),
      { numRuns: 50 },
    );
  });

  it("says of every day how many of its reviews are misses", () => {
    fc.assert(
      fc.property(anyQuestion(shortChart, 100), fc.double({ min: 0, max: 1, noNaN: true }), (question, p) => {
        const recall = question.recall.map(() => p);
        for (const { reviews, missed } of expectedLoad({ ...question, recall })) {
          expect(Math.abs(missed - reviews * (1 - p))).toBeLessThan(ROUNDING * (1 + reviews));
        }
      }),
      { numRuns: 50 },
    );
  });
});
