// Cards' places worked out anew, a batch at a time.
import type { ChartTimeline } from "../core/box/chart-timeline.ts";
import { foldCard } from "../core/box/fold-log.ts";
import { groupBy } from "../core/lists.ts";
import type { EntryId } from "../core/log/entry-id.ts";
import type { BoxRecord, PlacementRecord, Session } from "./ports.ts";

/** Placements that are worked out at once. */
export const REPLAY_BATCH = 500;

/** These placements as the log has them, or had them before the entry `until`. */
export async function replayPlacements(
  { boxes }: Session,
  box: BoxRecord,
  charts: ChartTimeline,
  placements: readonly PlacementRecord[],
  until?: EntryId,
): Promise<readonly PlacementRecord[]> {
  const cards = placements.map(({ card }) => card);
  const { entries, takenBack } = await boxes.entriesOfCards(box.id, cards);
  const then = until === undefined ? entries : entries.filter(({ id }) => id < until);
  const own = groupBy(then, (entry) => entry.card);
  return placements.map((one) => ({ ...one, state: foldCard(charts, own.get(one.card) ?? [], takenBack, until) }));
}

/**
 * Goes through every card of a box that a chart places: those in compartments and those withdrawn. What `change` makes
 * of a batch is saved; resolves to how many that were.
 */
export async function changePlacements(
  { boxes }: Session,
  box: BoxRecord,
  change: (batch: readonly PlacementRecord[]) => readonly PlacementRecord[] | Promise<readonly PlacementRecord[]>,
): Promise<number> {
  let saved = 0;
  let batch: PlacementRecord[] = [];
  const save = async (): Promise<void> => {
    const changed = await change(batch);
    await boxes.savePlacements(box.id, changed);
    saved += changed.length;
    batch = [];
  };
  for await (const placement of boxes.eachPlacement(box.id)) {
    const { kind } = placement.state.place;
    if (kind === "compartment" || kind === "withdrawn") batch.push(placement);
    if (batch.length >= REPLAY_BATCH) await save();
  }
  await save();
  return saved;
}
