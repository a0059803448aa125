import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Calendar, freshCalendar } from "../calendar/calendar.ts";
import { addDays } from "../calendar/local-date.ts";
import { plainChart } from "../chart/make-chart.ts";
import { type DeadlineQuestion, NEARLY, planDeadline } from "./deadline.ts";
import { DEFAULT_PACE } from "./minutes.ts";
import { planLoad } from "./plan-load.ts";
import { retentionOn } from "./retention-on.ts";

const START = "2026-03-14";
const calendar: Calendar = { ...freshCalendar(START), restWeekdays: [7] };

const question = (part: Partial<DeadlineQuestion>): DeadlineQuestion => ({
  chart: plainChart(4),
  recall: [0.85, 0.9, 0.9, 0.9],
  waiting: [],
  calendar,
  last: null,
  from: START,
  by: addDays(START, 24),
  cards: 60,
  limit: { minutes: 6, level: 0.95, pace: DEFAULT_PACE },
  quantiles: [0.05, 0.95],
  ...part,
});

const anyQuestion = fc
  .record({
    days: fc.integer({ min: 1, max: 20 }),
    cards: fc.integer({ min: 1, max: 90 }),
    minutes: fc.integer({ min: 1, max: 9 }),
    count: fc.nat(20),
  })
  .map(({ days, cards, minutes, count }) =>
    question({
      by: addDays(START, days),
      cards,
      limit: { minutes, level: 0.95, pace: DEFAULT_PACE },
      waiting: [{ compartment: 3, due: 4, count }],
    }),
  );

/** Every pace that is no faster than the cards need, up to every last sitting, tried in full: the most cards recalled. */
function triedInFull(asked: DeadlineQuestion): number {
  const { introducedOn } = retentionOn(asked);
  const span = introducedOn.length;
  const sittings = [...introducedOn].flatMap((chance, i) => (chance > 0 ? [i] : []));
  let best = 0;
  for (let count = 1; count <= sittings.length; count++) {
    for (let each = 1; each <= Math.ceil(asked.cards / count); each++) {
      const list = Array.from({ length: count }, (_, i) => Math.max(0, Math.min(each, asked.cards - i * each)));
      const load = planLoad({
        ...asked,
        dates: span,
        schedule: { kind: "list", each: list },
        stock: null,
        pace: asked.limit.pace,
        quantiles: [asked.limit.level],
      });
      if (load.some(({ minutes }) => (minutes.quantiles[0] ?? 0) > asked.limit.minutes + 1e-9)) break;
      const known = list.reduce((sum, fresh, i) => sum + fresh * (introducedOn[sittings[i] ?? 0] ?? 0), 0);
      best = Math.max(best, known);
    }
  }
  return best;
}

describe("the plan for a date", () => {
  it("has as many cards recalled as any steady pace, no faster than needed, to any last date within the limit", () => {
    fc.assert(
      fc.property(anyQuestion, (asked) => {
        const { best, within } = planDeadline(asked);
        if (within)
          expect(Math.abs(best.recalled.mean - triedInFull(asked))).toBeLessThan(1e-9 * (1 + best.recalled.mean));
        else expect(best.introduced).toBe(0);
      }),
      { numRuns: 40 },
    );
  });

  it("introduces no more cards than are wanted, the last on its last date", () => {
    const { best, curve, gentle } = planDeadline(question({}));
    for (const choice of [best, gentle, ...curve]) {
      expect(choice.introduced).toBeLessThanOrEqual(60);
      expect(choice.recalled.mean).toBeLessThanOrEqual(choice.introduced);
      expect((choice.last ?? "9999") < addDays(START, 24)).toBe(true);
      const [low = 0, high = 0] = choice.recalled.quantiles;
      expect(low).toBeLessThanOrEqual(choice.recalled.mean);
      expect(high).toBeGreaterThanOrEqual(choice.recalled.mean - 1);
    }
    expect(gentle.each).toBeLessThanOrEqual(best.each);
    expect(gentle.recalled.mean).toBeGreaterThanOrEqual(NEARLY * best.recalled.mean);
    expect(curve.map(({ last }) => last)).toEqual(curve.map(({ last }) => last).sort());
  });

  it("says that there is no room where the cards that wait are too many already", () => {
    const plan = planDeadline(question({ waiting: [{ compartment: 1, due: 1, count: 900 }] }));
    expect(plan).toMatchObject({ within: false, best: { each: 0, introduced: 0, last: null } });
  });

  it.each([START, addDays(START, -3)])("has no sitting before %s", (by) => {
    expect(planDeadline(question({ by }))).toMatchObject({ sittings: 0, best: { introduced: 0 }, curve: [] });
  });
});
