// A chart as a CSV file: what is visited on each day of its cycle, and how many cards that is in the long run.
import { type Chart, visitsOn } from "../../../core/chart/chart.ts";
import { visitLabel } from "../../../core/chart/visit-label.ts";
import { csvText } from "../plots/csv-text.ts";

/** Each chart day with its compartments, highest first, as "7·2 1" for bundle 2 of compartment 7 and compartment 1. */
export const chartCsv = (chart: Chart, byDay: readonly number[]): string =>
  csvText(
    ["chart_day", "visited", "cards_mean"],
    byDay.map((cards, i) => [
      i + 1,
      visitsOn(chart, i + 1)
        .map((visit) => visitLabel(chart, visit))
        .join(" "),
      cards,
    ]),
  );
