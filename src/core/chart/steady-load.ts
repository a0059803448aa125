// The load of a box that has run long enough to settle, by day of the cycle: what a chart costs, whoever uses it.
import { type Chart, compartmentCount, cycleLength } from "./chart.ts";
import { createFlowSolver, eliminateFlow, type Flow, meanReviews, type Timetable, timetable } from "./chart-flow.ts";

/** The settled load of a chart with one new card on every day; multiply by the pace for more. */
export interface SteadyLoad {
  /** Expected reviews (first attempts of cards already in the box) on chart day 1…cycle; index 0 is chart day 1. */
  readonly byDay: readonly number[];
  /** Mean reviews a day, which is also the mean reviews of a card until it is kept; no chart changes it. */
  readonly mean: number;
  /** Reviews on the worst day of the cycle. */
  readonly peak: number;
  readonly peakToMean: number;
  /** Mean days from a card's introduction until it is kept, over all days of introduction. */
  readonly daysUntilKept: number;
  /** Longest wait in days that any card meets between two reviews. */
  readonly longestWait: number;
  /** Largest possible error of any day of `byDay`, as a share of the mean. */
  readonly error: number;
}

/** How exactly the load is solved, and when sweeping gives way to elimination. */
export const STEADY_LOAD = { tolerance: 1e-12, sweeps: 2_000, eliminated: 1_100, work: 300_000_000 } as const;

/**
 * The long-run expected reviews on each day of the cycle, for recall in compartments 1…K (each above 0, at most 1).
 * Exact up to rounding; `error` bounds what is left. Throws a RangeError for other recalls, which a caller must have
 * refused. Cost: cycle × K for each of some 20 sweeps; where recall is so low that these do not settle, cycle³, or for a long
 * cycle as many sweeps as `STEADY_LOAD.work` allows, after which `error` is what it is.
 * The mean is (1 − p^K) / ((1 − p) p^K) for equal recalls: Feller, An Introduction to Probability Theory and Its
 * Applications, vol. 1, XIII.7.
 */
export function steadyLoad(chart: Chart, recall: readonly number[]): SteadyLoad {
  if (recall.length !== compartmentCount(chart) || !recall.every((p) => p > 0 && p <= 1)) {
    throw new RangeError(`recall needs ${compartmentCount(chart)} numbers above 0 and at most 1, not ${recall}`);
  }
  const cycle = cycleLength(chart);
  const rows = chart.compartments.map((one) => timetable(one, cycle));
  const flow = settle(cycle, recall, rows);
  const byDay = Array.from({ length: cycle }, (_, i) => flow.asked[(i + 1) % cycle] ?? 0);
  const mean = meanReviews(recall);
  const peak = byDay.reduce((most, one) => Math.max(most, one), 0);
  return { byDay, mean, peak, peakToMean: peak / mean, ...waits(flow, recall, rows), error: flow.error };
}

function settle(cycle: number, recall: readonly number[], rows: readonly Timetable[]): Flow {
  const { tolerance, sweeps, eliminated, work } = STEADY_LOAD;
  const solve = createFlowSolver(cycle, recall);
  // A sweep costs a few steps for each day of the cycle; a chart that needs more than the work allowed says so.
  const affordable = Math.ceil(work / cycle);
  const short = cycle <= eliminated;
  const flow = solve(rows, tolerance, short ? sweeps : affordable);
  if (flow.settled || !short) return flow;
  const other = eliminateFlow(cycle, recall, rows);
  return other.error < flow.error ? other : flow;
}

/**
 * By Little's law the cards in the box, one new card a day, number as many as the days until one is kept: so these
 * are the waits begun on a day of the cycle, added up, over the length of the cycle.
 */
function waits(flow: Flow, recall: readonly number[], rows: readonly Timetable[]) {
  let arrivals = flow.begun;
  let waited = 0;
  let longestWait = 0;
  rows.forEach(({ due, wait }, k) => {
    const above = new Float64Array(arrivals.length);
    arrivals.forEach((cards, day) => {
      if (cards <= 0) return;
      waited += cards * (wait[day] ?? 0);
      longestWait = Math.max(longestWait, wait[day] ?? 0);
      const asked = due[day] ?? 0;
      above[asked] = (above[asked] ?? 0) + cards * (recall[k] ?? 0);
    });
    arrivals = above;
  });
  return { daysUntilKept: waited / flow.begun.length, longestWait };
}
