// The charts of a box over time, as its log has them.
import { type ChartTimeline, chartTimeline } from "../core/box/chart-timeline.ts";
import type { BoxRecord, Session } from "./ports.ts";

/** The chart with which the box was set up, and the changes that stand. Cost: entries that are about no card. */
export async function chartsOf({ boxes }: Session, box: BoxRecord): Promise<ChartTimeline> {
  const entries = await boxes.entriesOfKind(box.id, ["set-up", "chart"]);
  return chartTimeline(entries, await boxes.takenBack(entries.map((entry) => entry.id)));
}
