// Taking a change of chart back: everything is as if it had not happened, as long as nothing was built on it.
import { chartNow } from "../core/box/chart-timeline.ts";
import type { ChartEntry, TakeBackEntry } from "../core/log/entry.ts";
import { chartsOf } from "./charts.ts";
import type { BoxRecord, Session } from "./ports.ts";
import { changePlacements, replayPlacements } from "./replay.ts";

/**
 * Appends the entry that takes a change of chart back, and lets the box and its cards follow; or says why the change
 * has to stand. Cost: the entries of every card that is in the box.
 */
export async function takeBackChart(
  session: Session,
  box: BoxRecord,
  change: ChartEntry,
  entry: TakeBackEntry,
): Promise<string | null> {
  const { boxes } = session;
  if (await boxes.chartChangedSince(box.id, change.id)) {
    return "The chart has been changed again since. Take that back first.";
  }
  if (await boxes.cardsTouchedSince(box.id, change.id)) {
    return "Cards have been asked or moved since. Change the chart again instead.";
  }
  await boxes.appendEntries([entry]);
  const charts = await chartsOf(session, box);
  await boxes.saveBox({ ...box, chart: chartNow(charts) });
  await changePlacements(session, box, (batch) => replayPlacements(session, box, charts, batch));
  return null;
}
