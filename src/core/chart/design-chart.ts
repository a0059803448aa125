// The chart designer: bundles and offsets that keep the worst day low when only so many tabs can be kept apart.
import { fail, ok, type Result } from "../result.ts";
import {
  type BundleQuestion,
  bundleChoices,
  compartmentsOf,
  leastPeak,
  levelledBundles,
  nearbyChoices,
} from "./bundle-choices.ts";
import { CHART_LIMITS, type Chart, checkChart, cycleLength, tabCount } from "./chart.ts";
import { unbrokenRun } from "./chart-flow.ts";
import { spreadChart } from "./make-chart.ts";
import {
  createOffsetSearch,
  isBetter,
  type OffsetSearch,
  offsetSpace,
  type Placed,
  randomOffsets,
  SAME_PEAK,
} from "./offset-search.ts";
import { steadyLoad } from "./steady-load.ts";

/** What a chart is designed for. */
export interface DesignQuestion extends BundleQuestion {
  /** Evaluations after which the search stops, a whole number above 0; the default is `defaultBudget` of the cycle. */
  readonly budget?: number;
}

/** A designed chart and how good it is; reviews are for one new card a day. */
export interface Design {
  readonly chart: Chart;
  /** Tabs used, which may be fewer than were allowed. */
  readonly tabs: number;
  readonly mean: number;
  readonly peak: number;
  readonly peakToMean: number;
  /** No chart with any number of tabs has a lower peak than this: the mean. */
  readonly lowerBound: number;
  /**
   * Whether no chart within the tabs has a lower peak: everything was tried that could have, or the peak is the mean.
   * Where false the search was heuristic, and all that is known is that the best peak is from `lowerBound` to `peak`.
   */
  readonly exact: boolean;
  /** Charts evaluated. */
  readonly evaluations: number;
}

/**
 * Limits of the designer: a cycle of three years in days, the smallest chance that a card is kept without a miss,
 * choices of bundles compared, choices restarted, and the default evaluations for cycles of up to 64 days and at least.
 */
export const DESIGN_LIMITS = {
  cycle: 1_100,
  unbrokenRun: 1e-9,
  choices: 5_000,
  restarted: 12,
  budget: 40_000,
  leastBudget: 10_000,
} as const;

/** Evaluations that take about a second, for a cycle in days: fewer for a longer cycle, whose evaluations cost more. */
export const defaultBudget = (cycle: number): number =>
  Math.max(DESIGN_LIMITS.leastBudget, Math.round(Math.min(1, 64 / cycle) * DESIGN_LIMITS.budget));

/**
 * Bundles and offsets that keep the peak low within `tabs`. The choices of bundles are ranked by the peak of their
 * spread chart, the best are improved by moving one compartment at a time; then either all offsets that could still
 * be better are tried (`exact`) or the best few are restarted from seeded offsets until the budget is spent. The same
 * question has the same answer. The peak is never above that of the spread chart with the same bundles, nor with the
 * bundles that levelling the largest spikes gives. Fails with a sentence if the question cannot be used.
 */
export function designChart(question: DesignQuestion): Result<Design, string> {
  const wrong = checkQuestion(question);
  if (wrong !== null) return fail(wrong);
  const { periods, recall } = question;
  const cycle = cycleOf(periods);
  const search = createOffsetSearch(periods, recall, cycle);
  const found = searchFor(question, search, question.budget ?? defaultBudget(cycle));
  const compartments = compartmentsOf(periods, found.best.bundles, found.best.offsets);
  const { mean, peak, peakToMean } = steadyLoad({ compartments }, recall);
  const chart = { compartments };
  const exact = (found.complete && search.accurate()) || peakToMean <= 1 + SAME_PEAK;
  const measures = { mean, peak, peakToMean, lowerBound: mean, exact, evaluations: search.evaluations() };
  return ok({ chart, tabs: tabCount(chart), ...measures });
}

/** A search under way. */
interface Hunt {
  readonly question: DesignQuestion;
  readonly search: OffsetSearch;
  readonly budget: number;
  best: Placed;
}

function searchFor(question: DesignQuestion, search: OffsetSearch, budget: number) {
  const start = levelledBundles(question);
  const best = search.descend(placeSpread(search, question.periods, start), budget / 4);
  const hunt: Hunt = { question, search, budget, best };
  const all = bundleChoices(question, best.peak, Math.min(DESIGN_LIMITS.choices, Math.ceil(budget / 4)));
  const choices = all.complete ? all.choices : nearbyChoices(question, start, Math.ceil(budget / 10));
  const improved = improveSpread(hunt, choices);
  let complete = exhaust(hunt, choices);
  if (!complete) {
    restart(hunt, improved, budget * 0.75);
    complete = exhaust(hunt, choices);
  }
  if (!complete) restart(hunt, improved, budget);
  return { best: hunt.best, complete: complete && all.complete };
}

function keep(hunt: Hunt, placed: Placed): Placed {
  if (isBetter(placed, hunt.best)) hunt.best = placed;
  return placed;
}

/** Whether these bundles could have a lower peak than the best so far. */
const isOpen = ({ question, best }: Hunt, bundles: readonly number[]): boolean =>
  leastPeak(question, bundles) < best.peak * (1 - SAME_PEAK);

/** The spread chart of these bundles, evaluated. */
function placeSpread(search: OffsetSearch, periods: readonly number[], bundles: readonly number[]): Placed {
  const { compartments } = spreadChart(periods, bundles);
  return search.place(
    bundles,
    compartments.map(({ offset }) => offset),
  );
}

/** Goes downhill from the spread charts, those with the lowest peak first, with half of the budget. */
function improveSpread(hunt: Hunt, choices: readonly (readonly number[])[]): readonly Placed[] {
  const { question, search, budget } = hunt;
  const spread: Placed[] = [];
  for (const bundles of choices) {
    if (search.evaluations() >= budget) break;
    if (isOpen(hunt, bundles)) spread.push(keep(hunt, placeSpread(search, question.periods, bundles)));
  }
  const improved: Placed[] = [];
  for (const placed of spread.sort((a, b) => a.peak - b.peak)) {
    if (search.evaluations() >= budget / 2) break;
    if (isOpen(hunt, placed.bundles)) improved.push(keep(hunt, search.descend(placed, budget / 2)));
  }
  return improved.sort((a, b) => a.peak - b.peak);
}

/** Tries all offsets of all bundles that could still be better, if the budget allows; says whether it did. */
function exhaust(hunt: Hunt, choices: readonly (readonly number[])[]): boolean {
  const { question, search, budget } = hunt;
  const rest = choices.filter((bundles) => isOpen(hunt, bundles));
  const needed = rest.reduce((sum, bundles) => sum + offsetSpace(question.periods, bundles), 0);
  if (search.evaluations() + needed > budget) return false;
  for (const bundles of rest) hunt.best = search.exhaust(bundles, hunt.best);
  return true;
}

/** Goes downhill from seeded offsets, the most promising bundles in turn, until that many evaluations are spent. */
function restart(hunt: Hunt, improved: readonly Placed[], until: number): void {
  const { question, search } = hunt;
  const leaders = improved.slice(0, DESIGN_LIMITS.restarted);
  for (let turn = 0; search.evaluations() < until && leaders.length > 0; turn++) {
    const { bundles } = leaders[turn % leaders.length] as Placed;
    const offsets = randomOffsets(question.periods, bundles, `${bundles.join()} ${search.evaluations()}`);
    keep(hunt, search.descend(search.place(bundles, offsets), until));
  }
}

const cycleOf = (periods: readonly number[]): number => cycleLength({ compartments: compartmentsOf(periods, [], []) });

function checkQuestion({ periods, recall, tabs, budget = 1 }: DesignQuestion): string | null {
  const checked = checkChart({ compartments: compartmentsOf(periods, [], []) });
  if (!checked.ok) return checked.error;
  const cycle = cycleOf(periods);
  if (cycle > DESIGN_LIMITS.cycle) {
    return `the periods only come round together after ${cycle} days; a chart can be designed for at most ${DESIGN_LIMITS.cycle}`;
  }
  if (recall.length !== periods.length) {
    return `recall needs ${periods.length} numbers, one for each compartment, not ${recall.length}`;
  }
  const wrong = recall.find((p) => !(p > 0 && p <= 1));
  if (wrong !== undefined) return `recall must be above 0 and at most 1, not ${wrong}`;
  if (unbrokenRun(recall) < DESIGN_LIMITS.unbrokenRun) return "with so low a recall hardly any card would be kept";
  if (!Number.isInteger(tabs) || tabs < periods.length || tabs > CHART_LIMITS.tabs) {
    return `tabs must be a whole number from ${periods.length}, one for each compartment, to ${CHART_LIMITS.tabs}, not ${tabs}`;
  }
  if (!Number.isInteger(budget) || budget < 1) return `the budget must be a whole number above 0, not ${budget}`;
  return null;
}
