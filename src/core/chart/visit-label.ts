// How a pile is called where there is little room.
import type { Chart, Visit } from "./chart.ts";

/** "7·3" for bundle 3 of compartment 7, or only "7" where the compartment is not divided. */
export const visitLabel = ({ compartments }: Chart, { compartment, bundle }: Visit): string =>
  (compartments[compartment - 1]?.bundles ?? 1) > 1 ? `${compartment}·${bundle}` : `${compartment}`;
