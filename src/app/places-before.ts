// Where the cards of a box lay before a moment of its log: as they lie now, save those that were touched since.
import type { CardId } from "../core/cards/cards.ts";
import type { BoxDay } from "../core/chart/chart.ts";
import { batches } from "../core/lists.ts";
import { type EntryId, isEntryId } from "../core/log/entry-id.ts";
import type { CardRef } from "../core/sitting/plan.ts";
import { stockPlacement } from "./box-cards.ts";
import { chartsOf } from "./charts.ts";
import type { Boxes, BoxRecord, PlacementRecord, Session } from "./ports.ts";
import { REPLAY_BATCH, replayPlacements } from "./replay.ts";

/** Where the cards of a box lie. */
export type Places = Pick<Boxes, "firstDue" | "dueCards" | "stock" | "placement">;

/** A card that was touched since, as it is and as it was. */
interface Touched {
  readonly now: PlacementRecord;
  readonly before: PlacementRecord;
}

/** Answers what storage answers about places, for a moment of the log. Cost: the entries of the cards touched since, or of all if the chart was changed. */
export async function placesBefore(session: Session, box: BoxRecord, moment: EntryId): Promise<Places> {
  const { boxes } = session;
  const touched = new Map<CardId, Touched>();
  const charts = await chartsOf(session, box);
  for (const batch of batches(await cardsChangedSince(session, box, moment), REPLAY_BATCH)) {
    const now = await boxes.placements(box.id, batch);
    const before = new Map((await replayPlacements(session, box, charts, now, moment)).map((one) => [one.card, one]));
    for (const one of now) touched.set(one.card, { now: one, before: before.get(one.card) ?? one });
  }
  return {
    placement: async (of, card) => touched.get(card)?.before ?? boxes.placement(of, card),
    dueCards: async (of, day) => [
      ...(await boxes.dueCards(of, day)).filter(({ card }) => !touched.has(card)),
      ...inCompartments(touched.values()).filter(({ due }) => due <= day),
    ],
    firstDue: async (of) => firstDueOf(await boxes.waiting(of), touched),
    stock: (of, limit) => stockBefore(boxes, { ...box, id: of }, limit, touched, moment),
  };
}

async function cardsChangedSince({ boxes }: Session, box: BoxRecord, moment: EntryId): Promise<readonly CardId[]> {
  if (!(await boxes.chartChangedSince(box.id, moment))) return boxes.cardsSince(box.id, moment);
  const all: CardId[] = [];
  for await (const { card } of boxes.eachPlacement(box.id)) all.push(card);
  return all;
}

const inCompartments = (touched: Iterable<Touched>) =>
  [...touched].flatMap(({ before: { card, fact, state } }) =>
    state.place.kind === "compartment" ? [{ card, fact, ...state.place }] : [],
  );

/** The earliest due day, from counts of what lies there now. */
function firstDueOf(
  waiting: Awaited<ReturnType<Boxes["waiting"]>>,
  touched: ReadonlyMap<CardId, Touched>,
): BoxDay | null {
  const counts = new Map<BoxDay, number>();
  const add = (due: BoxDay, count: number): unknown => counts.set(due, (counts.get(due) ?? 0) + count);
  for (const { due, count } of waiting) add(due, count);
  for (const { now } of touched.values()) if (now.state.place.kind === "compartment") add(now.state.place.due, -1);
  for (const { due } of inCompartments(touched.values())) add(due, 1);
  const days = [...counts].filter(([, count]) => count > 0).map(([due]) => due);
  return days.length === 0 ? null : days.reduce((least, due) => Math.min(least, due));
}

/** The stock of then; what came into it later stands behind, since no sheet of that day can have named it. */
async function stockBefore(
  boxes: Pick<Boxes, "stock">,
  box: BoxRecord,
  limit: number,
  touched: ReadonlyMap<CardId, Touched>,
  moment: EntryId,
): Promise<readonly CardRef[]> {
  const back = [...touched.values()].map(({ before }) => before).filter(({ state }) => state.place.kind === "stock");
  for (let read = 2 * limit + touched.size; ; read *= 2) {
    const now = await boxes.stock(box.id, read);
    const rest = now.filter(({ card }) => !touched.has(card));
    const old = rest.filter(({ fact }) => !isMadeAfter(fact, moment));
    if (old.length < limit && now.length === read) continue;
    const inOrder = [...back, ...rest.map(({ card, fact }) => stockPlacement(box, { id: card, fact }))].sort(
      (a, b) =>
        Number(isMadeAfter(a.fact, moment)) - Number(isMadeAfter(b.fact, moment)) ||
        a.stockKey - b.stockKey ||
        (a.card < b.card ? -1 : 1),
    );
    return inOrder.slice(0, limit).map(({ card, fact }) => ({ card, fact }));
  }
}

/** Facts made here carry the time of their making. */
const isMadeAfter = (fact: string, moment: EntryId): boolean => isEntryId(fact) && fact > moment;
