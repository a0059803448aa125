// What a load costs by other ways than the exact one: sampling whole boxes, and adding every card up by itself.
import { arrival, type Chart, compartmentCount } from "../src/core/chart/chart.ts";
import { plainChart } from "../src/core/chart/make-chart.ts";
import { samplePiles } from "../tests/support/sampled-piles.ts";

/** A box that is asked about: its cards come evenly over its days, and are recalled with `RECALL`. */
export interface Case {
  readonly cards: number;
  readonly days: number;
  readonly compartments: number;
}

/** Chance of recall in every compartment of a case. */
export const RECALL = 0.9;

/** Cards of a case introduced on day 0, 1, 2 …: as evenly as whole cards allow. */
export const introduced = ({ cards, days }: Case, i: number): number =>
  Math.floor(((i + 1) * cards) / days) - Math.floor((i * cards) / days);

/** Milliseconds of the quickest of some runs: what the work costs when nothing else has the machine. */
export function quickest(work: () => unknown, runs: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < runs; i++) {
    const begun = performance.now();
    work();
    best = Math.min(best, performance.now() - begun);
  }
  return best;
}

/** Normal density at the 95 % quantile, in standard deviations. */
const DENSITY = Math.exp(-(1.644854 ** 2) / 2) / Math.sqrt(2 * Math.PI);

/** Boxes that make the 95 % quantile of a day with this spread as sure as a quarter of a card. */
export const boxesNeeded = (sd: number): number => Math.ceil((0.05 * 0.95 * (sd / DENSITY) ** 2) / 0.25 ** 2);

/** Milliseconds to sample one box, from as many as are timed. */
export function timePerBox(one: Case, boxes: number): number {
  const { days, compartments } = one;
  const newPerDay = Math.round(one.cards / days);
  return quickest(() => samplePiles({ boxes, days, newPerDay, recall: RECALL, compartments, seed: 7 }), 3) / boxes;
}

/** How a card-by-card sum of a whole case went. */
export interface CardByCard {
  /** Milliseconds for the walks of all cards, and for the sums of all days. */
  readonly walking: number;
  readonly adding: number;
  /** 95 % quantile of the days whose sum was timed. */
  readonly q95: ReadonlyMap<number, number>;
}

/** Times the walks of every `cardStep`-th card and the sums of every `dayStep`-th day, and scales both to all. */
export function cardByCard(one: Case, dayStep: number, cardStep = 1): CardByCard {
  const chart = plainChart(one.compartments);
  const starts = Array.from({ length: one.days }, (_, i) => Array<number>(introduced(one, i)).fill(i + 1)).flat();
  const timed = starts.filter((_, i) => i % cardStep === 0);
  let begun = performance.now();
  const walks = timed.map((day) => walkOne(chart, day, one.days));
  const walking = ((performance.now() - begun) * starts.length) / timed.length;
  const q95 = new Map<number, number>();
  begun = performance.now();
  for (let day = dayStep; day <= one.days; day += dayStep) {
    // Each timed card stands for the ones that were not walked; the sum takes them one by one all the same.
    const chances = starts.map((_, i) => walks[Math.floor(i / cardStep)]?.[day] ?? 0).filter((chance) => chance > 0);
    q95.set(day, reached(addCards(chances), 0.95));
  }
  return { walking, adding: ((performance.now() - begun) * one.days) / Math.max(1, q95.size), q95 };
}

/** Chances of being asked on each day for one card, by the distribution over compartment and due day. */
function walkOne(chart: Chart, introducedOn: number, days: number): Float64Array {
  const top = compartmentCount(chart);
  const asked = new Float64Array(days + 1);
  const due = Array.from({ length: top + 1 }, () => new Float64Array(days + 1));
  const put = (k: number, day: number, chance: number): void => {
    const at = due[k];
    if (at && day <= days) at[day] = (at[day] ?? 0) + chance;
  };
  put(1, arrival(chart, 1, introducedOn).due, 1);
  for (let day = introducedOn + 1; day <= days; day++) {
    for (let k = top; k >= 1; k--) {
      const chance = due[k]?.[day] ?? 0;
      if (chance === 0) continue;
      asked[day] = (asked[day] ?? 0) + chance;
      put(1, arrival(chart, 1, day).due, chance * (1 - RECALL));
      if (k < top) put(k + 1, arrival(chart, k + 1, day).due, chance * RECALL);
    }
  }
  return asked;
}

/** Chances of each count on one day, one card after the other, none told apart as exchangeable. */
function addCards(chances: readonly number[]): Float64Array {
  const pmf = new Float64Array(chances.length + 1);
  pmf[0] = 1;
  chances.forEach((q, cards) => {
    for (let i = cards + 1; i > 0; i--) pmf[i] = (pmf[i] ?? 0) * (1 - q) + (pmf[i - 1] ?? 0) * q;
    pmf[0] = (pmf[0] ?? 0) * (1 - q);
  });
  return pmf;
}

function reached(pmf: Float64Array, level: number): number {
  let sum = 0;
  return pmf.findIndex((chance) => {
    sum += chance;
    return sum >= level;
  });
}
