// What is known of recall by another chart than the box's own.
import type { PlanView } from "../../../app/views.ts";
import { type Chart, compartmentCount } from "../../../core/chart/chart.ts";
import { visitsByChart } from "../../../core/load/plan-by-chart.ts";
import { recallByCompartment } from "../../../core/recall/estimate.ts";
import type { PlanDraft } from "../plan-draft.ts";

/**
 * Chance of recall in compartments 1…K of `chart`: what the plan says, or what was measured in the compartments whose
 * cards would come there.
 */
export function recallBy({ box, visits }: PlanView, planned: PlanDraft["recall"], chart: Chart): readonly number[] {
  if (planned !== null) return chart.compartments.map(() => planned);
  return recallByCompartment(box ? visitsByChart(box.chart, chart, visits) : visits, compartmentCount(chart));
}

/** Chance of recall over all compartments: what the plan says, or what was measured. */
export const overallRecall = ({ visits }: PlanView, planned: PlanDraft["recall"]): number =>
  planned ??
  recallByCompartment(
    visits.map((visit) => ({ ...visit, compartment: 1 })),
    1,
  )[0] ??
  0;
