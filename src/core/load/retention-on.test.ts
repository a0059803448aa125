import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyChart } from "../../../tests/support/any-chart.ts";
import { anyRecall } from "../../../tests/support/any-load.ts";
import { type Calendar, freshCalendar } from "../calendar/calendar.ts";
import { addDays } from "../calendar/local-date.ts";
import { arrival, compartmentCount } from "../chart/chart.ts";
import { plainChart } from "../chart/make-chart.ts";
import { meanWaits } from "../chart/mean-waits.ts";
import { recallAfter, waitBeyond } from "../recall/forgetting.ts";
import { type RetentionQuestion, retentionOn } from "./retention-on.ts";

const START = "2026-03-14";
/** Sums of some hundred products. */
const ROUNDING = 1e-10;

const calendar: Calendar = { ...freshCalendar(START) };

/** The chance from the distribution over compartment, due day and day last asked, kept in full from day to day. */
function spelledOut(question: RetentionQuestion, introduced: number, end: number): number {
  const { chart, recall } = question;
  const top = compartmentCount(chart);
  const beyond = waitBeyond(meanWaits(chart));
  let kept = 0;
  let places = new Map([[`1 ${arrival(chart, 1, introduced + 1).due - 1} ${introduced}`, 1]]);
  for (let date = introduced + 1; date < end; date++) {
    const next = new Map<string, number>();
    const add = (k: number, due: number, asked: number, chance: number): void => {
      const key = `${k} ${due} ${asked}`;
      next.set(key, (next.get(key) ?? 0) + chance);
    };
    for (const [place, chance] of places) {
      const [k = 0, due = 0, asked = 0] = place.split(" ").map(Number);
      if (due !== date) {
        add(k, due, asked, chance);
        continue;
      }
      const p = recall[k - 1] ?? 0;
      // Box days count from 1 on the first date, dates from 0.
      add(1, arrival(chart, 1, date + 1).due - 1, date, chance * (1 - p));
      if (k < top) add(k + 1, arrival(chart, k + 1, date + 1).due - 1, date, chance * p);
      else kept += chance * p * recallAfter(p, beyond, end - date);
    }
    places = next;
  }
  let known = kept;
  for (const [place, chance] of places) {
    const [k = 0, due = 0, asked = 0] = place.split(" ").map(Number);
    known += chance * recallAfter(recall[k - 1] ?? 0, due - asked, end - asked);
  }
  return known;
}

const anyQuestion = anyChart.chain((chart) =>
  fc.record({ chart: fc.constant(chart), recall: anyRecall(chart, 0.05), end: fc.integer({ min: 1, max: 60 }) }),
);

describe("the chance that a card is recalled on a date", () => {
  it("is that of the distribution over compartment, due day and day last asked", () => {
    fc.assert(
      fc.property(anyQuestion, fc.nat(), ({ chart, recall, end }, pick) => {
        const question = { chart, recall, calendar, last: null, from: START, by: addDays(START, end) };
        const introduced = pick % end;
        const { introducedOn } = retentionOn(question);
        expect(introducedOn).toHaveLength(end);
        expect(Math.abs((introducedOn[introduced] ?? 0) - spelledOut(question, introduced, end))).toBeLessThan(
          ROUNDING,
        );
      }),
      { numRuns: 60 },
    );
  });

  // By hand, one compartment visited daily at recall p: introduced on the day before, it waits one day to the date: p.
  // Two days before: asked in between; recalled it is kept (as if in a compartment of 2 days), missed it waits one day.
  it("is worked by hand for one compartment", () => {
    const by = addDays(START, 2);
    const { introducedOn } = retentionOn({
      chart: plainChart(1),
      recall: [0.8],
      calendar,
      last: null,
      from: START,
      by,
    });
    expect(introducedOn[1]).toBeCloseTo(0.8, 12);
    expect(introducedOn[0]).toBeCloseTo(0.8 * recallAfter(0.8, 2, 1) + 0.2 * 0.8, 12);
  });

  it("is certain where nothing is ever forgotten", () => {
    const by = addDays(START, 40);
    const question = { chart: plainChart(4), recall: [1, 1, 1, 1], calendar, last: null, from: START, by };
    const { introducedOn, ofWaiting } = retentionOn(question);
    expect([...introducedOn]).toEqual(Array(40).fill(1));
    expect(ofWaiting({ compartment: 3, due: 7 })).toBe(1);
  });

  it("has no chance for a card that would be introduced on a rest day", () => {
    const resting = { ...calendar, restWeekdays: [7] };
    const by = addDays(START, 9);
    // 2026-03-14 is a Saturday.
    const { introducedOn } = retentionOn({
      chart: plainChart(3),
      recall: [0.9, 0.9, 0.9],
      calendar: resting,
      last: null,
      from: START,
      by,
    });
    expect([...introducedOn].map((chance) => chance > 0)).toEqual([
      true,
      false,
      true,
      true,
      true,
      true,
      true,
      true,
      false,
    ]);
  });

  // A rest day stretches the wait to its visit by a date, and so does the forgetting until it.
  it("counts rest days as days of forgetting", () => {
    const resting = { ...calendar, restWeekdays: [7] };
    const by = addDays(START, 2);
    const question = { chart: plainChart(2), recall: [0.9, 0.9], calendar: resting, last: null, from: START, by };
    expect(retentionOn(question).introducedOn[0]).toBeCloseTo(recallAfter(0.9, 2, 2), 12);
  });

  it("of a waiting card that is due on the date is the recall of its compartment", () => {
    const by = addDays(START, 5);
    const question = { chart: plainChart(4), recall: [0.9, 0.8, 0.7, 0.6], calendar, last: null, from: START, by };
    // Due on box day 6, the date itself.
    expect(retentionOn(question).ofWaiting({ compartment: 4, due: 6 })).toBeCloseTo(0.6, 12);
  });
});
