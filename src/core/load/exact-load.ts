// What a box asks on the days ahead: not only the mean but the whole distribution of each day's reviews and minutes.
// Cards introduced together are exchangeable, and on one day a card is asked once or not at all, so the reviews of a
// day are a sum of independent counts over cohorts, and so are its seconds.
import type { BoxDay } from "../chart/chart.ts";
import { type WalkedCohort, walkCohorts } from "./cohorts.ts";
import { type Draw, moments, quantilesOf, REVIEWS, sumOf } from "./distribution.ts";
import type { LoadQuestion } from "./expected.ts";
import { type Clicks, clicksFor, type Pace } from "./minutes.ts";

/** A load question whose answer names quantiles: levels between 0 and 1, or none to have mean and sd alone. */
export interface ExactLoadQuestion extends LoadQuestion {
  readonly quantiles: readonly number[];
  /** Seconds a card costs; where given, the answer has minutes. */
  readonly pace?: Pace;
}

/** A number that is left to chance. */
export interface Spread {
  readonly mean: number;
  readonly sd: number;
  /** Smallest values whose cumulative probability reaches each level, in the order of the question. */
  readonly quantiles: readonly number[];
}

/** The work of one box day. */
export interface ExactDay {
  readonly day: BoxDay;
  readonly newCards: number;
  /** First attempts of cards already in the box. */
  readonly reviews: Spread;
  /** Of the reviews, expected misses. */
  readonly missed: number;
  /** Minutes for reviews, second pass and new cards; null where no pace was given. */
  readonly minutes: Spread | null;
}

/**
 * Distribution of the work of each of `days` box days, for known chances of recall. Exact but for rounding and
 * `LEFT_OUT` of each distribution, and for minutes the grid of `clicksFor`; a number of cards that is not whole or a
 * level not between 0 and 1 is a `RangeError`.
 */
export function exactLoad(question: ExactLoadQuestion): readonly ExactDay[] {
  const { from, days, newCards, sits, quantiles: levels, pace } = question;
  const cohorts = walkCohorts(question);
  const clicks = pace ? clicksFor(pace) : null;
  return Array.from({ length: days }, (_, i) => {
    const draws = drawsOn(cohorts, from + i);
    const fresh = !sits || sits(i) ? newCards(i) : 0;
    const { mean, sd } = moments(draws, REVIEWS);
    const quantiles = levels.length > 0 ? quantilesOf(sumOf(draws, REVIEWS), levels) : [];
    const missed = draws.reduce((sum, draw) => sum + draw.count * draw.missed, 0);
    const minutes = pace && clicks ? minutesOf(draws, { pace, clicks, fresh, levels }) : null;
    return { day: from + i, newCards: fresh, reviews: { mean, sd, quantiles }, missed, minutes };
  });
}

/** The cards that may be asked on a day, by cohort. */
export function drawsOn(cohorts: readonly WalkedCohort[], day: BoxDay): readonly Draw[] {
  const draws: Draw[] = [];
  for (const { count, start, asked, missed } of cohorts) {
    if (start.due > day) break;
    const chance = asked[day - start.due] ?? 0;
    const miss = missed[day - start.due] ?? 0;
    if (chance > 0) draws.push({ count, recalled: chance - miss, missed: miss });
  }
  return draws;
}

/** How the seconds of one day are added up. */
export interface MinutesQuestion {
  readonly pace: Pace;
  readonly clicks: Clicks;
  /** New cards of the day. */
  readonly fresh: number;
  readonly levels: readonly number[];
}

/**
 * Minutes of one day: what its new cards take is certain, the rest is left to chance. Where the grid only comes near
 * the seconds, its distribution is moved and stretched to the true mean and sd; what is left of the error is then about
 * a step of the grid.
 */
export function minutesOf(draws: readonly Draw[], { pace, clicks, fresh, levels }: MinutesQuestion): Spread {
  const { mean, sd } = moments(draws, pace);
  const certain = fresh * pace.fresh;
  const reached = levels.length > 0 ? quantilesOf(sumOf(draws, clicks.steps), levels) : [];
  const seconds = onTrueScale(reached, moments(draws, clicks.steps), { mean, sd });
  return {
    mean: (mean + certain) / 60,
    sd: sd / 60,
    quantiles: seconds.map((one) => (one + certain) / 60),
  };
}

/** Mean and standard deviation. */
export type Moments = Pick<Spread, "mean" | "sd">;

/** Values of a distribution moved and stretched from one mean and sd to another. */
export const onTrueScale = (values: readonly number[], from: Moments, to: Moments): readonly number[] =>
  values.map((value) => to.mean + (from.sd > 0 ? ((value - from.mean) * to.sd) / from.sd : 0));
