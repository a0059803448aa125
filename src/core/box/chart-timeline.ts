// Which chart a box goes by, and has gone by.
import type { BoxDay, Chart } from "../chart/chart.ts";
import { type ChartEntry, inLogOrder, type LogEntry, type SetUpEntry } from "../log/entry.ts";
import type { EntryId } from "../log/entry-id.ts";

/** The charts of a box over time. */
export interface ChartTimeline {
  /** The chart with which the box was set up. */
  readonly first: Chart;
  /** Changes of chart in log order, those taken back left out. */
  readonly changes: readonly ChartEntry[];
}

/**
 * The charts of a box from its log, in whatever order the entries come; only set-up and chart entries are looked at.
 * A log without a set-up is a `RangeError`.
 */
export function chartTimeline(entries: Iterable<LogEntry>, takenBack: ReadonlySet<EntryId>): ChartTimeline {
  const own = inLogOrder([...entries].filter((entry) => entry.kind === "set-up" || entry.kind === "chart"));
  const setUp = own.find((entry): entry is SetUpEntry => entry.kind === "set-up");
  if (!setUp) throw new RangeError("the log of a box without its set-up");
  const stands = (entry: LogEntry): entry is ChartEntry => entry.kind === "chart" && !takenBack.has(entry.id);
  return { first: setUp.chart, changes: own.filter(stands) };
}

/** The chart after so many of the changes. */
export const chartAfter = ({ first, changes }: ChartTimeline, count: number): Chart =>
  changes[count - 1]?.chart ?? first;

/** The chart that the box goes by now. */
export const chartNow = (charts: ChartTimeline): Chart => chartAfter(charts, charts.changes.length);

/** The chart by which a sitting goes: the one in force when it was begun. */
export const chartOfSitting = (charts: ChartTimeline, sitting: EntryId): Chart =>
  charts.changes.findLast(({ id }) => id < sitting)?.chart ?? charts.first;

/** The chart that was, or is, in force on a box day. */
export const chartOnDay = (charts: ChartTimeline, day: BoxDay): Chart =>
  charts.changes.findLast((change) => change.day <= day)?.chart ?? charts.first;
