// The year's load as a CSV file, one date a row.
import { type Chart, chartDay } from "../../../core/chart/chart.ts";
import type { PlanDay } from "../../../core/load/plan-load.ts";
import { csvText } from "../plots/csv-text.ts";

/** Columns of the file. Quantiles are those of the band that is shown; what it does not show is left empty. */
export const YEAR_COLUMNS = [
  "date",
  "kind",
  "box_day",
  "chart_day",
  "new_cards",
  "cards_mean",
  "cards_sd",
  "cards_q05",
  "cards_q95",
  "misses_mean",
  "minutes_mean",
  "minutes_sd",
  "minutes_q05",
  "minutes_q95",
] as const;

/** The load of a year on `chart`. */
export const yearCsv = (days: readonly PlanDay[], chart: Chart): string =>
  csvText(
    YEAR_COLUMNS,
    days.map(({ date, kind, day, newCards, reviews, misses, minutes }) => [
      date,
      kind,
      day,
      day === null ? null : chartDay(chart, day),
      newCards,
      reviews.mean,
      reviews.sd,
      reviews.quantiles[0] ?? null,
      reviews.quantiles[1] ?? null,
      misses,
      minutes.mean,
      minutes.sd,
      minutes.quantiles[0] ?? null,
      minutes.quantiles[1] ?? null,
    ]),
  );
