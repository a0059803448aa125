// Cards going into and out of the box.
import { FRESH_CARD } from "../core/box/placement.ts";
import type { CardId } from "../core/cards/cards.ts";
import type { WithdrawEntry } from "../core/log/entry.ts";
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
export const withdrawCards = (
  context: Context,
  session: Session,
  cards: readonly CardId[],
  reason: WithdrawEntry["reason"],
): Promise<void> =>
  changeCards(context, session, cards, async (placement, base) =>
    placement.state.place.kind === "withdrawn" ? null : { ...base, kind: "withdraw", reason },
  );

/** Puts cards back that were taken out for this reason and for no later one. */
export const bringBackCards = (
  context: Context,
  session: Session,
  cards: readonly CardId[],
  reason: WithdrawEntry["reason"],
): Promise<void> =>
  changeCards(context, session, cards, async (placement, base) => {
    if (placement.state.place.kind !== "withdrawn") return null;
    const { entries, takenBack } = await session.boxes.entriesOfCards(base.box, [placement.card]);
    const last = entries.filter((entry) => entry.kind === "withdraw" && !takenBack.has(entry.id)).at(-1);
    return last?.kind === "withdraw" && last.reason === reason ? { ...base, kind: "bring-back" } : null;
  });

/** What every entry about a card has. */
type EntryBase = Pick<WithdrawEntry, "id" | "box" | "at" | "card" | "day">;

/**
 * Records what `change` makes of each card that is in the box; nothing for null. These entries are made
 * here and must be taken: otherwise nothing of the transaction stands.
 */
async function changeCards(
  context: Context,
  session: Session,
  cards: readonly CardId[],
  change: (placement: PlacementRecord, base: EntryBase) => Promise<SentEntry | null>,
): Promise<void> {
  const box = await session.boxes.box();
  if (!box || cards.length === 0) return;
  const nextId = await entryIds(context, session, box.id);
  const { day } = await today(context, session, box);
  const at = context.clock();
  for (const placement of await session.boxes.placements(box.id, cards)) {
    const entry = await change(placement, { id: nextId(), box: box.id, at, card: placement.card, day });
    const [receipt] = entry ? await recordInside(context, session, box, [entry]) : [];
    if (receipt && receipt.status !== "saved") {
      throw new FailureError("conflict", receipt.reason ?? "The box did not take the change.");
    }
  }
}
