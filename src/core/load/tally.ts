// A mixture of distributions of whole numbers under way: what comes out when a question has several answers, each as
// likely as the others.
import { type Pmf, quantilesOf } from "./distribution.ts";
import type { Moments, Spread } from "./exact-load.ts";

/** Sums over the distributions so far: means, means of squares, and chances of each value. */
export interface Tally {
  mean: number;
  square: number;
  first: number;
  chances: Float64Array;
}

/** A tally of no distribution yet. */
export const createTally = (): Tally => ({ mean: 0, square: 0, first: 0, chances: new Float64Array(0) });

/** Adds one distribution with its moments. */
export function addTo(tally: Tally, { mean, sd }: Moments, pmf: Pmf): void {
  tally.mean += mean;
  tally.square += sd * sd + mean * mean;
  widen(tally, pmf.first, pmf.first + pmf.chances.length);
  for (let i = 0; i < pmf.chances.length; i++) {
    const at = pmf.first - tally.first + i;
    tally.chances[at] = (tally.chances[at] as number) + (pmf.chances[i] as number);
  }
}

/** Makes room for the sums from `first` to before `end`. */
function widen(tally: Tally, first: number, end: number): void {
  const length = tally.chances.length;
  const from = length === 0 ? first : Math.min(first, tally.first);
  const to = length === 0 ? end : Math.max(end, tally.first + length);
  if (to - from === length) return;
  const chances = new Float64Array(to - from);
  chances.set(tally.chances, length === 0 ? 0 : tally.first - from);
  tally.first = from;
  tally.chances = chances;
}

/** The mixture of the `sets` distributions that were added, 1 or more, each with the same weight. */
export function mixedSpread(tally: Tally, sets: number, levels: readonly number[]): Spread {
  const mean = tally.mean / sets;
  const pmf = { first: tally.first, chances: tally.chances.map((chance) => chance / sets) };
  return {
    mean,
    sd: Math.sqrt(Math.max(0, tally.square / sets - mean * mean)),
    quantiles: quantilesOf(pmf, levels),
  };
}
