// The steady flow of cards round a chart. Every card walks on its own, so the cards asked in a compartment on a day
// of the cycle are a sum over the days on which they came up from the one below; misses feed compartment 1.
import { arrival, type ChartCompartment, step } from "./chart.ts";

/** When one compartment is visited and when its arrivals are asked, by day of the cycle, 0…cycle − 1. */
export interface Timetable {
  /** Days of the cycle with a visit. */
  readonly visits: Int32Array;
  /** Day of the cycle on which a card is asked that arrives on the day of the index. */
  readonly due: Int32Array;
  /** Days such a card waits. */
  readonly wait: Int32Array;
}

/** The steady flow with one new card a day, by day of the cycle, 0…cycle − 1. */
export interface Flow {
  /** Expected cards asked. */
  readonly asked: Float64Array;
  /** Expected cards that come into compartment 1: the new one and the misses. */
  readonly begun: Float64Array;
  /** Largest possible error of any day of `asked`, as a share of the mean day. */
  readonly error: number;
  /** Whether the error is as small as was asked, or as rounding allows. */
  readonly settled: boolean;
}

/** Solves for the flow until it has settled or `sweeps` are spent; its arrays are reused by the next call. */
export type FlowSolver = (rows: readonly Timetable[], tolerance: number, sweeps: number) => Flow;

/** Chance that a card which begins compartment 1 is kept without a miss: the product of the recalls. */
export const unbrokenRun = (recall: readonly number[]): number => recall.reduce((all, p) => all * p, 1);

/** Mean cards asked a day in each compartment, with one new card a day; the chart does not matter. Recalls above 0. */
export function meanFlows(recall: readonly number[]): readonly number[] {
  let flow = 1 / unbrokenRun(recall);
  return recall.map((p) => {
    const own = flow;
    flow *= p;
    return own;
  });
}

/** Mean reviews a day with one new card a day, also those of a card until it is kept (Feller, vol. 1, XIII.7). */
export const meanReviews = (recall: readonly number[]): number => meanFlows(recall).reduce((sum, one) => sum + one, 0);

/** The timetable of a compartment in a cycle that is a multiple of its period, in days. */
export function timetable(compartment: ChartCompartment, cycle: number): Timetable {
  const alone = { compartments: [compartment] };
  const wait = Int32Array.from({ length: cycle }, (_, day) => arrival(alone, 1, day).due - day);
  const size = step(compartment);
  return {
    visits: Int32Array.from({ length: cycle / size }, (_, i) => (compartment.offset % size) + i * size),
    due: wait.map((days, day) => (day + days) % cycle),
    wait,
  };
}

/**
 * A solver for charts of one cycle and one set of recalls (each above 0, at most 1). It repeats sweeps, begun from
 * the last answer: a sweep passes the cards begun each day up through the compartments and collects the misses. A
 * sweep shrinks the sum of the errors at least by the factor 1 − q, q the chance of an unbroken run, and the sum of
 * the cards begun is known beforehand (one new card a day over q). Hence the error bound: a last change of Δ cards
 * leaves at most Δ/q, and no day of the load is further from its value than the share Δ of the mean.
 * Cost of a sweep: cycle + visits in the cycle.
 */
export function createFlowSolver(cycle: number, recall: readonly number[]): FlowSolver {
  let begun = new Float64Array(cycle).fill(1 / unbrokenRun(recall));
  let next = new Float64Array(cycle);
  const asked = new Float64Array(cycle);
  const sweep = createSweep(cycle, recall);
  const rounding = roundingOf(cycle, recall);
  return (rows, tolerance, sweeps) => {
    const enough = Math.max(tolerance, rounding);
    let error = Number.POSITIVE_INFINITY;
    for (let i = 0; i < sweeps && error > enough; i++) {
      sweep(rows, begun, asked, next);
      error = distance(next, begun);
      [begun, next] = [next, begun];
    }
    return { asked, begun, error, settled: error <= enough };
  };
}

/**
 * The same flow by elimination, for recalls so low that sweeps settle too slowly. I − M, M one sweep, has columns
 * whose diagonal outweighs the rest, so that no pivots need to be sought. Cost: cycle³/3.
 */
export function eliminateFlow(cycle: number, recall: readonly number[], rows: readonly Timetable[]): Flow {
  const sweep = createSweep(cycle, recall);
  const asked = new Float64Array(cycle);
  const next = new Float64Array(cycle);
  const matrix = Array.from({ length: cycle }, () => new Float64Array(cycle));
  for (let day = 0; day < cycle; day++) {
    sweep(rows, new Float64Array(cycle).fill(1, day, day + 1), asked, next);
    matrix.forEach((row, i) => {
      row[day] = (i === day ? 1 : 0) - ((next[i] ?? 0) - 1);
    });
  }
  const begun = eliminate(matrix, new Float64Array(cycle).fill(1));
  sweep(rows, begun, asked, next);
  const error = distance(next, begun);
  return { asked, begun, error, settled: error <= roundingOf(cycle, recall) };
}

/** What rounding may leave of a sweep's change: a few units in the last place of each day's cards. */
const roundingOf = (cycle: number, recall: readonly number[]): number => (cycle * 2 ** -50) / unbrokenRun(recall);

type Sweep = (rows: readonly Timetable[], begun: Float64Array, asked: Float64Array, next: Float64Array) => void;

/** One sweep: from the cards begun on each day to the cards asked, and to those begun because of them. */
function createSweep(cycle: number, recall: readonly number[]): Sweep {
  let here = new Float64Array(cycle);
  let above = new Float64Array(cycle);
  return (rows, begun, asked, next) => {
    asked.fill(0);
    next.fill(1);
    const first = rows[0]?.due as Int32Array;
    for (let day = 0; day < cycle; day++) add(here, first[day] as number, begun[day] as number);
    for (let k = 0; k < rows.length; k++) {
      const visits = rows[k]?.visits as Int32Array;
      const due = rows[k + 1]?.due;
      const p = recall[k] as number;
      for (let i = 0; i < visits.length; i++) {
        const day = visits[i] as number;
        const cards = here[day] as number;
        here[day] = 0;
        add(asked, day, cards);
        add(next, day, cards * (1 - p));
        if (due) add(above, due[day] as number, cards * p);
      }
      [here, above] = [above, here];
    }
  };
}

const add = (sums: Float64Array, day: number, cards: number): void => {
  sums[day] = (sums[day] as number) + cards;
};

function distance(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += Math.abs((a[i] as number) - (b[i] as number));
  return sum;
}

/** Gauss's elimination without pivots; overwrites its arguments and gives the solution. */
function eliminate(matrix: readonly Float64Array[], right: Float64Array): Float64Array {
  const size = right.length;
  for (let i = 0; i < size; i++) {
    const top = matrix[i] as Float64Array;
    for (let j = i + 1; j < size; j++) {
      const row = matrix[j] as Float64Array;
      const factor = (row[i] as number) / (top[i] as number);
      if (factor === 0) continue;
      for (let c = i; c < size; c++) row[c] = (row[c] as number) - factor * (top[c] as number);
      right[j] = (right[j] as number) - factor * (right[i] as number);
    }
  }
  for (let i = size - 1; i >= 0; i--) {
    const row = matrix[i] as Float64Array;
    let rest = right[i] as number;
    for (let c = i + 1; c < size; c++) rest -= (row[c] as number) * (right[c] as number);
    right[i] = rest / (row[i] as number);
  }
  return right;
}
