// What a chart costs in the long run, at a pace of new cards.
import { type Chart, cycleLength, tabCount } from "../../../core/chart/chart.ts";
import { unbrokenRun } from "../../../core/chart/chart-flow.ts";
import { DESIGN_LIMITS } from "../../../core/chart/design-chart.ts";
import { meanWaits } from "../../../core/chart/mean-waits.ts";
import { steadyLoad } from "../../../core/chart/steady-load.ts";
import { recallOnceKept } from "../../../core/recall/forgetting.ts";
import { fail, ok, type Result } from "../../../core/result.ts";
import { count } from "../../words.ts";
import type { PlanDraft } from "../plan-draft.ts";

/** Days after which a kept card is asked for in thought. */
const A_YEAR = 365;

/** New cards a day for which figures are given if none are planned. */
const USUAL_PACE = 10;

/** The long-run figures of one chart. */
export interface ChartFigures {
  readonly tabs: number;
  /** Days until the chart repeats. */
  readonly cycle: number;
  /** Cards asked on chart day 1…cycle. */
  readonly byDay: readonly number[];
  /** Cards asked on the mean day. */
  readonly mean: number;
  /** Cards asked on the worst day of the cycle. */
  readonly peak: number;
  /** How far the worst day lies above the mean, as a share of the mean. */
  readonly aboveMean: number;
  /** Longest wait in days between two askings of a card. */
  readonly longestWait: number;
  /** Mean days from a card's introduction until it is kept. */
  readonly daysUntilKept: number;
  /** Mean askings of a card until it is kept. */
  readonly reviewsPerCard: number;
  /** Chance that a kept card is recalled a year later; see `recallOnceKept` for what is assumed. */
  readonly recallAYearOn: number;
}

/** The figures of a chart for a recall in compartments 1…K and new cards a day; or a sentence that says why there are none. */
export function chartFigures(chart: Chart, recall: readonly number[], pace: number): Result<ChartFigures, string> {
  const cycle = cycleLength(chart);
  if (cycle > DESIGN_LIMITS.cycle) {
    return fail(
      `This chart only comes round after ${count(cycle)} days; figures are worked out for up to ${count(DESIGN_LIMITS.cycle)}.`,
    );
  }
  if (!(unbrokenRun(recall) >= DESIGN_LIMITS.unbrokenRun)) {
    return fail("With so low a recall hardly any card would be kept, and the box would only grow.");
  }
  const { byDay, mean, peak, peakToMean, daysUntilKept, longestWait } = steadyLoad(chart, recall);
  return ok({
    tabs: tabCount(chart),
    cycle,
    byDay: byDay.map((reviews) => reviews * pace),
    mean: mean * pace,
    peak: peak * pace,
    aboveMean: Math.max(0, peakToMean - 1),
    longestWait,
    daysUntilKept,
    reviewsPerCard: mean,
    recallAYearOn: recallOnceKept(meanWaits(chart), recall.at(-1) ?? 0, A_YEAR),
  });
}

/** New cards on the mean practice day of a plan; 0 if none are planned. */
export function meanPace({ schedule, restWeekdays }: Pick<PlanDraft, "schedule" | "restWeekdays">): number {
  if (schedule.kind === "steady") return schedule.each;
  const { each } = schedule;
  const counted = schedule.kind === "list" ? each : each.filter((_, i) => !restWeekdays.includes(i + 1));
  return counted.length > 0 ? counted.reduce((sum, one) => sum + one, 0) / counted.length : 0;
}

/** The pace for which figures are given: the plan's, or ten where it has no new cards. */
export const figuresPace = (draft: Pick<PlanDraft, "schedule" | "restWeekdays">): number =>
  meanPace(draft) || USUAL_PACE;
