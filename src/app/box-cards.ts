// Cards going into and out of the box.
import { applyEntry, FRESH_CARD } from "../core/box/placement.ts";
import type { CardId } from "../core/cards/cards.ts";
import type { BringBackEntry, CardLogEntry, WithdrawEntry } from "../core/log/entry.ts";
import { hash32 } from "../core/random.ts";
import { today } from "./days.ts";
import { entryIds } from "./entry-ids.ts";
import { FailureError } from "./failure.ts";
import type { BoxRecord, CardRecord, Context, PlacementRecord, Session } from "./ports.ts";

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
  changeCards(context, session, cards, async (placements) =>
    placements
      .filter(({ state }) => state.place.kind !== "withdrawn")
      .map((placement) => ({ placement, change: { kind: "withdraw", reason } })),
  );

/** Puts cards back that were taken out for this reason and for no later one; their facts are asked from these angles. */
export const bringBackCards = (
  context: Context,
  session: Session,
  cards: readonly CardId[],
  reason: WithdrawEntry["reason"],
): Promise<void> =>
  changeCards(context, session, cards, async (placements, box) => {
    const out = placements.filter(({ state }) => state.place.kind === "withdrawn");
    const ids = out.map(({ card }) => card);
    const { entries, takenBack } = await session.boxes.entriesOfCards(box.id, ids);
    const reasons = new Map<CardId, WithdrawEntry["reason"]>();
    for (const one of entries) if (one.kind === "withdraw" && !takenBack.has(one.id)) reasons.set(one.card, one.reason);
    return out
      .filter(({ card }) => reasons.get(card) === reason)
      .map((placement) => ({ placement, change: { kind: "bring-back" } }));
  });

/** What happens to a card that lies in the box. */
interface CardChange {
  readonly placement: PlacementRecord;
  readonly change: Pick<WithdrawEntry, "kind" | "reason"> | Pick<BringBackEntry, "kind">;
}

/**
 * Records what `choose` makes of those cards that are in the box. The entries are made here, each about another card
 * and all newer than the log: the places follow by one step.
 */
async function changeCards(
  context: Context,
  session: Session,
  cards: readonly CardId[],
  choose: (placements: readonly PlacementRecord[], box: BoxRecord) => Promise<readonly CardChange[]>,
): Promise<void> {
  const box = cards.length > 0 ? await session.boxes.box() : null;
  if (!box) return;
  const chosen = await choose(await session.boxes.placements(box.id, cards), box);
  if (chosen.length === 0) return;
  const nextId = await entryIds(context, session, box.id);
  const { day } = await today(context, session, box);
  const at = context.clock();
  const made = chosen.map(({ placement, change }) => {
    const entry: CardLogEntry = { id: nextId(), box: box.id, at, card: placement.card, day, ...change };
    const { state, ignored } = applyEntry(box.chart, placement.state, entry);
    if (ignored !== null) throw new FailureError("conflict", `The box did not take the change: ${ignored}.`);
    return { entry, placement: { ...placement, state } };
  });
  await session.boxes.appendEntries(made.map(({ entry }) => entry));
  await session.boxes.savePlacements(
    box.id,
    made.map(({ placement }) => placement),
  );
}
