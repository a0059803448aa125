// Which bundles a chart may have under a limit on tabs, and how low its peak could be at best.
import type { ChartCompartment } from "./chart.ts";
import { meanFlows, meanReviews } from "./chart-flow.ts";

/** What bundles are chosen for. */
export interface BundleQuestion {
  /** Days, for compartment 1…K. */
  readonly periods: readonly number[];
  /** Chance of recall in compartment 1…K, each above 0 and at most 1. */
  readonly recall: readonly number[];
  /** Most bundles in all. */
  readonly tabs: number;
}

/** Some or all choices of bundles. */
export interface BundleChoices {
  readonly choices: readonly (readonly number[])[];
  /** Whether no choice that could stay below the limit is missing. */
  readonly complete: boolean;
}

/** Whole numbers that divide `n`, smallest first. */
export const divisors = (n: number): readonly number[] =>
  Array.from({ length: n }, (_, i) => i + 1).filter((size) => n % size === 0);

/**
 * A peak, in reviews for one new card a day, that no offsets can undercut with these bundles. A compartment's mean
 * reviews come on one day in every step, so that its days have on average `step` times the mean; where compartment 1
 * is visited every day it adds the card that was new a period before.
 */
export function leastPeak({ periods, recall }: BundleQuestion, bundles: readonly number[]): number {
  const flows = meanFlows(recall);
  const spikes = periods.map((_, k) => spike({ periods, flows }, k, bundles[k] ?? 1, bundles[0] ?? 1));
  return Math.max(...spikes, meanReviews(recall));
}

/** Bundles found by dividing the compartment with the largest spike, again and again, while tabs are left. */
export function levelledBundles(question: BundleQuestion): readonly number[] {
  const { periods, tabs } = question;
  const flows = meanFlows(question.recall);
  const bundles = periods.map(() => 1);
  let left = tabs - bundles.length;
  for (;;) {
    const next = periods.map((period, k) => divisors(period).find((size) => size > (bundles[k] ?? 1)));
    const open = next.flatMap((size, k) => (size !== undefined && size - (bundles[k] ?? 1) <= left ? [k] : []));
    const height = (k: number): number => spike({ periods, flows }, k, bundles[k] ?? 1, bundles[0] ?? 1);
    const highest = open.reduce<number | undefined>(
      (a, b) => (a === undefined || height(b) > height(a) ? b : a),
      undefined,
    );
    if (highest === undefined) return bundles;
    const size = next[highest] ?? 1;
    left -= size - (bundles[highest] ?? 1);
    bundles[highest] = size;
  }
}

/** Every choice of bundles within the tabs that could have a peak below `limit`; at most `most` of them. */
export function bundleChoices(question: BundleQuestion, limit: number, most: number): BundleChoices {
  const { periods, tabs } = question;
  const flows = meanFlows(question.recall);
  const choices: number[][] = [];
  const extend = (chosen: readonly number[], left: number): boolean => {
    const k = chosen.length;
    const period = periods[k];
    if (period === undefined) return choices.push([...chosen]) < most;
    return divisors(period)
      .filter((size) => size <= left - (periods.length - k - 1))
      .filter((size) => spike({ periods, flows }, k, size, chosen[0] ?? size) < limit)
      .every((size) => extend([...chosen, size], left - size));
  };
  return { complete: extend([], tabs), choices };
}

/**
 * The choices within a few steps of one: a compartment divided more finely or less, or one more and another less.
 * At most `most`, nearest first, the start included.
 */
export function nearbyChoices({ periods, tabs }: BundleQuestion, start: readonly number[], most: number) {
  const seen = new Map([[start.join(), start]]);
  for (const chosen of seen.values()) {
    const moved = (from: readonly number[]) => periods.flatMap((period, k) => beside(period, from, k));
    const single = moved(chosen);
    for (const one of [...single, ...single.flatMap(moved)]) {
      if (seen.size >= most) return [...seen.values()];
      if (one.reduce((sum, size) => sum + size, 0) <= tabs) seen.set(one.join(), one);
    }
  }
  return [...seen.values()];
}

/** The choices that differ from one in compartment k alone, by one divisor up or down. */
function beside(period: number, chosen: readonly number[], k: number): readonly (readonly number[])[] {
  const sizes = divisors(period);
  const at = sizes.indexOf(chosen[k] ?? 1);
  return [sizes[at - 1], sizes[at + 1]].flatMap((size) => (size === undefined ? [] : [chosen.with(k, size)]));
}

/** Mean reviews on the days on which compartment k is visited, as far as they are certain. */
function spike(
  { periods, flows }: { readonly periods: readonly number[]; readonly flows: readonly number[] },
  k: number,
  size: number,
  first: number,
): number {
  const daily = k > 0 && first === periods[0] ? 1 : 0;
  return ((flows[k] ?? 0) * (periods[k] ?? 1)) / size + daily;
}

/** Compartments with these bundles and offsets, in days. */
export const compartmentsOf = (
  periods: readonly number[],
  bundles: readonly number[],
  offsets: readonly number[],
): readonly ChartCompartment[] =>
  periods.map((period, k) => ({ period, bundles: bundles[k] ?? 1, offset: offsets[k] ?? 0 }));
