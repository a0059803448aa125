// Cards going into and out of the box.
import { FRESH_CARD } from "../core/box/placement.ts";
import type { CardId } from "../core/cards/cards.ts";
import type { BringBackEntry, WithdrawEntry } from "../core/log/entry.ts";
import { hash32 } from "../core/random.ts";
import { today } from "./days.ts";
import { entryIds } from "./entry-ids.ts";
import { FailureError } from "./failure.ts";
import type { BoxRecord, CardRecord, Context, PlacementRecord, Session } from "./ports.ts";
import { recordInside, type SentEntry } from "./record.ts";

/** A card's place before anything has happened to it. */
export const stockPlacement = (
  box: BoxRecord,
  card: { readonly id: CardId; readonly fact: string },
): PlacementRecord => ({
  card: card.id,
  fact: card.fact,
  state: FRESH_CARD,
  stockKey: hash32(box.seed, card.id),
});

/** Puts new cards into the stock of the box, if their subject is in it. */
export async function stockCards({ boxes }: Session, cards: readonly CardRecord[]): Promise<void> {
  const box = await boxes.box();
  if (!box) return;
  const inside = new Set(await boxes.subjectsInBox(box.id));
  const stocked = cards.filter((card) => inside.has(card.subject)).map((card) => stockPlacement(box, card));
  await boxes.addPlacements(box.id, stocked);
}

/** Takes cards out of the box, those already out excepted. */
export async function withdrawCards(
  context: Context,
  session: Session,
  cards: readonly CardId[],
  reason: WithdrawEntry["reason"],
): Promise<void> {
  const box = await session.boxes.box();
  if (!box || cards.length === 0) return;
  const inside = (await session.boxes.placements(box.id, cards)).filter((one) => one.state.place.kind !== "withdrawn");
  const nextId = await entryIds(context, session, box.id);
  const { day } = await today(context, session, box);
  const at = context.clock();
  const entries = inside.map(
    ({ card }): WithdrawEntry => ({ id: nextId(), box: box.id, at, kind: "withdraw", card, day, reason }),
  );
  await recordAll(context, session, box, entries);
}

/** Puts cards back that were taken out for this reason and for no later one. */
export async function bringBackCards(
  context: Context,
  session: Session,
  cards: readonly CardId[],
  reason: WithdrawEntry["reason"],
): Promise<void> {
  const box = await session.boxes.box();
  if (!box || cards.length === 0) return;
  const outside = (await session.boxes.placements(box.id, cards)).filter((one) => one.state.place.kind === "withdrawn");
  const nextId = await entryIds(context, session, box.id);
  const { day } = await today(context, session, box);
  const at = context.clock();
  const entries: BringBackEntry[] = [];
  for (const { card } of outside) {
    const { entries: own, takenBack } = await session.boxes.entriesOfCards(box.id, [card]);
    const last = own.filter((entry) => entry.kind === "withdraw" && !takenBack.has(entry.id)).at(-1);
    if (last?.kind === "withdraw" && last.reason === reason) {
      entries.push({ id: nextId(), box: box.id, at, kind: "bring-back", card, day });
    }
  }
  await recordAll(context, session, box, entries);
}

/** These entries are made here and must be taken; otherwise nothing of the transaction stands. */
async function recordAll(
  context: Context,
  session: Session,
  box: BoxRecord,
  entries: readonly SentEntry[],
): Promise<void> {
  const refused = (await recordInside(context, session, box, entries)).find((receipt) => receipt.status !== "saved");
  if (refused) throw new FailureError("conflict", refused.reason ?? "The box did not take the change.");
}
