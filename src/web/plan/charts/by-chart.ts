// What is known of recall by another chart than the box's own.
import type { PlanView } from "../../../app/views.ts";
import { type Chart, compartmentCount } from "../../../core/chart/chart.ts";
import { visitsByChart } from "../../../core/load/plan-by-chart.ts";
import { recallByCompartment } from "../../../core/recall/estimate.ts";
import { type PlannedRecall, recallIn } from "../plan-draft.ts";

/**
 * Chance of recall in compartments 1…K of `chart`: what the plan says, or what was measured in the compartments whose
 * cards would come there.
 */
export function recallBy({ box, visits }: PlanView, planned: PlannedRecall, chart: Chart): readonly number[] {
  if (planned !== null) return chart.compartments.map((_, i) => recallIn(planned, i + 1));
  return recallByCompartment(box ? visitsByChart(box.chart, chart, visits) : visits, compartmentCount(chart));
}

/** Chance of recall over all compartments: what the plan says, in the mean, or what was measured. */
export function overallRecall({ visits }: PlanView, planned: PlannedRecall): number {
  if (planned !== null) return meanOf(typeof planned === "number" ? [planned] : planned);
  const together = visits.map((visit) => ({ ...visit, compartment: 1 }));
  return meanOf(recallByCompartment(together, 1));
}

const meanOf = (chances: readonly number[]): number =>
  chances.reduce((sum, one) => sum + one, 0) / Math.max(1, chances.length);
