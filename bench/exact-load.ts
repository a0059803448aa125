// What the exact load costs: 10,000 cards over 365 days, beside a simulation and a card-by-card sum, from one run.
// Run: npx tsx bench/exact-load.ts   (about half a minute)
//
// A simulation never reaches the exact load's accuracy (its quantiles are right to the card, its mean to about 1e-12).
// Accuracy is equated at the least that makes a printed quantile trustworthy: so many boxes that, on the day with the
// widest spread, the standard error of the 95 % quantile is a quarter of a card, so that it is right to the card about
// 19 times in 20. With a level a, density f at the quantile and N boxes that error is √(a (1 − a) / N) / f; f is close
// to the normal density, φ(1.645) / sd. A sample of boxes is timed and the time scaled to N.
import { plainChart } from "../src/core/chart/make-chart.ts";
import { steadyLoad } from "../src/core/chart/steady-load.ts";
import { walkCohorts } from "../src/core/load/cohorts.ts";
import { REVIEWS, sumOf } from "../src/core/load/distribution.ts";
import { drawsOn, exactLoad } from "../src/core/load/exact-load.ts";
import { sumOfBinomials } from "./convolved-sum.ts";
import { boxesNeeded, type Case, cardByCard, introduced, quickest, RECALL, timePerBox } from "./load-alternatives.ts";

const RUNS = 7;

const CASE: Case = { cards: 10_000, days: 365, compartments: 7 };

const questionOf = (one: Case) => ({
  chart: plainChart(one.compartments),
  recall: Array<number>(one.compartments).fill(RECALL),
  waiting: [],
  from: 1,
  days: one.days,
  newCards: (i: number) => introduced(one, i),
  quantiles: [0.05, 0.95],
});

/** Of how many days one has its card-by-card sum timed. */
const EVERY = 14;

const ms = (time: number): string => (time >= 10_000 ? `${(time / 1000).toFixed(1)} s` : `${time.toFixed(1)} ms`);

const exact = exactLoad(questionOf(CASE));
const exactTime = quickest(() => exactLoad(questionOf(CASE)), RUNS);
const widest = Math.max(...exact.map(({ reviews }) => reviews.sd));
console.log(`${CASE.cards} cards over ${CASE.days} days, ${CASE.compartments} compartments, recall ${RECALL}`);
console.log(`exact load: ${ms(exactTime)} (quickest of ${RUNS})`);

const BOXES = 400;
const needed = boxesNeeded(widest);
const perBox = timePerBox(CASE, BOXES);
const simulated = perBox * needed;
console.log(`simulation: ${perBox.toFixed(3)} ms a box (${BOXES} boxes timed); widest sd ${widest.toFixed(2)} cards`);
console.log(
  `  ${needed} boxes for a 95 % quantile right to the card: ${ms(simulated)}, ${(simulated / exactTime).toFixed(0)} times the exact load`,
);

const single = cardByCard(CASE, EVERY);
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
const inverted = quickest(() => perDay.map((draws) => sumOf(draws, REVIEWS)), RUNS);
const convolved = quickest(() => counts.map(sumOfBinomials), RUNS);
console.log(
  `the ${CASE.days} distributions alone: ${ms(inverted)}; by convolution ${ms(convolved)}, ${(convolved / inverted).toFixed(1)} times`,
);

/** Of a case in the table: how many boxes are sampled, and which of its days and cards are timed card by card. */
interface Row {
  readonly change: Partial<Case>;
  readonly boxes: number;
  readonly dayStep: number;
  readonly cardStep: number;
}

const row = (change: Partial<Case>, boxes = 200, dayStep = 73, cardStep = 10): Row => ({
  change,
  boxes,
  dayStep,
  cardStep,
});

const GROWTH: readonly Row[] = [
  row({ cards: 1_000 }, 1_000, 14, 1),
  row({}),
  row({ cards: 100_000 }, 20, 180, 100),
  row({ days: 91, cards: 2_493 }, 1_000, 13),
  row({ days: 730, cards: 20_000 }, 100, 146),
  row({ days: 1_460, cards: 40_000 }, 50, 292),
  row({ compartments: 3 }),
  row({ compartments: 5 }),
  row({ compartments: 10 }),
  row({ compartments: 12 }),
];

console.log("\nalternatives scaled from a part; in brackets: against the exact load");
console.log("  cards   days   K   exact load   long run            sampling        card by card");
for (const { change, boxes, dayStep, cardStep } of GROWTH) {
  const one = { ...CASE, ...change };
  const question = questionOf(one);
  const load = quickest(() => exactLoad(question), 3);
  const settled = quickest(() => steadyLoad(question.chart, question.recall), 3);
  const spread = Math.max(...exactLoad({ ...question, quantiles: [] }).map(({ reviews }) => reviews.sd));
  const sampling = timePerBox(one, boxes) * boxesNeeded(spread);
  const { walking, adding } = cardByCard(one, dayStep, cardStep);
  const against = (time: number): string => `${ms(time)} (${(time / load).toFixed(0)})`.padStart(20);
  const cells = [String(one.cards).padStart(7), String(one.days).padStart(7), String(one.compartments).padStart(4)];
  const own = `${ms(load).padStart(13)}${ms(settled).padStart(11)}`;
  console.log(`${cells.join("")}${own}${against(sampling)}${against(walking + adding)}`);
}
