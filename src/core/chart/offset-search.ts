// Looks for the offsets with the lowest peak for given bundles: every one of them, or downhill from a start.
import { uniform } from "../random.ts";
import { createFlowSolver, meanReviews, type Timetable, timetable } from "./chart-flow.ts";

/** Offsets and the peak they give, in reviews for one new card a day. */
export interface Placed {
  readonly bundles: readonly number[];
  readonly offsets: readonly number[];
  readonly peak: number;
  /** Sum of the squares of the days' loads, which tells offsets with the same peak apart. */
  readonly roughness: number;
}

/** Tries offsets and counts how often. */
export interface OffsetSearch {
  /**
   * The peak of one chart; one evaluation. It is cut short, and the peak is rough, once the chart is certain to be
   * worse than the rival.
   */
  place(bundles: readonly number[], offsets: readonly number[], rival?: Placed): Placed;
  /** Moves one compartment at a time to its best day until nothing gains, or until the evaluations are spent. */
  descend(start: Placed, until: number): Placed;
  /** The best of all offsets, or the rival if none is better; takes `offsetSpace` evaluations. */
  exhaust(bundles: readonly number[], rival: Placed): Placed;
  evaluations(): number;
  /** Whether every evaluation so far was accurate enough to tell peaks apart, that is to `SAME_PEAK`. */
  accurate(): boolean;
}

/** Peaks closer than this share are the same: well above the error of an evaluation, far below a review a day. */
export const SAME_PEAK = 1e-9;

/** An evaluation's accuracy in stages, as a share of the mean, and the sweeps after which it is taken as it is. */
const EVALUATION = { tolerances: [0.1, 0.02, 1e-3, 1e-11], sweeps: 1_000 } as const;

/** Whether the first has the lower peak, or at the same peak fewer tabs, or at as many tabs smoother days. */
export function isBetter(a: Placed, b: Placed): boolean {
  if (Math.abs(a.peak - b.peak) > SAME_PEAK * b.peak) return a.peak < b.peak;
  const tabs = sum(a.bundles) - sum(b.bundles);
  return tabs < 0 || (tabs === 0 && a.roughness < b.roughness * (1 - SAME_PEAK));
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

/** Days from one visit to the next of each compartment: its offsets that differ in load. */
const stepsOf = (periods: readonly number[], bundles: readonly number[]): readonly number[] =>
  periods.map((period, k) => period / (bundles[k] ?? 1));

/**
 * How many offsets are worth trying for these bundles. Offsets count modulo the step, since bundles can be renamed;
 * and turning the whole chart changes nothing, so the compartment with the longest step stays where it is.
 */
export function offsetSpace(periods: readonly number[], bundles: readonly number[]): number {
  const steps = stepsOf(periods, bundles);
  return steps.reduce((all, size) => all * size, 1) / Math.max(...steps);
}

/** Seeded offsets for a restart; the same for the same key. */
export const randomOffsets = (periods: readonly number[], bundles: readonly number[], key: string): readonly number[] =>
  stepsOf(periods, bundles).map((size, k) => Math.floor(uniform("chart offsets", `${key} ${k}`) * size));

/** A search among charts with these periods, in days, and recalls, each above 0 and at most 1; cycle in days. */
export function createOffsetSearch(periods: readonly number[], recall: readonly number[], cycle: number): OffsetSearch {
  const place = createPlacing(periods, recall, cycle);
  return {
    place: place.one,
    evaluations: place.count,
    accurate: place.accurate,
    descend(start, until) {
      let best = start;
      for (let before: Placed | undefined; before !== best && place.count() < until; ) {
        before = best;
        for (let k = periods.length - 1; k >= 0; k--) best = bestDay(best, k, until);
      }
      return best;
    },
    exhaust(bundles, rival) {
      const steps = stepsOf(periods, bundles);
      const fixed = steps.indexOf(Math.max(...steps));
      let best = rival;
      for (const offsets of everyOffset(steps.with(fixed, 1))) {
        const placed = place.one(bundles, offsets, best);
        if (isBetter(placed, best)) best = placed;
      }
      return best;
    },
  };

  function bestDay(from: Placed, k: number, until: number): Placed {
    let best = from;
    const size = (periods[k] ?? 1) / (from.bundles[k] ?? 1);
    for (let offset = 0; offset < size && place.count() < until; offset++) {
      if (offset === (from.offsets[k] ?? 0) % size) continue;
      const moved = place.one(from.bundles, from.offsets.with(k, offset), best);
      if (isBetter(moved, best)) best = moved;
    }
    return best;
  }
}

function createPlacing(periods: readonly number[], recall: readonly number[], cycle: number) {
  const solve = createFlowSolver(cycle, recall);
  const rowOf = createTimetables(periods, cycle);
  const mean = meanReviews(recall);
  let count = 0;
  let accurate = true;
  const measure = (rows: readonly Timetable[], rival: Placed | undefined) => {
    let measured = { peak: 0, roughness: 0 };
    let error = 0;
    for (const tolerance of EVALUATION.tolerances) {
      const flow = solve(rows, tolerance, EVALUATION.sweeps);
      measured = measureDays(flow.asked);
      error = flow.error;
      if (rival && measured.peak - flow.error * mean > rival.peak * (1 + SAME_PEAK)) return measured;
    }
    accurate &&= error <= SAME_PEAK;
    return measured;
  };
  return {
    count: () => count,
    accurate: () => accurate,
    one(bundles: readonly number[], offsets: readonly number[], rival?: Placed): Placed {
      count++;
      const rows = periods.map((_, k) => rowOf(k, bundles[k] ?? 1, offsets[k] ?? 0));
      return { bundles, offsets, ...measure(rows, rival) };
    },
  };
}

function measureDays(asked: Float64Array): { readonly peak: number; readonly roughness: number } {
  let peak = 0;
  let roughness = 0;
  for (let day = 0; day < asked.length; day++) {
    const load = asked[day] as number;
    if (load > peak) peak = load;
    roughness += load * load;
  }
  return { peak, roughness };
}

/** Timetables by compartment, bundles and offset, each made once. */
function createTimetables(periods: readonly number[], cycle: number) {
  const known = periods.map(() => new Map<number, Timetable>());
  return (k: number, bundles: number, offset: number): Timetable => {
    const period = periods[k] ?? 1;
    const key = bundles * period + offset;
    const table = known[k]?.get(key) ?? timetable({ period, bundles, offset }, cycle);
    known[k]?.set(key, table);
    return table;
  };
}

/** All offsets below these steps, the last running fastest. */
function* everyOffset(steps: readonly number[]): Generator<readonly number[]> {
  const offsets = steps.map(() => 0);
  for (;;) {
    yield [...offsets];
    let k = steps.length - 1;
    while (k >= 0 && (offsets[k] ?? 0) + 1 === steps[k]) offsets[k--] = 0;
    if (k < 0) return;
    offsets[k] = (offsets[k] ?? 0) + 1;
  }
}
