// The number recalled on a date against boxes that are played with chance, card by card, where recall itself is drawn
// from what is known of it. Forgetting is written out again from its published form.
import { describe, expect, it } from "vitest";
import { freshCalendar } from "../../src/core/calendar/calendar.ts";
import { addDays, daysBetween } from "../../src/core/calendar/local-date.ts";
import { plainChart } from "../../src/core/chart/make-chart.ts";
import { type DeadlineChoice, planDeadline } from "../../src/core/load/deadline.ts";
import { xorshift128 } from "../support/sampled-piles.ts";

const START = "2026-03-14";
const DAYS = 40;
const BOXES = 20_000;
const LEVELS = [0.05, 0.95] as const;

/** Answers so far in compartments 1, 2 and 3, whose bundles are visited on every day, on odd days and on 2, 6, 10 … */
const POSTERIOR = [
  { recalled: 17, missed: 3 },
  { recalled: 27, missed: 3 },
  { recalled: 9, missed: 1 },
] as const;

/** Wickelgren's power law with its rate β a day (Wixted & Carpenter, Psychological Science 18, 2007; fit of `forgetting.ts`). */
const forgotten = (p: number, wait: number, days: number): number =>
  p ** (Math.log(1 + 0.132075 * days) / Math.log(1 + 0.132075 * wait));

/** The day after `day` on which compartment k of the plain chart of three is visited. */
function nextVisit(k: number, day: number): number {
  for (let next = day + 1; ; next++) if (k === 1 || (k === 2 ? next % 2 === 1 : next % 4 === 2)) return next;
}

/**
 * As long as a kept card is taken to wait: in compartment 2 a card waits 1 or 2 days, in 3 it waits 1 or 3; 2 grown once
 * more as from 1.5 to 2.
 */
const KEPT_WAIT = 2 * (2 / 1.5);

/** Plays one card that is introduced on `day`; true if it is recalled on day `end`. */
function playCard(recall: readonly number[], day: number, end: number, chance: () => number): boolean {
  let k = 1;
  let asked = day;
  for (;;) {
    const p = recall[k - 1] as number;
    const next = nextVisit(k, asked);
    if (next >= end) return chance() < forgotten(p, next - asked, end - asked);
    asked = next;
    if (chance() >= p) k = 1;
    else if (k === 3) return chance() < forgotten(p, KEPT_WAIT, end - asked);
    else k++;
  }
}

/** Beta with whole numbers a, b: the a-th smallest of a + b − 1 uniform numbers (order statistics). */
function drawBeta({ recalled, missed }: { recalled: number; missed: number }, chance: () => number): number {
  const uniform = Array.from({ length: recalled + missed - 1 }, chance).sort((x, y) => x - y);
  return uniform[recalled - 1] as number;
}

function playBoxes({ each, last, introduced }: DeadlineChoice, certain: readonly number[] | null): number[] {
  const next = xorshift128(20_260_314);
  const chance = (): number => next() / 2 ** 32;
  const sittings = daysBetween(START, last ?? START) + 1;
  return Array.from({ length: BOXES }, () => {
    const recall = certain ?? POSTERIOR.map((beta) => drawBeta(beta, chance));
    let known = 0;
    for (let i = 0; i < sittings; i++) {
      const fresh = Math.max(0, Math.min(each, introduced - i * each));
      for (let card = 0; card < fresh; card++) if (playCard(recall, i + 1, DAYS + 1, chance)) known++;
    }
    return known;
  });
}

const RECALL = POSTERIOR.map(({ recalled, missed }) => recalled / (recalled + missed));

const planned = (uncertain: boolean): DeadlineChoice =>
  planDeadline({
    chart: plainChart(3),
    recall: RECALL,
    posterior: uncertain ? POSTERIOR : null,
    waiting: [],
    calendar: freshCalendar(START),
    last: null,
    from: START,
    by: addDays(START, DAYS),
    cards: 80,
    limit: { minutes: 10, level: 0.95, pace: { recalled: 8, missed: 20, fresh: 45 } },
    quantiles: LEVELS,
  }).best;

const meanOf = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;
const shareUpTo = (values: readonly number[], most: number): number =>
  values.filter((one) => one <= most).length / values.length;

describe("twenty thousand boxes played up to the date", () => {
  it("have the exact number recalled where recall is certain", () => {
    const best = planned(false);
    const { mean, sd, quantiles } = best.recalled;
    const played = playBoxes(best, RECALL);
    // Five standard errors: a fair sample departs by more once in 1.7 million times.
    expect(Math.abs(meanOf(played) - mean)).toBeLessThan((5 * sd) / Math.sqrt(BOXES));
    const error = 5 * Math.sqrt((0.05 * 0.95) / BOXES);
    for (const [i, level] of LEVELS.entries()) {
      expect(shareUpTo(played, quantiles[i] ?? -1)).toBeGreaterThanOrEqual(level - error);
      expect(shareUpTo(played, (quantiles[i] ?? -1) - 1)).toBeLessThan(level + error);
    }
  });

  it("have the number recalled, and its wider band, where recall is drawn from what is known of it", () => {
    const best = planned(true);
    const { mean, sd, quantiles } = best.recalled;
    const played = playBoxes(best, null);
    const own = meanOf(played);
    const spread = Math.sqrt(meanOf(played.map((one) => (one - own) ** 2)));
    // The 64 sets leave gaps: mean and spread are right to a few hundredths of the spread, quantiles to a card.
    expect(Math.abs(own - mean)).toBeLessThan(0.05 * spread);
    expect(Math.abs(sd / spread - 1)).toBeLessThan(0.05);
    const sorted = played.toSorted((x, y) => x - y);
    for (const [i, level] of LEVELS.entries()) {
      expect(Math.abs((quantiles[i] ?? -1) - (sorted[Math.ceil(level * BOXES) - 1] ?? 0))).toBeLessThanOrEqual(1);
    }
    expect(sd).toBeGreaterThan(1.1 * planned(false).recalled.sd);
  });
});
