// Load questions for properties: any chart, chances of recall, cards that wait already, and cards to come.
import fc from "fast-check";
import { type Chart, compartmentCount } from "../../src/core/chart/chart.ts";
import type { LoadQuestion, Waiting } from "../../src/core/load/expected.ts";

/** A chance of recall for each compartment of a chart, from `least` to 1. */
export const anyRecall = (chart: Chart, least: number): fc.Arbitrary<number[]> => {
  const length = compartmentCount(chart);
  return fc.array(fc.double({ min: least, max: 1, noNaN: true }), { minLength: length, maxLength: length });
};

/** A box with up to eight piles of waiting cards, some overdue, to which up to twelve cards a day are added. */
export const anyLoad = (charts: fc.Arbitrary<Chart>, days: number): fc.Arbitrary<LoadQuestion> =>
  charts.chain((chart) =>
    fc.record({
      chart: fc.constant(chart),
      recall: anyRecall(chart, 0),
      waiting: fc.array(
        fc.record<Waiting>({
          compartment: fc.integer({ min: 1, max: compartmentCount(chart) }),
          due: fc.integer({ min: 1, max: 260 }),
          count: fc.integer({ min: 0, max: 40 }),
        }),
        { maxLength: 8 },
      ),
      from: fc.integer({ min: 1, max: 200 }),
      days: fc.constant(days),
      newCards: fc
        .array(fc.nat(12), { minLength: 1, maxLength: 5 })
        .map((each) => (day: number) => each[day % each.length] ?? 0),
    }),
  );

/** The same, with days on which nobody sits. */
export const anyLoadWithGaps = (charts: fc.Arbitrary<Chart>, days: number): fc.Arbitrary<LoadQuestion> =>
  fc
    .record({ question: anyLoad(charts, days), kept: fc.array(fc.boolean(), { minLength: 1, maxLength: 9 }) })
    .map(({ question, kept }) => ({ ...question, sits: (i: number) => kept[i % kept.length] ?? true }));
