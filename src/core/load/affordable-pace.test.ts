import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shortChart } from "../../../tests/support/any-chart.ts";
import { anyLoadWithGaps } from "../../../tests/support/any-load.ts";
import { plainChart } from "../chart/make-chart.ts";
import { affordablePace, type Limit } from "./affordable-pace.ts";
import { exactLoad } from "./exact-load.ts";
import type { LoadQuestion } from "./expected.ts";
import { DEFAULT_PACE } from "./minutes.ts";

/** The largest quantile of any day's minutes. */
const worst = (question: LoadQuestion, { level, pace }: Limit): number =>
  Math.max(0, ...exactLoad({ ...question, pace, quantiles: [level] }).map(({ minutes }) => minutes?.quantiles[0] ?? 0));

const anyLimit = fc.record<Limit>({
  minutes: fc.integer({ min: 1, max: 40 }),
  level: fc.constantFrom(0.5, 0.9, 0.95, 0.99),
  pace: fc.constantFrom(
    DEFAULT_PACE,
    { recalled: 5, missed: 12.5, fresh: 30 },
    { recalled: 7.3, missed: 19.9, fresh: 0 },
  ),
});

describe("the pace that can be afforded", () => {
  it("stays within the limit, and one card more does not", () => {
    fc.assert(
      fc.property(anyLoadWithGaps(shortChart, 40), anyLimit, (question, limit) => {
        const paced = (each: number): LoadQuestion => ({ ...question, newCards: () => each });
        const { each, within, minutes, worst: day } = affordablePace(paced, limit);
        const at = worst(paced(each), limit);
        expect(minutes).toBe(at);
        if (day) expect(day.minutes?.quantiles[0]).toBe(at);
        // A division by 60 may cost the last digit.
        expect(at <= limit.minutes + 1e-9).toBe(within);
        if (!within) expect(each).toBe(0);
        const never = !question.sits || Array.from({ length: 40 }, (_, i) => question.sits?.(i)).some(Boolean);
        if (within && never && each < 10_000) expect(worst(paced(each + 1), limit)).toBeGreaterThan(limit.minutes);
      }),
      { numRuns: 60 },
    );
  });

  // By hand: always recalled, one compartment visited daily: a day has n reviews of 8 s and n new cards of 45 s from
  // the second day on, 53 n seconds; 30 minutes hold 33, as 53 x 33 = 1749 and 53 x 34 = 1802.
  it("is 33 cards a day where each costs 45 s and 8 s the next day, in 30 minutes", () => {
    const question = (each: number): LoadQuestion => ({
      chart: plainChart(1),
      recall: [1],
      waiting: [],
      from: 1,
      days: 30,
      newCards: () => each,
    });
    const found = affordablePace(question, { minutes: 30, level: 0.95, pace: DEFAULT_PACE });
    expect(found).toMatchObject({ each: 33, within: true, minutes: 1749 / 60 });
    expect(found.worst?.day).toBe(2);
  });

  it("is none, and says so, where the cards that wait are too many already", () => {
    const question = (each: number): LoadQuestion => ({
      chart: plainChart(3),
      recall: [0.9, 0.9, 0.9],
      waiting: [{ compartment: 2, due: 1, count: 500 }],
      from: 1,
      days: 10,
      newCards: () => each,
    });
    expect(affordablePace(question, { minutes: 30, level: 0.95, pace: DEFAULT_PACE })).toMatchObject({
      each: 0,
      within: false,
    });
  });
});
