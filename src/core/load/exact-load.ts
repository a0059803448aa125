// What a box asks on the days ahead: not only the mean but the whole distribution of each day's reviews.
// Cards introduced together are exchangeable, and on one day a card is asked once or not at all, so the reviews of a
// day are a sum of independent binomial counts over cohorts.
import { type BoxDay, cycleLength } from "../chart/chart.ts";
import { type WalkedCohort, walkCohorts } from "./cohorts.ts";
import { type BinomialTerm, moments, quantile, sumOfBinomials } from "./distribution.ts";
import { expectedLoad, type LoadQuestion } from "./expected.ts";

/** A load question whose answer names quantiles: levels between 0 and 1, or none to have mean and sd alone. */
export interface ExactLoadQuestion extends LoadQuestion {
  readonly quantiles: readonly number[];
}

/** The work of one box day. */
export interface ExactDay {
  readonly day: BoxDay;
  readonly newCards: number;
  /** First attempts of cards already in the box. */
  readonly reviews: {
    readonly mean: number;
    readonly sd: number;
    /** Smallest counts whose cumulative probability reaches each level, in the order of the question. */
    readonly quantiles: readonly number[];
  };
  /** Of the reviews, expected misses. */
  readonly missed: number;
}

/**
 * Distribution of the reviews of each of `days` box days, for known chances of recall. Exact but for rounding and for
 * `LEFT_OUT` of each distribution; a number of cards that is not whole or a level not between 0 and 1 is a `RangeError`.
 */
export function exactLoad(question: ExactLoadQuestion): readonly ExactDay[] {
  const cohorts = walkCohorts(question, cycleLength(question.chart));
  return expectedLoad(question).map(({ day, newCards, missed }) => {
    const terms = termsOn(cohorts, day);
    const pmf = question.quantiles.length > 0 ? sumOfBinomials(terms) : null;
    const quantiles = pmf ? question.quantiles.map((level) => quantile(pmf, level)) : [];
    return { day, newCards, reviews: { ...moments(terms), quantiles }, missed };
  });
}

/** The cohorts that may be asked on a day, each with its chance. */
function termsOn(cohorts: readonly WalkedCohort[], day: BoxDay): readonly BinomialTerm[] {
  const terms: BinomialTerm[] = [];
  for (const { count, start, asked } of cohorts) {
    if (start.due > day) break;
    const chance = asked[day - start.due] ?? 0;
    if (chance > 0) terms.push({ count, chance });
  }
  return terms;
}
