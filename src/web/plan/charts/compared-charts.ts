// Which charts stand side by side.
import type { BoxView } from "../../../app/views.ts";
import { CHART_LIMITS, type Chart } from "../../../core/chart/chart.ts";
import { LEVELLED_CHART, spreadChart } from "../../../core/chart/make-chart.ts";

/** A chart with what it is called here. */
export interface NamedChart {
  readonly name: string;
  readonly chart: Chart;
}

/** One of the charts side by side. */
export interface ComparedChart extends NamedChart {
  /** The same for charts that visit the same bundles on the same days. */
  readonly key: string;
  /** Whether it was designed or picked in this visit, and can be put away. */
  readonly found: boolean;
}

/** Names a chart by what it is. */
export const chartKey = ({ compartments }: Chart): string =>
  compartments.map(({ period, bundles, offset }) => `${period}/${bundles}+${offset}`).join(" ");

/**
 * The charts side by side, each once: the box's own, or that of a new box; what the same periods would cost without
 * bundles and with a tab for every day; the levelled chart; those found in this visit, newest last; and the one that
 * is planned with, wherever it came from.
 */
export function comparedCharts(
  box: Pick<BoxView, "chart"> | null,
  found: readonly NamedChart[],
  planned: Chart,
): readonly ComparedChart[] {
  const own: NamedChart = box
    ? { name: "Your chart", chart: box.chart }
    : { name: "Levelled chart", chart: LEVELLED_CHART };
  const periods = own.chart.compartments.map(({ period }) => period);
  const days = periods.reduce((sum, period) => sum + period, 0);
  const dated = days <= CHART_LIMITS.tabs ? [{ name: "Dated cards", chart: spreadChart(periods, periods) }] : [];
  const known = [
    own,
    { name: "Plain chart", chart: spreadChart(periods) },
    ...dated,
    { name: "Levelled chart", chart: LEVELLED_CHART },
  ];
  const all = [
    ...known.map((one) => ({ ...one, found: false })),
    ...found.map((one) => ({ ...one, found: true })),
    { name: "Planned chart", chart: planned, found: false },
  ].map((one) => ({ ...one, key: chartKey(one.chart) }));
  return all.filter((one, i) => all.findIndex(({ key }) => key === one.key) === i);
}
