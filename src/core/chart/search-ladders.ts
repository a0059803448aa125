// Ladders of periods side by side: how many compartments, and how fast the periods grow.
import { recallOnceKept } from "../recall/forgetting.ts";
import { fail, ok, type Result } from "../result.ts";
import { divisors } from "./bundle-choices.ts";
import { type Chart, cycleLength } from "./chart.ts";
import { designChart } from "./design-chart.ts";
import { meanWaits } from "./mean-waits.ts";
import { steadyLoad } from "./steady-load.ts";

/** Which ladders are compared, and for whom. */
export interface LadderQuestion {
  /** Chance of recall in every compartment, above 0 and at most 1. */
  readonly recall: number;
  /** Most tabs; ladders with more compartments than that are left out. */
  readonly tabs: number;
  /** Numbers of compartments to try. */
  readonly compartments?: readonly number[];
  /** Growth from one period to the next, each above 1. */
  readonly ratios?: readonly number[];
  /** Evaluations for the chart of each ladder, a whole number above 0. */
  readonly budget?: number;
}

/** One ladder with a chart designed for it. */
export interface LadderFigures {
  readonly compartments: number;
  /** The growth that was aimed at. */
  readonly ratio: number;
  /** Days, for compartment 1…K. */
  readonly periods: readonly number[];
  /** Days until the chart repeats. */
  readonly cycle: number;
  /** Mean reviews of a card until it is kept; periods and chart do not change it. */
  readonly reviewsPerCard: number;
  /** Mean days from a card's introduction until it is kept. */
  readonly daysUntilKept: number;
  readonly peakToMean: number;
  /** Longest wait in days that any card meets between two reviews. */
  readonly longestWait: number;
  /** Chance that a kept card is recalled a year after it was kept; see `recallOnceKept` for what is assumed. */
  readonly recallAYearOn: number;
  readonly tabs: number;
  readonly chart: Chart;
  /** Whether no chart of the ladder within the tabs has a lower peak; otherwise its search was heuristic. */
  readonly exact: boolean;
}

/** Days after which a kept card is asked for in thought. */
const A_YEAR = 365;

/** What is compared if nothing else is asked, and how far a period may be from an even growth. */
export const LADDERS = {
  compartments: [4, 5, 6, 7, 8, 9],
  ratios: [1.5, 1.75, 2, 2.5, 3, 4, 5],
  budget: 2_000,
  /** Longest cycle in days: a year. */
  cycle: 365,
  /** A period may miss an even growth by this share, or by a day. */
  slack: 0.25,
} as const;

/**
 * The figures of every ladder, fewest compartments and slowest growth first, each with the chart that `designChart`
 * finds for it. Two growths that lead to the same periods are listed once. Fails with a sentence if recall, tabs or
 * budget cannot be used or a ratio is not above 1. Cost: one design for each ladder.
 */
export function searchLadders(question: LadderQuestion): Result<readonly LadderFigures[], string> {
  const { recall, tabs, budget = LADDERS.budget } = question;
  const { compartments = LADDERS.compartments, ratios = LADDERS.ratios } = question;
  const slow = ratios.find((ratio) => !(ratio > 1));
  if (slow !== undefined) return fail(`periods must grow by a ratio above 1, not ${slow}`);
  const figures = new Map<string, LadderFigures>();
  for (const count of [...compartments].filter((size) => size <= tabs).sort((a, b) => a - b)) {
    for (const ratio of [...ratios].sort((a, b) => a - b)) {
      const periods = ladderPeriods(count, ratio);
      if (periods === null || figures.has(periods.join())) continue;
      const recalls = periods.map(() => recall);
      const design = designChart({ periods, recall: recalls, tabs, budget });
      if (!design.ok) return design;
      const { chart, tabs: used, peakToMean, exact } = design.value;
      const { mean, daysUntilKept, longestWait } = steadyLoad(chart, recalls);
      const recallAYearOn = recallOnceKept(meanWaits(chart), recall, A_YEAR);
      const measures = { reviewsPerCard: mean, daysUntilKept, peakToMean, longestWait, recallAYearOn, tabs: used };
      const own = { compartments: count, ratio, periods, cycle: cycleLength(chart) };
      figures.set(periods.join(), { ...own, ...measures, chart, exact });
    }
  }
  return ok([...figures.values()]);
}

/**
 * Periods in days for K compartments that grow by about `ratio` each, from 1 day, and come round together within a
 * year: of all cycles the one whose divisors are nearest to the even growth, the shortest of equals. Null if every one
 * misses it by too much. A whole ratio has its powers as long as they stay within the year.
 */
export function ladderPeriods(compartments: number, ratio: number): readonly number[] | null {
  const even = Array.from({ length: compartments }, (_, k) => ratio ** k);
  if (!((even.at(-1) ?? 1) <= LADDERS.cycle * (1 + LADDERS.slack))) return null;
  let nearest: { readonly periods: readonly number[]; readonly misfit: number } | null = null;
  for (let cycle = 1; cycle <= LADDERS.cycle; cycle++) {
    const periods = snapped(even, divisors(cycle));
    if (periods === null) continue;
    const misfit = periods.reduce((sum, period, k) => sum + Math.log(period / (even[k] ?? 1)) ** 2, 0);
    if (nearest === null || misfit < nearest.misfit - 1e-12) nearest = { periods, misfit };
  }
  return nearest?.periods ?? null;
}

/** The even growth moved to the nearest of the sizes, always upwards from one to the next; null if one is too far. */
function snapped(even: readonly number[], sizes: readonly number[]): readonly number[] | null {
  const periods: number[] = [];
  for (const ideal of even) {
    const miss = (size: number): number => Math.abs(Math.log(size / ideal));
    const open = sizes.filter((size) => size > (periods.at(-1) ?? 0));
    const [first, ...others] = open;
    if (first === undefined) return null;
    const period = others.reduce((best, size) => (miss(size) < miss(best) ? size : best), first);
    if (Math.abs(period - ideal) > Math.max(1, LADDERS.slack * ideal)) return null;
    periods.push(period);
  }
  return periods;
}
