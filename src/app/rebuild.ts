// Placement is a cache. This works it out again from the log alone and says where the two differ.
import { type ChartTimeline, chartNow } from "../core/box/chart-timeline.ts";
import { batches } from "../core/lists.ts";
import { tallySittings } from "../core/sitting/sitting-tally.ts";
import { stockPlacement } from "./box-cards.ts";
import { chartsOf } from "./charts.ts";
import { found } from "./failure.ts";
import type { BoxRecord, CardRecord, Context, Session } from "./ports.ts";
import { replayPlacements } from "./replay.ts";
import { boxFrom } from "./set-up.ts";

/** One card or sitting whose cached state was not what the log says. */
export interface Difference {
  readonly what: "card" | "sitting" | "box";
  readonly id: string;
  readonly cached: unknown;
  readonly replayed: unknown;
}

/** What a rebuild found. */
export interface RebuildReport {
  readonly entries: number;
  readonly cards: number;
  readonly sittings: number;
  readonly differences: readonly Difference[];
}

/** Replays the log, replaces every cached state that differs, and reports the differences. */
export const rebuild = (context: Context): Promise<RebuildReport> =>
  context.store.write(async (session) => {
    const box = found(await session.boxes.box(), "box");
    const charts = await chartsOf(session, box);
    const settings = await rebuildBox(session, box, charts);
    const cards = await rebuildCards(session, box, charts);
    const sittings = await rebuildSittings(session, box);
    return {
      entries: await session.boxes.countEntries(box.id),
      cards: cards.count,
      sittings: sittings.count,
      differences: [...settings, ...cards.differences, ...sittings.differences],
    };
  });

async function rebuildBox({ boxes }: Session, box: BoxRecord, charts: ChartTimeline): Promise<readonly Difference[]> {
  let replayed: BoxRecord = box;
  for (const entry of await boxes.entriesOfKind(box.id, ["set-up", "settings"])) {
    if (entry.kind === "set-up") replayed = boxFrom(entry);
    if (entry.kind === "settings") replayed = { ...replayed, calendar: entry.calendar, newPerDay: entry.newPerDay };
  }
  replayed = { ...replayed, chart: chartNow(charts) };
  if (same(box, replayed)) return [];
  await boxes.saveBox(replayed);
  return [{ what: "box", id: box.id, cached: box, replayed }];
}

async function rebuildCards(session: Session, box: BoxRecord, charts: ChartTimeline) {
  const differences: Difference[] = [];
  let count = 0;
  for (const subject of await session.boxes.subjectsInBox(box.id)) {
    for (const cards of batches(await session.library.cardsOfSubject(subject), 500)) {
      count += cards.length;
      differences.push(...(await rebuildBatch(session, box, charts, cards)));
    }
  }
  return { count, differences };
}

/** A card that was never placed at all is a difference too: it belongs in the stock. */
async function rebuildBatch(
  session: Session,
  box: BoxRecord,
  charts: ChartTimeline,
  cards: readonly CardRecord[],
): Promise<readonly Difference[]> {
  const { boxes } = session;
  const ids = cards.map((card) => card.id);
  const placed = new Map((await boxes.placements(box.id, ids)).map((one) => [one.card, one]));
  const fresh = cards.map((card) => stockPlacement(box, card));
  const differences: Difference[] = [];
  for (const replayed of await replayPlacements(session, box, charts, fresh)) {
    const cached = placed.get(replayed.card);
    if (cached && same(cached, replayed)) continue;
    differences.push({ what: "card", id: replayed.card, cached: cached ?? null, replayed });
    if (cached) await boxes.savePlacement(box.id, replayed);
    else await boxes.addPlacements(box.id, [replayed]);
  }
  return differences;
}

/** Counts every sitting again from the log. */
export async function rebuildSittings(
  { boxes }: Session,
  box: BoxRecord,
): Promise<{ readonly count: number; readonly differences: readonly Difference[] }> {
  const begun = await boxes.entriesOfKind(box.id, ["begin"]);
  const differences: Difference[] = [];
  for (const { id } of begun) {
    const cached = await boxes.sitting(id);
    const [replayed] = tallySittings(await boxes.entriesOfSitting(id));
    if (!replayed || same(cached, replayed)) continue;
    differences.push({ what: "sitting", id, cached, replayed });
    await boxes.saveSitting(box.id, replayed);
  }
  return { count: begun.length, differences };
}

/** Equal as data, whatever the order of the properties. */
const same = (a: unknown, b: unknown): boolean => stable(a) === stable(b);

const stable = (value: unknown): string =>
  JSON.stringify(value, (_key, part: unknown) =>
    part !== null && typeof part === "object" && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );
