// The load when the chances of recall are themselves uncertain: the exact load of many sets of chances, mixed.
// Each set weighs the same; together they fill the Beta distributions evenly, so that nothing is left to luck.
import { type Beta, betaQuantile } from "../recall/beta.ts";
import { walkCohorts } from "./cohorts.ts";
import { moments, REVIEWS, sumOf } from "./distribution.ts";
import {
  drawsOn,
  type ExactDay,
  type ExactLoadQuestion,
  type MinutesQuestion,
  type Moments,
  onTrueScale,
  type Spread,
} from "./exact-load.ts";
import { clicksFor } from "./minutes.ts";
import { addTo, createTally, mixedSpread, type Tally } from "./tally.ts";

/** A load question without the chances of recall, of which only Beta distributions are known. */
export type MixedLoadQuestion = Omit<ExactLoadQuestion, "recall">;

/** A mixture under way. */
export interface LoadMixture {
  /** Adds the load of the next set of chances; cost: that of `exactLoad`. */
  readonly add: () => void;
  /** Sets added so far. */
  readonly sets: () => number;
  /** The load of the sets so far; at least one must have been added. */
  readonly load: () => readonly ExactDay[];
}

/** Sets after which a mixture is good: its quantiles are then some two hundredths of a spread from those of many more. */
export const ENOUGH_SETS = 128;

/**
 * Begins to mix the load over what is known of recall in compartments 1…K. Mean and sd are those of the mixture,
 * quantiles those of the mixed distributions: wider than for known recall, and not about the same mean.
 */
export function mixLoad(question: MixedLoadQuestion, posterior: readonly Beta[]): LoadMixture {
  const { from, days, newCards, sits, pace } = question;
  const clicks = pace ? clicksFor(pace) : null;
  const tallies = Array.from({ length: days }, () => ({ reviews: createTally(), minutes: createTally(), missed: 0 }));
  const fresh = (i: number): number => (!sits || sits(i) ? newCards(i) : 0);
  let sets = 0;
  const add = (): void => {
    const cohorts = walkCohorts({ ...question, recall: recallSet(posterior, sets++) });
    for (const [i, tally] of tallies.entries()) {
      const draws = drawsOn(cohorts, from + i);
      addTo(tally.reviews, moments(draws, REVIEWS), sumOf(draws, REVIEWS));
      if (pace && clicks) addTo(tally.minutes, moments(draws, pace), sumOf(draws, clicks.steps));
      for (const { count, missed } of draws) tally.missed += count * missed;
    }
  };
  const load = (): readonly ExactDay[] =>
    tallies.map(({ reviews, minutes, missed }, i) => ({
      day: from + i,
      newCards: fresh(i),
      reviews: mixedSpread(reviews, sets, question.quantiles),
      missed: missed / sets,
      minutes:
        pace && clicks ? minutesIn(minutes, sets, { pace, clicks, fresh: fresh(i), levels: question.quantiles }) : null,
    }));
  return { add, sets: () => sets, load };
}

/** The minutes of a tally kept in seconds, whose distribution is in steps of the grid. */
function minutesIn(tally: Tally, sets: number, { pace, fresh, levels }: MinutesQuestion): Spread {
  const { mean, sd, quantiles } = mixedSpread(tally, sets, levels);
  const seconds = onTrueScale(quantiles, momentsOf(tally, sets), { mean, sd });
  const certain = fresh * pace.fresh;
  return { mean: (mean + certain) / 60, sd: sd / 60, quantiles: seconds.map((one) => (one + certain) / 60) };
}

/** Mean and sd of the chances themselves. */
function momentsOf({ first, chances }: Tally, sets: number): Moments {
  const about = (power: (sum: number) => number): number =>
    chances.reduce((all, chance, i) => all + chance * power(first + i), 0) / sets;
  const mean = about((sum) => sum);
  return { mean, sd: Math.sqrt(about((sum) => (sum - mean) ** 2)) };
}

/**
 * The chances of recall of set number `index`. The sets are points of an additive recurrence with the powers of the
 * generalised golden ratio, which fill a cube of any dimension evenly (Roberts 2018, cited from memory), each
 * coordinate bent to its Beta distribution.
 */
export function recallSet(posterior: readonly Beta[], index: number): readonly number[] {
  const ratio = goldenRatio(posterior.length);
  return posterior.map((beta, k) => betaQuantile(beta, (0.5 + (index + 1) * ratio ** -(k + 1)) % 1));
}

/** The positive root of x^(d + 1) = x + 1. */
function goldenRatio(dimensions: number): number {
  let x = 2;
  for (let i = 0; i < 60; i++) x = (1 + x) ** (1 / (dimensions + 1));
  return x;
}
