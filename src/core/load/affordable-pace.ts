// What can I afford? The largest steady number of new cards whose days stay within a limit of minutes.
import { walkCohorts } from "./cohorts.ts";
import { type Draw, moments } from "./distribution.ts";
import { drawsOn, type ExactDay, exactLoad, minutesOf } from "./exact-load.ts";
import type { LoadQuestion } from "./expected.ts";
import { clicksFor, type Pace } from "./minutes.ts";

/** A limit for the minutes of every day: that quantile of them, `level` from 0.5 to below 1, must not pass it. */
export interface Limit {
  readonly minutes: number;
  readonly level: number;
  readonly pace: Pace;
}

/** The pace that can be afforded. */
export interface Affordable {
  /** New cards at every sitting; 0 if there is no room for any. */
  readonly each: number;
  /** The day with the largest quantile of minutes at that pace, the earliest of equals; null where no day was asked about. */
  readonly worst: ExactDay | null;
  /** That quantile in minutes. */
  readonly minutes: number;
  /** False if the cards that wait already pass the limit without any new ones. */
  readonly within: boolean;
}

/** Most new cards a day that are looked at, where new cards take no time. */
const MOST = 10_000;

/**
 * The largest `each` for which every day of `questionFor(each)` stays within the limit. More new cards never make a
 * day's minutes fewer, so the search halves; every comparison is with an exact quantile, or with a bound that no
 * distribution passes. Cost: some ten loads.
 */
export function affordablePace(questionFor: (each: number) => LoadQuestion, limit: Limit): Affordable {
  const most = limit.pace.fresh > 0 ? Math.min(MOST, Math.floor((limit.minutes * 60) / limit.pace.fresh)) : MOST;
  let low = 0;
  let high = most + 1;
  if (!staysWithin(questionFor(0), limit)) return { ...worstAt(questionFor(0), limit), each: 0, within: false };
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (staysWithin(questionFor(middle), limit)) low = middle;
    else high = middle;
  }
  return { ...worstAt(questionFor(low), limit), each: low, within: true };
}

/** Whether that quantile of every day's minutes is within the limit. */
export function staysWithin(question: LoadQuestion, limit: Limit): boolean {
  const { minutes, level, pace } = limit;
  const clicks = clicksFor(pace);
  // Cantelli's inequality: a quantile is at most √(level / (1 − level)) standard deviations above the mean.
  const furthest = Math.sqrt(level / (1 - level));
  return mostLoadedFirst(question, pace).every(({ draws, fresh, mean, sd }) => {
    if (mean + furthest * sd <= minutes) return true;
    const [reached = 0] = minutesOf(draws, { pace, clicks, fresh, levels: [level] }).quantiles;
    return reached <= minutes + ROUNDING;
  });
}

/** A quantile of exactly the limit is within it, whatever the division by 60 does to its last digit. */
const ROUNDING = 1e-9;

interface Loaded {
  readonly draws: readonly Draw[];
  readonly fresh: number;
  /** Minutes. */
  readonly mean: number;
  readonly sd: number;
}

/** The days, those that look worst first, so that a pace that is too high is found out at once. */
function mostLoadedFirst(question: LoadQuestion, pace: Pace): readonly Loaded[] {
  const { from, days, newCards, sits } = question;
  const cohorts = walkCohorts(question);
  const loaded = Array.from({ length: days }, (_, i) => {
    const draws = drawsOn(cohorts, from + i);
    const fresh = !sits || sits(i) ? newCards(i) : 0;
    const { mean, sd } = moments(draws, pace);
    return { draws, fresh, mean: (mean + fresh * pace.fresh) / 60, sd: sd / 60 };
  });
  return loaded.sort((a, b) => b.mean + 2 * b.sd - a.mean - 2 * a.sd);
}

function worstAt(question: LoadQuestion, { pace, level }: Limit): Pick<Affordable, "worst" | "minutes"> {
  const load = exactLoad({ ...question, pace, quantiles: [level] });
  const reached = (day: ExactDay): number => day.minutes?.quantiles[0] ?? 0;
  const worst = load.reduce<ExactDay | null>((most, day) => (most && reached(most) >= reached(day) ? most : day), null);
  return { worst, minutes: worst ? reached(worst) : 0 };
}
