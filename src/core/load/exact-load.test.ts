import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyChart } from "../../../tests/support/any-chart.ts";
import { anyLoad, anyLoadWithGaps } from "../../../tests/support/any-load.ts";
import { plainChart } from "../chart/make-chart.ts";
import { cohortsOf, walkCard } from "./cohorts.ts";
import { type ExactLoadQuestion, exactLoad } from "./exact-load.ts";
import { expectedLoad, type LoadQuestion } from "./expected.ts";
import { DEFAULT_PACE, minutesFor } from "./minutes.ts";

/** Relative: the means are added up in different orders, and doubles carry about sixteen digits. */
const ROUNDING = 1e-9;
const LEVELS = [0.05, 0.5, 0.95];

/** A box written down by hand for the enumeration: when a card that came into compartment k on day `since` is visited. */
interface TinyBox {
  readonly question: LoadQuestion;
  readonly visited: (k: number, day: number, since: number) => boolean;
}

type Pile = { readonly k: number; readonly since: number };

/** Chance of each number of reviews on each day, by going through every sequence of answers of the whole box. */
function enumerated({ question, visited }: TinyBox): readonly Map<number, number>[] {
  const { recall, from, days, newCards } = question;
  const perDay = Array.from({ length: days }, () => new Map<number, number>());
  const answer = (i: number, asked: readonly Pile[], rest: readonly Pile[], chance: number): void => {
    const [card, ...others] = asked;
    if (!card) {
      begin(i + 1, [...rest, ...Array(newCards(i)).fill({ k: 1, since: from + i })], chance);
      return;
    }
    const p = recall[card.k - 1] ?? 0;
    const up = card.k < recall.length ? [{ k: card.k + 1, since: from + i }] : [];
    answer(i, others, [...rest, ...up], chance * p);
    answer(i, others, [...rest, { k: 1, since: from + i }], chance * (1 - p));
  };
  const begin = (i: number, box: readonly Pile[], chance: number): void => {
    const counts = perDay[i];
    if (!counts || chance === 0) return;
    const isAsked = ({ k, since }: Pile): boolean => since < from + i && visited(k, from + i, since);
    const asked = box.filter(isAsked);
    counts.set(asked.length, (counts.get(asked.length) ?? 0) + chance);
    answer(
      i,
      asked,
      box.filter((card) => !isAsked(card)),
      chance,
    );
  };
  begin(
    0,
    question.waiting.flatMap(({ compartment, count }) => Array(count).fill({ k: compartment, since: from - 1 })),
    1,
  );
  return perDay;
}

const TINY: readonly (readonly [name: string, box: TinyBox])[] = [
  [
    "two compartments, two cards and then a third",
    {
      question: {
        chart: plainChart(2),
        recall: [0.7, 0.6],
        waiting: [],
        from: 1,
        days: 6,
        newCards: (day) => [2, 0, 1][day] ?? 0,
      },
      visited: (k, day) => k === 1 || day % 2 === 1,
    },
  ],
  [
    "three compartments, cards waiting in each, and one new",
    {
      question: {
        chart: plainChart(3),
        recall: [0.5, 0.8, 0.9],
        // On days 3, 3 and 6, the next visits of compartments 1, 2 and 3 of the plain chart.
        waiting: [
          { compartment: 1, due: 3, count: 1 },
          { compartment: 2, due: 3, count: 1 },
          { compartment: 3, due: 6, count: 1 },
        ],
        from: 3,
        days: 6,
        newCards: (day) => (day === 1 ? 1 : 0),
      },
      visited: (k, day) => k === 1 || (k === 2 && day % 2 === 1) || (k === 3 && day % 4 === 2),
    },
  ],
  [
    "a compartment that rests every other day, and one where each card has its own date",
    {
      question: {
        // Compartment 1 on even days; in compartment 2 a card waits for exactly three days.
        chart: {
          compartments: [
            { period: 2, bundles: 1, offset: 0 },
            { period: 3, bundles: 3, offset: 1 },
          ],
        },
        recall: [0.4, 0.3],
        waiting: [],
        from: 1,
        days: 9,
        newCards: (day) => [1, 1][day] ?? 0,
      },
      visited: (k, day, since) => (k === 1 ? day % 2 === 0 : day - since === 3),
    },
  ],
];

describe("the load of a tiny box", () => {
  it.each(TINY)("is that of all sequences of answers: %s", (_name, box) => {
    const perDay = enumerated(box);
    for (const [i, counts] of perDay.entries()) {
      const sorted = [...counts].sort(([a], [b]) => a - b);
      const mean = sorted.reduce((sum, [count, chance]) => sum + count * chance, 0);
      const variance = sorted.reduce((sum, [count, chance]) => sum + (count - mean) ** 2 * chance, 0);
      // A level just below and just above each step of the cumulative distribution finds the step's place and height.
      let reached = 0;
      const steps = sorted.slice(0, -1).flatMap(([count, chance], at) => {
        reached += chance;
        return [
          { level: reached - ROUNDING, count },
          { level: reached + ROUNDING, count: sorted[at + 1]?.[0] },
        ];
      });
      const day = exactLoad({ ...box.question, quantiles: [0.5, ...steps.map(({ level }) => level)] })[i];
      expect(Math.abs((day?.reviews.mean ?? Number.NaN) - mean)).toBeLessThan(ROUNDING);
      expect(Math.abs((day?.reviews.sd ?? Number.NaN) ** 2 - variance)).toBeLessThan(ROUNDING);
      expect(day?.reviews.quantiles.slice(1)).toEqual(steps.map(({ count }) => count));
    }
    // The days do not all go without saying.
    expect(Math.max(...perDay.map((counts) => counts.size))).toBeGreaterThan(2);
  });
});

describe("the load of any box", () => {
  it("has the mean and the misses of the expected load", () => {
    fc.assert(
      fc.property(anyLoad(anyChart, 120), (question) => {
        const expected = expectedLoad(question);
        for (const [i, { day, newCards, reviews, missed }] of exactLoad({ ...question, quantiles: [] }).entries()) {
          expect(Math.abs(reviews.mean - (expected[i]?.reviews ?? Number.NaN))).toBeLessThan(
            ROUNDING * (1 + reviews.mean),
          );
          expect({ day, newCards }).toEqual({ day: question.from + i, newCards: expected[i]?.newCards });
          expect(Math.abs(missed - (expected[i]?.missed ?? Number.NaN))).toBeLessThan(ROUNDING * (1 + missed));
        }
      }),
      { numRuns: 60 },
    );
  });

  it("has the variance of its cards, one by one: the sum of q (1 - q)", () => {
    fc.assert(
      fc.property(anyLoad(anyChart, 60), (question) => {
        const variance = new Array<number>(question.days).fill(0);
        for (const { count, start } of cohortsOf(question)) {
          walkCard(question, start).asked.forEach((q, i) => {
            variance[i] = (variance[i] ?? 0) + count * q * (1 - q);
          });
        }
        for (const [i, { reviews }] of exactLoad({ ...question, quantiles: [] }).entries()) {
          expect(Math.abs(reviews.sd ** 2 - (variance[i] ?? Number.NaN))).toBeLessThan(ROUNDING * (1 + reviews.mean));
        }
      }),
      { numRuns: 40 },
    );
  });

  it("has quantiles that rise with the level and keep as near the mean as any distribution must", () => {
    fc.assert(
      fc.property(anyLoad(anyChart, 60), (question) => {
        for (const { reviews } of exactLoad({ ...question, quantiles: LEVELS })) {
          const [low = 0, middle = 0, high = 0] = reviews.quantiles;
          expect(low).toBeLessThanOrEqual(middle);
          expect(middle).toBeLessThanOrEqual(high);
          // One-sided Chebyshev inequality (Cantelli): for a level a, mean - sd √((1-a)/a) <= quantile <= mean + sd √(a/(1-a)).
          const far = Math.sqrt(0.95 / 0.05) * reviews.sd + ROUNDING * (1 + reviews.mean);
          expect(low).toBeGreaterThanOrEqual(reviews.mean - far);
          expect(high).toBeLessThanOrEqual(reviews.mean + far);
        }
      }),
      { numRuns: 40 },
    );
  });

  it("has the minutes that its recalled, missed and new cards take, and quantiles about them", () => {
    fc.assert(
      fc.property(anyLoadWithGaps(anyChart, 60), (question) => {
        const load = exactLoad({ ...question, quantiles: LEVELS, pace: DEFAULT_PACE });
        for (const { reviews, missed, newCards, minutes } of load) {
          const mean = minutesFor(DEFAULT_PACE, { reviews: reviews.mean, missed, newCards });
          expect(Math.abs((minutes?.mean ?? Number.NaN) - mean)).toBeLessThan(ROUNDING * (1 + mean));
          const [low = 0, middle = 0, high = 0] = minutes?.quantiles ?? [];
          expect(low <= middle && middle <= high).toBe(true);
          const far = Math.sqrt(0.95 / 0.05) * (minutes?.sd ?? 0) + ROUNDING * (1 + mean);
          expect(low).toBeGreaterThanOrEqual(mean - far);
          expect(high).toBeLessThanOrEqual(mean + far);
        }
      }),
      { numRuns: 30 },
    );
  });

  // By hand: two cards due on day 1 in the only compartment, recalled with 1/2 each: 16 s with 1/4, 28 s with 1/2,
  // 40 s with 1/4; and one new card of 45 s.
  it("has quantiles of minutes worked by hand", () => {
    const load = exactLoad({
      chart: plainChart(1),
      recall: [0.5],
      waiting: [{ compartment: 1, due: 1, count: 2 }],
      from: 1,
      days: 1,
      newCards: () => 1,
      quantiles: [0.25, 0.26, 0.75, 0.76],
      pace: DEFAULT_PACE,
    });
    const { mean, sd, quantiles } = load[0]?.minutes ?? { mean: 0, sd: 0, quantiles: [] };
    expect(quantiles.map((minutes) => Math.round(minutes * 60))).toEqual([61, 73, 73, 85]);
    expect(mean * 60).toBeCloseTo(73, 10);
    expect(sd * 60).toBeCloseTo(Math.sqrt(72), 10);
  });

  it("is certain where cards are always recalled", () => {
    const question: ExactLoadQuestion = {
      chart: plainChart(3),
      recall: [1, 1, 1],
      waiting: [{ compartment: 3, due: 1, count: 6 }],
      from: 4,
      days: 5,
      newCards: (day) => (day === 0 ? 4 : 0),
      quantiles: LEVELS,
    };
    // Overdue cards on day 4; those introduced on it in compartment 1 on day 5, in 2 on day 7, in 3 on day 10.
    const counts = [6, 4, 0, 4, 0];
    expect(exactLoad(question).map(({ reviews }) => reviews)).toEqual(
      counts.map((count) => ({ mean: count, sd: 0, quantiles: [count, count, count] })),
    );
  });
});
