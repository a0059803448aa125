// What a sitting will ask, in order. The plan is worked out, never stored: from the same cards and the
// same seed it comes out the same, before and after a crash, on every machine.
import type { CardId } from "../cards/cards.ts";
import { keepApart } from "../cards/keep-apart.ts";
import type { BoxDay } from "../chart/chart.ts";
import { groupBy } from "../lists.ts";
import type { EntryId } from "../log/entry-id.ts";
import { shuffleByKey } from "../random.ts";

/** A card and the fact it was made from. */
export interface CardRef {
  readonly card: CardId;
  readonly fact: string;
  /** It was taken out of the box since it was visited: it is not asked again in the second pass. */
  readonly out?: true;
}

/** A card that is due, and where it lies. */
export interface DueCard extends CardRef {
  readonly compartment: number;
  readonly bundle: number;
}

/** The cards of one bundle, in the order in which they are asked. */
export interface Pile {
  readonly compartment: number;
  readonly bundle: number;
  readonly cards: readonly CardRef[];
}

/** Everything a sitting will ask: piles from the highest compartment down, then the new cards. */
export interface SittingPlan {
  readonly sitting: EntryId;
  readonly day: BoxDay;
  readonly piles: readonly Pile[];
  readonly newCards: readonly CardRef[];
}

/**
 * Lays out a sitting. `due` are the cards to be visited, those already asked in this sitting included;
 * `fresh` are the new cards chosen for it (see `chooseNewCards`). Within a pile the order is shuffled by
 * the sitting's own id, with cards of one fact kept apart.
 */
export function planSitting(options: {
  readonly sitting: EntryId;
  readonly day: BoxDay;
  readonly due: readonly DueCard[];
  readonly fresh: readonly CardRef[];
}): SittingPlan {
  const { sitting, day, due, fresh } = options;
  const piles = groupBy(due, (card) => `${card.compartment}/${card.bundle}`);
  const ordered = [...piles.values()]
    .map((cards) => ({
      compartment: cards[0]?.compartment ?? 0,
      bundle: cards[0]?.bundle ?? 0,
      cards: mixed(cards, sitting),
    }))
    .sort((a, b) => b.compartment - a.compartment || a.bundle - b.bundle);
  return { sitting, day, piles: ordered, newCards: mixed(fresh, sitting) };
}

/**
 * Takes `count` new cards from the stock, which comes in its shuffled order. Cards of facts that have
 * a card in `busy` (introduced on this day already) or in the batch wait, where the stock allows it.
 */
export function chooseNewCards<T extends CardRef>(
  stock: readonly T[],
  count: number,
  busy: ReadonlySet<string>,
): readonly T[] {
  const facts = new Set(busy);
  const chosen: T[] = [];
  const passedOver: T[] = [];
  for (const card of stock) {
    if (chosen.length >= count) break;
    if (facts.has(card.fact)) passedOver.push(card);
    else {
      facts.add(card.fact);
      chosen.push(card);
    }
  }
  return [...chosen, ...passedOver.slice(0, Math.max(0, count - chosen.length))];
}

const mixed = (cards: readonly CardRef[], seed: string): readonly CardRef[] =>
  keepApart(
    shuffleByKey(cards, seed, (card) => card.card).map(({ card, fact, out }) => ({
      card,
      fact,
      ...(out ? { out } : {}),
    })),
    (card) => card.fact,
  );
