// Recording what happened: entries go into the log, and the cached places follow in the same transaction.
import { applyEntry, foldCard } from "../core/box/placement.ts";
import { type CardLogEntry, isCardEntry, type LogEntry, type TakeBackEntry } from "../core/log/entry.ts";
import { entryTime } from "../core/log/entry-id.ts";
import { tallyEntry, tallySittings } from "../core/sitting/sitting-tally.ts";
import { FailureError, found } from "./failure.ts";
import type { BoxRecord, Context, PlacementRecord, Session } from "./ports.ts";
import type { Receipt } from "./views.ts";

/** Entries that a page or another program may send. */
export type SentEntry = Exclude<LogEntry, { kind: "set-up" | "settings" | "begin" }>;

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
  for (const entry of entries) receipts.push(await recordOne(context, session, box, entry));
  return receipts;
}

async function recordOne(context: Context, session: Session, box: BoxRecord, entry: SentEntry): Promise<Receipt> {
  if (await session.boxes.entry(entry.id)) return { id: entry.id, status: "known", reason: null };
  const newest = await session.boxes.lastEntryId(box.id);
  const inOrder = newest === null || entry.id > newest;
  const reason =
    entry.box !== box.id
      ? "This entry belongs to another box."
      : entryTime(entry.id) > context.clock() + DAY_MS
        ? "The clock of this device is more than a day ahead. Set it right and try again."
        : await place(session, box, entry, inOrder);
  if (reason !== null) return { id: entry.id, status: "refused", reason };
  return { id: entry.id, status: "saved", reason: null };
}

/** Appends the entry and lets places and sittings follow; or says why it cannot be right. */
async function place(session: Session, box: BoxRecord, entry: SentEntry, inOrder: boolean): Promise<string | null> {
  if (entry.kind === "take-back") return takeBack(session, box, entry, inOrder);
  if (entry.kind === "finish") {
    if (!(await session.boxes.sitting(entry.sitting))) return "There is no such sitting.";
    await session.boxes.appendEntries([entry]);
    await followSitting(session, box, entry, false, inOrder);
    return null;
  }
  return placeCard(session, box, entry, inOrder);
}

async function placeCard(
  session: Session,
  box: BoxRecord,
  entry: CardLogEntry,
  inOrder: boolean,
): Promise<string | null> {
  const placement = await session.boxes.placement(box.id, entry.card);
  if (!placement) return "This card is not in the box.";
  if ("sitting" in entry) {
    const sitting = await session.boxes.sitting(entry.sitting);
    if (!sitting) return "There is no such sitting.";
    if (sitting.day !== entry.day) return "The day of this answer is not the day of its sitting.";
  }
  if (inOrder) {
    const { state, ignored } = applyEntry(box.chart, placement.state, entry);
    if (ignored !== null) return REFUSALS[ignored];
    await session.boxes.appendEntries([entry]);
    await session.boxes.savePlacement(box.id, { ...placement, state });
  } else {
    await session.boxes.appendEntries([entry]);
    await refold(session, box, placement);
  }
  await followSitting(session, box, entry, false, inOrder);
  return null;
}

const REFUSALS = {
  "asked-already": "This card has been asked already in this sitting; its first answer stands.",
  "not-due": "This card is not due yet.",
  "not-in-box": "This card is not in a compartment.",
  "not-in-stock": "This card has been introduced already.",
  "no-such-place": "The box has no such place.",
} as const;

async function takeBack(
  session: Session,
  box: BoxRecord,
  entry: TakeBackEntry,
  inOrder: boolean,
): Promise<string | null> {
  const target = await session.boxes.entry(entry.entry);
  if (!target || target.box !== box.id) return "What should be taken back is not in the log.";
  if (!isCardEntry(target)) return "Only what happened to a card can be taken back.";
  if ((await session.boxes.takenBack([target.id])).size > 0) return "This has been taken back already.";
  const placement = await session.boxes.placement(box.id, target.card);
  if (!placement) return "This card is not in the box.";
  await session.boxes.appendEntries([entry]);
  await refold(session, box, placement);
  await followSitting(session, box, target, true, inOrder);
  return null;
}

/** Works the card's place out again from its part of the log. */
async function refold({ boxes }: Session, box: BoxRecord, placement: PlacementRecord): Promise<void> {
  const { entries, takenBack } = await boxes.entriesOfCards(box.id, [placement.card]);
  await boxes.savePlacement(box.id, { ...placement, state: foldCard(box.chart, entries, takenBack) });
}

async function followSitting(
  { boxes }: Session,
  box: BoxRecord,
  entry: LogEntry,
  taken: boolean,
  inOrder: boolean,
): Promise<void> {
  if (!("sitting" in entry)) return;
  const sitting = await boxes.sitting(entry.sitting);
  if (!sitting) throw new FailureError("not-found", "There is no such sitting.");
  if (inOrder) {
    await boxes.saveSitting(box.id, tallyEntry(sitting, entry, taken));
    return;
  }
  // Out of order: count the sitting again.
  const [tally] = tallySittings(await boxes.entriesOfSitting(sitting.id));
  if (tally) await boxes.saveSitting(box.id, tally);
}
