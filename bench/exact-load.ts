// What the exact load costs: 10,000 cards over 365 days, beside a simulation and a card-by-card sum, from one run.
// Run: npx tsx bench/exact-load.ts   (about half a minute)
//
// A simulation never reaches the exact load's accuracy (its quantiles are right to the card, its mean to about 1e-12).
// Accuracy is equated at the least that makes a printed quantile trustworthy: so many boxes that, on the day with the
// widest spread, the standard error of the 95 % quantile is a quarter of a card, so that it is right to the card about
// 19 times in 20. With a level a, density f at the quantile and N boxes that error is √(a (1 − a) / N) / f; f is close
// to the normal density, φ(1.645) / sd. A sample of boxes is timed and the time scaled to N.
import { arrival, type Chart, compartmentCount } from "../src/core/chart/chart.ts";
import { plainChart } from "../src/core/chart/make-chart.ts";
import { steadyLoad } from "../src/core/chart/steady-load.ts";
import { walkCohorts } from "../src/core/load/cohorts.ts";
import { REVIEWS, sumOf } from "../src/core/load/distribution.ts";
import { drawsOn, exactLoad } from "../src/core/load/exact-load.ts";
import { samplePiles } from "../tests/support/sampled-piles.ts";
import { sumOfBinomials } from "./convolved-sum.ts";

const RECALL = 0.9;
const RUNS = 7;

interface Case {
  readonly cards: number;
  readonly days: number;
  readonly compartments: number;
}

const CASE: Case = { cards: 10_000, days: 365, compartments: 7 };

/** Cards of a case introduced on day 0, 1, 2 …: as evenly as whole cards allow. */
const introduced = ({ cards, days }: Case, i: number): number =>
  Math.floor(((i + 1) * cards) / days) - Math.floor((i * cards) / days);

const questionOf = (one: Case) => ({
  chart: plainChart(one.compartments),
  recall: Array<number>(one.compartments).fill(RECALL),
  waiting: [],
  from: 1,
  days: one.days,
  newCards: (i: number) => introduced(one, i),
  quantiles: [0.05, 0.95],
});

/** Milliseconds of the quickest of some runs: what the work costs when nothing else has the machine. */
function quickest(work: () => unknown, runs = RUNS): number {
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < runs; i++) {
    const begun = performance.now();
    work();
    best = Math.min(best, performance.now() - begun);
  }
  return best;
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

const EVERY = 14;

/** Card by card: each card's walk is timed, and each fourteenth day's sum, whose time is scaled to all days. */
function cardByCard(one: Case): { walking: number; adding: number; q95: Map<number, number> } {
  const chart = plainChart(one.compartments);
  let begun = performance.now();
  const walks: Float64Array[] = [];
  for (let i = 0; i < one.days; i++)
    for (let card = 0; card < introduced(one, i); card++) walks.push(walkOne(chart, i + 1, one.days));
  const walking = performance.now() - begun;
  begun = performance.now();
  const q95 = new Map<number, number>();
  for (let day = EVERY; day <= one.days; day += EVERY) {
    const chances = walks.map((asked) => asked[day] ?? 0).filter((chance) => chance > 0);
    q95.set(day, reached(addCards(chances), 0.95));
  }
  return { walking, adding: ((performance.now() - begun) * one.days) / Math.floor(one.days / EVERY), q95 };
}

const ms = (time: number): string => (time >= 10_000 ? `${(time / 1000).toFixed(1)} s` : `${time.toFixed(1)} ms`);

const exact = exactLoad(questionOf(CASE));
const exactTime = quickest(() => exactLoad(questionOf(CASE)));
const widest = Math.max(...exact.map(({ reviews }) => reviews.sd));
console.log(`${CASE.cards} cards over ${CASE.days} days, ${CASE.compartments} compartments, recall ${RECALL}`);
console.log(`exact load: ${ms(exactTime)} (quickest of ${RUNS})`);

const BOXES = 400;
const DENSITY = Math.exp(-(1.644854 ** 2) / 2) / Math.sqrt(2 * Math.PI);
const needed = Math.ceil((0.05 * 0.95 * (widest / DENSITY) ** 2) / 0.25 ** 2);
const sample = {
  boxes: BOXES,
  days: CASE.days,
  newPerDay: Math.round(CASE.cards / CASE.days),
  recall: RECALL,
  seed: 7,
};
const perBox = quickest(() => samplePiles(sample), 3) / BOXES;
const simulated = perBox * needed;
console.log(`simulation: ${perBox.toFixed(3)} ms a box (${BOXES} boxes timed); widest sd ${widest.toFixed(2)} cards`);
console.log(
  `  ${needed} boxes for a 95 % quantile right to the card: ${ms(simulated)}, ${(simulated / exactTime).toFixed(0)} times the exact load`,
);

const single = cardByCard(CASE);
const wrong = [...single.q95].filter(([day, count]) => exact[day - 1]?.reviews.quantiles[1] !== count);
const singleTime = single.walking + single.adding;
console.log(`card by card: walks ${ms(single.walking)}, sums ${ms(single.adding)} (every ${EVERY}th day timed)`);
console.log(
  `  together ${ms(singleTime)}, ${(singleTime / exactTime).toFixed(0)} times the exact load; ${single.q95.size - wrong.length} of ${single.q95.size} quantiles the same`,
);

const cohorts = walkCohorts(questionOf(CASE));
const perDay = Array.from({ length: CASE.days }, (_, i) => drawsOn(cohorts, i + 1));
const counts = perDay.map((draws) =>
  draws.map(({ count, recalled, missed }) => ({ count, chance: recalled + missed })),
);
const inverted = quickest(() => perDay.map((draws) => sumOf(draws, REVIEWS)));
const convolved = quickest(() => counts.map(sumOfBinomials));
console.log(
  `the ${CASE.days} distributions alone: ${ms(inverted)}; by convolution ${ms(convolved)}, ${(convolved / inverted).toFixed(1)} times`,
);

console.log("\n  cards   days   K   exact load   long run");
const GROWTH: readonly Partial<Case>[] = [
  { cards: 1_000 },
  { cards: 10_000 },
  { cards: 100_000 },
  { days: 91, cards: 2_493 },
  { days: 730, cards: 20_000 },
  { days: 1_460, cards: 40_000 },
  { compartments: 3 },
  { compartments: 5 },
  { compartments: 10 },
  { compartments: 12 },
];
for (const change of GROWTH) {
  const one = { ...CASE, ...change };
  const question = questionOf(one);
  const load = quickest(() => exactLoad(question), 3);
  const settled = quickest(() => steadyLoad(question.chart, question.recall), 3);
  const cells = [String(one.cards).padStart(7), String(one.days).padStart(7), String(one.compartments).padStart(4)];
  console.log(`${cells.join("")}${ms(load).padStart(13)}${ms(settled).padStart(11)}`);
}
