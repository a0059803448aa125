// The chart: which bundles of which compartments are visited on which day.
// Compartments are numbered 1…K and bundles 1…b, as on paper; days are box days, counted from 1.
import { fail, ok, type Result } from "../result.ts";

/** A day of the box, counted from 1 on the day it was begun; the chart day is its place in the cycle. */
export type BoxDay = number;

/** One compartment of a chart. Its bundles take turns every `period / bundles` days. */
export interface ChartCompartment {
  /** Days from one visit of a bundle to its next. */
  readonly period: number;
  /** How many tabbed bundles the compartment is divided into; divides `period`. */
  readonly bundles: number;
  /** Bundle 1 is visited on days congruent to this, modulo `period`; 0 ≤ offset < period. */
  readonly offset: number;
}

/** Compartments 1…K, lowest first. */
export interface Chart {
  readonly compartments: readonly ChartCompartment[];
}

/** One bundle that is visited on some day. */
export interface Visit {
  readonly compartment: number;
  readonly bundle: number;
}

/** Limits that keep a chart drawable and its cycle countable. */
export const CHART_LIMITS = { compartments: 20, period: 100_000, tabs: 1_000, cycle: 10_000_000 } as const;

/** Number of compartments, K. */
export const compartmentCount = (chart: Chart): number => chart.compartments.length;

/** Number of tabs on paper: one for every bundle. */
export const tabCount = (chart: Chart): number => chart.compartments.reduce((sum, c) => sum + c.bundles, 0);

/** Days until the chart repeats: the least common multiple of the periods. */
export const cycleLength = (chart: Chart): number => chart.compartments.reduce((all, c) => lcm(all, c.period), 1);

/** The number written on the calendar for a box day: 1…cycle, then 1 again. */
export const chartDay = (chart: Chart, day: BoxDay): number => ((day - 1) % cycleLength(chart)) + 1;

/** Days between two visits of a compartment, whichever bundle. */
export const step = (compartment: ChartCompartment): number => compartment.period / compartment.bundles;

/** The bundle of compartment `k` that is visited on `day`, or null if it rests. */
export function bundleVisited(chart: Chart, k: number, day: BoxDay): number | null {
  const compartment = at(chart, k);
  const since = modulo(day - compartment.offset, compartment.period);
  const size = step(compartment);
  return since % size === 0 ? since / size + 1 : null;
}

/** The first day from `from` on on which a bundle of compartment `k` is visited. */
export function nextVisit(chart: Chart, k: number, bundle: number, from: BoxDay): BoxDay {
  const compartment = at(chart, k);
  const first = compartment.offset + (bundle - 1) * step(compartment);
  return from + modulo(first - from, compartment.period);
}

/** The last day up to and including `day` on which any bundle of compartment `k` is visited; may lie before day 1. */
export function lastVisit(chart: Chart, k: number, day: BoxDay): BoxDay {
  const compartment = at(chart, k);
  return day - modulo(day - compartment.offset, step(compartment));
}

/** Everything visited on `day`, from the highest compartment to the lowest. */
export function visitsOn(chart: Chart, day: BoxDay): readonly Visit[] {
  const visits: Visit[] = [];
  for (let k = compartmentCount(chart); k >= 1; k--) {
    const bundle = bundleVisited(chart, k, day);
    if (bundle !== null) visits.push({ compartment: k, bundle });
  }
  return visits;
}

/**
 * Where a card goes that arrives in compartment `k` on `day`: into the bundle visited most recently
 * on or before that day, to be asked at that bundle's next visit. The wait `due - day` is therefore
 * more than period − period/bundles and at most the period.
 */
export function arrival(chart: Chart, k: number, day: BoxDay): { readonly bundle: number; readonly due: BoxDay } {
  const compartment = at(chart, k);
  const joined = lastVisit(chart, k, day);
  const bundle = modulo(joined - compartment.offset, compartment.period) / step(compartment) + 1;
  return { bundle, due: joined + compartment.period };
}

/** Whether two charts visit the same bundles on the same days. */
export const sameChart = (a: Chart, b: Chart): boolean =>
  a.compartments.length === b.compartments.length &&
  a.compartments.every(({ period, bundles, offset }, i) => {
    const other = b.compartments[i];
    return other?.period === period && other.bundles === bundles && other.offset === offset;
  });

/** Checks a chart that came from outside; says which compartment is wrong and what is allowed. */
export function checkChart(chart: Chart): Result<Chart, string> {
  const { compartments } = chart;
  if (compartments.length < 1 || compartments.length > CHART_LIMITS.compartments) {
    return fail(`a chart has 1 to ${CHART_LIMITS.compartments} compartments, not ${compartments.length}`);
  }
  for (const [i, { period, bundles, offset }] of compartments.entries()) {
    const name = `compartment ${i + 1}`;
    if (!Number.isInteger(period) || period < 1 || period > CHART_LIMITS.period) {
      return fail(`${name}: the period must be a whole number of days from 1 to ${CHART_LIMITS.period}, not ${period}`);
    }
    if (!Number.isInteger(bundles) || bundles < 1 || period % bundles !== 0) {
      return fail(`${name}: ${bundles} bundles do not divide its period of ${period} days evenly`);
    }
    if (!Number.isInteger(offset) || offset < 0 || offset >= period) {
      return fail(`${name}: the offset must be a whole number from 0 to ${period - 1}, not ${offset}`);
    }
  }
  if (tabCount(chart) > CHART_LIMITS.tabs) {
    return fail(`the chart has ${tabCount(chart)} bundles; at most ${CHART_LIMITS.tabs} can be kept apart`);
  }
  if (cycleLength(chart) > CHART_LIMITS.cycle) {
    return fail(`the periods only come round together after ${cycleLength(chart)} days; at most ${CHART_LIMITS.cycle}`);
  }
  return ok(chart);
}

function at(chart: Chart, k: number): ChartCompartment {
  const compartment = chart.compartments[k - 1];
  if (!compartment) throw new RangeError(`no compartment ${k} in a chart of ${chart.compartments.length}`);
  return compartment;
}

const modulo = (n: number, m: number): number => ((n % m) + m) % m;

/** Greatest common divisor of two whole numbers, not both 0. */
export const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
const lcm = (a: number, b: number): number => (a / gcd(a, b)) * b;
