// A plan as it would be by another chart.
import { compartmentAfter, rechartWaiting } from "../box/rechart.ts";
import { type Chart, sameChart } from "../chart/chart.ts";
import type { RecallCount } from "../recall/estimate.ts";
import { datedDays } from "./dated-days.ts";
import type { Plan } from "./plan-load.ts";

/** What decides where the cards of a box go when its chart changes. */
type Box = Pick<Plan, "chart" | "waiting" | "calendar" | "last" | "from">;

/** The same box by another chart from its first practice day ahead on: its cards are moved as `rechartPlace` moves them. */
export function boxByChart<B extends Box>(box: B, chart: Chart): B {
  if (sameChart(box.chart, chart)) return box;
  // As far as the end of a holiday is looked for.
  const day = datedDays({ ...box, dates: 400 }).find((one) => one.day !== null)?.day ?? 1;
  return { ...box, chart, waiting: rechartWaiting(box.chart, chart, day, box.waiting) };
}

/** First answers counted by the compartments of another chart, to which their cards would have been moved. */
export const visitsByChart = (from: Chart, to: Chart, visits: readonly RecallCount[]): readonly RecallCount[] =>
  visits.map((count) => ({ ...count, compartment: compartmentAfter(from, to, count.compartment) }));
