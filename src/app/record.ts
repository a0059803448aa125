// Recording what happened: entries go into the log, and the cached places follow in the same transaction.

import { judgeEntry, reckonedFrom } from "../core/box/fold-log.ts";
import { applyEntry } from "../core/box/placement.ts";
import { parseCardId } from "../core/cards/cards.ts";
import { type CardLogEntry, isCardEntry, type LogEntry, type TakeBackEntry } from "../core/log/entry.ts";
import { type EntryId, entryTime } from "../core/log/entry-id.ts";
import { tallyEntry, tallySittings } from "../core/sitting/sitting-tally.ts";
import { chartsOf } from "./charts.ts";
import { found } from "./failure.ts";
import type { BoxRecord, Context, PlacementRecord, Session } from "./ports.ts";
import { replayPlacements } from "./replay.ts";
import { takeBackChart } from "./take-back-chart.ts";
import type { Receipt } from "./views.ts";

/** Entries that a page or another program may send. */
export type SentEntry = Exclude<LogEntry, { kind: "set-up" | "settings" | "chart" | "begin" }>;

const DAY_MS = 86_400_000;

/**
 * Records entries of the learner's box. What has arrived before is answered with `known`, so sending
 * twice is harmless; an entry that cannot be right is refused with a reason and the others go on.
 * Durable when it resolves.
 */
export const recordEntries = (context: Context, entries: readonly SentEntry[]): Promise<readonly Receipt[]> =>
  context.store.write(async (session) => {
    const box = found(await session.boxes.box(), "box");
    return recordInside(context, session, box, entries);
  });

/** As `recordEntries`, inside a transaction that does more. */
export async function recordInside(
  context: Context,
  session: Session,
  box: BoxRecord,
  entries: readonly SentEntry[],
): Promise<readonly Receipt[]> {
  const receipts: Receipt[] = [];
  let current = box;
  for (const entry of entries) {
    receipts.push(await recordOne(context, session, current, entry));
    // What was taken back may have been the chart.
    if (entry.kind === "take-back") current = found(await session.boxes.box(), "box");
  }
  return receipts;
}

async function recordOne(context: Context, session: Session, box: BoxRecord, entry: SentEntry): Promise<Receipt> {
  const { id } = entry;
  if (await session.boxes.entry(id)) return { id, status: "known", reason: null };
  if (entry.box !== box.id) return { id, status: "kept-back", reason: "This answer belongs to another box." };
  const newest = await session.boxes.lastEntryId(box.id);
  if (isTooFarAhead(context, newest, id)) {
    return { id, status: "kept-back", reason: "The clock of this device is more than a day ahead. Set it right." };
  }
  const reason = await place(session, box, entry, newest === null || id > newest);
  return reason === null ? { id, status: "saved", reason } : { id, status: "refused", reason };
}

/**
 * Whether an identity lies more than a day ahead of both the clock and the log. Behind a log that is
 * itself ahead (a clock was wrong once) things must go on, so the log counts as a clock.
 */
export const isTooFarAhead = ({ clock }: Pick<Context, "clock">, newest: EntryId | null, id: EntryId): boolean =>
  entryTime(id) > Math.max(clock(), newest === null ? 0 : entryTime(newest)) + DAY_MS;

/** Appends the entry and lets places and sittings follow; or says why it cannot be right. */
async function place(session: Session, box: BoxRecord, entry: SentEntry, inOrder: boolean): Promise<string | null> {
  if (entry.kind === "take-back") return takeBack(session, box, entry);
  if ("sitting" in entry) {
    const sitting = await session.boxes.sitting(entry.sitting);
    if (!sitting || entry.id < sitting.id) return "There is no such sitting.";
    if ("day" in entry && sitting.day !== entry.day) return "The day of this answer is not the day of its sitting.";
  }
  if (entry.kind !== "finish") return placeCard(session, box, entry, inOrder);
  await session.boxes.appendEntries([entry]);
  await followSitting(session, box, entry, inOrder);
  return null;
}

async function placeCard(
  session: Session,
  box: BoxRecord,
  entry: CardLogEntry,
  inOrder: boolean,
): Promise<string | null> {
  const placement = await session.boxes.placement(box.id, entry.card);
  if (!placement) return "This card is not in the box.";
  if (entry.kind === "bring-back" || entry.kind === "move") {
    const reason = await mayReturn(session, placement);
    if (reason !== null) return reason;
  }
  const next = inOrder && !(await session.boxes.chartChangedSince(box.id, reckonedFrom(entry)));
  const place = next ? placeNext : placeLate;
  const reason = await place(session, box, placement, entry);
  if (reason === null) await followSitting(session, box, entry, inOrder);
  return reason;
}

/** The newest entry of all, by the present chart: the card's place follows by one step. */
async function placeNext(
  { boxes }: Session,
  box: BoxRecord,
  placement: PlacementRecord,
  entry: CardLogEntry,
): Promise<string | null> {
  const { state, ignored } = applyEntry(box.chart, placement.state, entry);
  if (ignored !== null) return REFUSALS[ignored];
  await boxes.appendEntries([entry]);
  await boxes.savePlacement(box.id, { ...placement, state });
  return null;
}

/** An entry from the past, or of a sitting with a past chart: the card's part of the log is read again with it in its place. */
async function placeLate(
  session: Session,
  box: BoxRecord,
  placement: PlacementRecord,
  entry: CardLogEntry,
): Promise<string | null> {
  const { boxes } = session;
  const charts = await chartsOf(session, box);
  const { entries, takenBack } = await boxes.entriesOfCards(box.id, [placement.card]);
  const earlier = entries.filter((one) => one.id < entry.id);
  const { ignored } = judgeEntry(charts, earlier, takenBack, entry);
  if (ignored !== null) return REFUSALS[ignored];
  await boxes.appendEntries([entry]);
  await boxes.savePlacements(box.id, await replayPlacements(session, box, charts, [placement]));
  return null;
}

/** Why an entry does not count, in words. */
export const REFUSALS = {
  "asked-already": "This card has been asked already in this sitting; its first answer stands.",
  "not-due": "This card is not due yet.",
  "not-in-box": "This card is not in a compartment.",
  "not-in-stock": "This card has been introduced already.",
  "no-such-place": "The box has no such place.",
  withdrawn: "This card has been withdrawn from the box.",
} as const;

/** Why a card may not come back into play: its fact was deleted, or its angle is no longer chosen. */
async function mayReturn({ library }: Session, { card, fact }: PlacementRecord): Promise<string | null> {
  const record = await library.fact(fact);
  if (!record || record.deleted) return "The fact of this card was deleted. Bring the fact back first.";
  if (!record.fact.angles.includes(parseCardId(card).angle))
    return "The fact is no longer asked from this angle. Choose the angle again first.";
  return null;
}

async function takeBack(session: Session, box: BoxRecord, entry: TakeBackEntry): Promise<string | null> {
  const { boxes } = session;
  const target = await boxes.entry(entry.entry);
  if (!target || target.box !== box.id) return "What should be taken back is not in the log.";
  if (target.kind !== "chart" && !isCardEntry(target))
    return "Only what happened to a card and a change of chart can be taken back.";
  if ((await boxes.takenBack([target.id])).size > 0) return "This has been taken back already.";
  if (target.kind === "chart") return takeBackChart(session, box, target, entry);
  const placement = await boxes.placement(box.id, target.card);
  if (!placement) return "This card is not in the box.";
  if (target.kind === "withdraw") {
    const reason =
      target.reason === "hand" ? await mayReturn(session, placement) : "This is undone by changing the fact.";
    if (reason !== null) return reason;
  }
  await boxes.appendEntries([entry]);
  const charts = await chartsOf(session, box);
  await boxes.savePlacements(box.id, await replayPlacements(session, box, charts, [placement]));
  await followSitting(session, box, target, false);
  return null;
}

/** The sitting's counts follow: by one step for the newest entry, else from all its entries. */
async function followSitting({ boxes }: Session, box: BoxRecord, entry: LogEntry, inOrder: boolean): Promise<void> {
  if (!("sitting" in entry)) return;
  const sitting = await boxes.sitting(entry.sitting);
  if (!sitting) return;
  const [counted] = inOrder ? [tallyEntry(sitting, entry)] : tallySittings(await boxes.entriesOfSitting(sitting.id));
  if (counted) await boxes.saveSitting(box.id, counted);
}
