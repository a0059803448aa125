// What a box asks once it has settled: the same number of new cards every day, for ever.
// Feller, An Introduction to Probability Theory and Its Applications, vol. 1, XIII.7 (success runs).
import { type Chart, compartmentCount, cycleLength } from "../chart/chart.ts";
import { waitTables } from "./cohorts.ts";

/** A chart, its chances of recall, and how many cards are added to the box every day. */
export interface LongRunQuestion {
  readonly chart: Chart;
  /** Chance of recall in compartment 1…K, each 0 to 1. */
  readonly recall: readonly number[];
  readonly newPerDay: number;
}

/** Expected reviews a day in the periodic steady state. */
export interface LongRun {
  readonly mean: number;
  /** Of the busiest day of the cycle. */
  readonly peak: number;
  readonly peakToMean: number;
  /** For chart day 1…cycle. */
  readonly byChartDay: Float64Array;
}

/** Share of the steady state that may be missing from it, relative to the whole. */
export const LONG_RUN_LEFT_OUT = 1e-12;

/** Steps, each one visit of one compartment on one chart day, after which a steady state is given up. */
export const LONG_RUN_STEPS = 100_000_000;

/**
 * Expected reviews of a card until it is kept: Σ over k of 1 / (p_k p_(k+1) … p_K), where equal chances give Feller's
 * (1 − p^K) / ((1 − p) p^K); infinite if a compartment is never recalled.
 */
export function reviewsPerKeptCard(recall: readonly number[]): number {
  let kept = 1;
  return recall.reduceRight((sum, p) => {
    kept *= p;
    return sum + 1 / kept;
  }, 0);
}

/**
 * Long-run load of a chart; relative error below `LONG_RUN_LEFT_OUT` but for rounding. Null where it never settles,
 * a compartment's chance of recall being 0, and where it takes more than `LONG_RUN_STEPS`; memory: cycle × compartments.
 */
export function longRun({ chart, recall, newPerDay }: LongRunQuestion): LongRun | null {
  const climbs = createClimbs(chart, recall);
  const feet = steadyFeet(climbs);
  if (!feet) return null;
  const unit = new Float64Array(climbs.cycle);
  for (const [day, weight] of feet.entries()) climbs.climb(day, weight, unit, null);
  const mean = unit.reduce((sum, one) => sum + one, 0) / climbs.cycle;
  const peak = unit.reduce((most, one) => Math.max(most, one), 0);
  const byChartDay = unit.map((one) => one * newPerDay);
  return { mean: mean * newPerDay, peak: peak * newPerDay, peakToMean: peak / mean, byChartDay };
}

interface Climbs {
  readonly cycle: number;
  /** Steps of one climb. */
  readonly steps: number;
  /** Chance that a climb ends with the card kept. */
  readonly kept: number;
  /** Where new cards are first asked: one for each day of the cycle. */
  readonly arrivals: Float64Array;
  /** Climbs from compartment 1 on a day of the cycle (0 is chart day 1), adding to the days of visits and of returns. */
  climb(day: number, weight: number, asked: Float64Array | null, returned: Float64Array | null): void;
}

function createClimbs(chart: Chart, recall: readonly number[]): Climbs {
  const cycle = cycleLength(chart);
  const steps = compartmentCount(chart);
  const waits = waitTables(chart, { from: 1, days: cycle });
  const arrivals = new Float64Array(cycle);
  const after = (k: number, day: number): number => (day + (waits[k]?.[day] ?? 0)) % cycle;
  const add = (sums: Float64Array, day: number, weight: number): void => {
    sums[day] = (sums[day] ?? 0) + weight;
  };
  for (let day = 0; day < cycle; day++) add(arrivals, after(0, day), 1);
  const climb: Climbs["climb"] = (start, weight, asked, returned) => {
    let day = start;
    let chance = weight;
    for (let k = 0; k < steps; k++) {
      const p = recall[k] ?? 0;
      if (asked) add(asked, day, chance);
      if (returned) add(returned, after(0, day), chance * (1 - p));
      chance *= p;
      day = after(k + 1, day);
    }
  };
  return { cycle, steps, kept: recall.reduce((all, p) => all * p, 1), arrivals, climb };
}

/**
 * Cards that begin a climb from compartment 1 on each day of the cycle. Of those that begin, a share 1 − kept returns,
 * whatever the days; round by round the returns of the returns are added, until those that are left are few, or until
 * a round only shrinks the one before it, of which the geometric series is the rest: if a round departs from that by δ,
 * the rest is wrong by |δ| / kept² at most, which is held against the whole, cycle / kept.
 */
function steadyFeet({ cycle, steps, kept, arrivals, climb }: Climbs): Float64Array | null {
  if (kept === 0) return null;
  const all = new Float64Array(arrivals);
  let round = arrivals;
  let left = 1;
  for (let spent = 0; spent < LONG_RUN_STEPS; spent += cycle * steps) {
    const next = new Float64Array(cycle);
    for (const [day, weight] of round.entries()) if (weight > 0) climb(day, weight, null, next);
    left *= 1 - kept;
    const departed = round.reduce((sum, one, day) => sum + Math.abs((next[day] ?? 0) - one * (1 - kept)), 0);
    const settled = departed < LONG_RUN_LEFT_OUT * cycle * kept;
    for (const [day, weight] of next.entries()) all[day] = (all[day] ?? 0) + (settled ? weight / kept : weight);
    if (settled || left < LONG_RUN_LEFT_OUT) return all;
    round = next;
  }
  return null;
}
