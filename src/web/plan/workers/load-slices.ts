// The load of a plan in two helpings. Means and standard deviations are exact and come at once; the exact quantiles
// take a hundred times as long and are worked out day by day, so that a newer question can come between.
import { quantile, REVIEWS, sumOf } from "../../../core/load/distribution.ts";
import { drawsOn, type ExactDay, minutesOf, type Spread } from "../../../core/load/exact-load.ts";
import { clicksFor } from "../../../core/load/minutes.ts";
import { onDates, type PlanDay, type PlanQuestion } from "../../../core/load/plan-load.ts";
import { momentsOfDays } from "./moments-of-days.ts";
import type { PreparedLoad } from "./prepare-load.ts";

/** A load that is being worked out. */
export interface SlicedLoad {
  /** Every date, with the quantiles of a normal distribution of the exact mean and spread: some one card off. */
  readonly first: readonly PlanDay[];
  /** Works out the exact quantiles of one more day; false when there was none left. */
  readonly next: () => boolean;
  /** Every date as `planLoad` has it, once `next` was false. */
  readonly exact: () => readonly PlanDay[];
}

/** Begins with a prepared question. `reaches` are its levels in standard deviations of a normal distribution. */
export function sliceLoad(
  { quantiles: levels, pace }: Pick<PlanQuestion, "quantiles" | "pace">,
  { dates, box, cohorts }: PreparedLoad,
  reaches: readonly number[],
): SlicedLoad {
  const moments = momentsOfDays(box, cohorts, pace);
  const clicks = clicksFor(pace);
  const done: ExactDay[] = [];
  const next = (): boolean => {
    const day = moments[done.length];
    if (!day) return false;
    const draws = drawsOn(cohorts, day.day);
    const pmf = sumOf(draws, REVIEWS);
    const reviews = { ...day.reviews, quantiles: levels.map((level) => quantile(pmf, level)) };
    done.push({ ...day, reviews, minutes: minutesOf(draws, { pace, clicks, fresh: day.newCards, levels }) });
    return true;
  };
  const rough = moments.map((day) => withRoughQuantiles(day, reaches));
  return {
    first: onDates(dates, rough, levels.length),
    next,
    exact: () => onDates(dates, done, levels.length),
  };
}

const withRoughQuantiles = (day: ExactDay, reaches: readonly number[]): ExactDay => ({
  ...day,
  reviews: { ...day.reviews, quantiles: roughly(day.reviews, reaches).map(Math.round) },
  minutes: day.minutes && { ...day.minutes, quantiles: roughly(day.minutes, reaches) },
});

const roughly = ({ mean, sd }: Spread, reaches: readonly number[]): readonly number[] =>
  reaches.map((reach) => Math.max(0, mean + reach * sd));
