// The cards of a fact: made for the angles that are chosen, in the box or out of it.
import { type CardId, cardId } from "../core/cards/cards.ts";
import type { Angle, Fact } from "../core/facts/fact.ts";
import { bringBackCards, stockCards, withdrawCards } from "./box-cards.ts";
import type { CardRecord, Context, Session } from "./ports.ts";

/** A fact of which angles may have been chosen or given up, with the cards that it has. */
export interface AngleChange {
  readonly before: Fact;
  readonly after: Fact;
  readonly cards: readonly CardRecord[];
}

/** Makes the cards of new angles, takes those given up out of the box, and puts those chosen again back. */
export async function followAngles(context: Context, session: Session, changes: readonly AngleChange[]): Promise<void> {
  const fresh = changes.flatMap(({ after, cards }) => {
    const has = new Set(cards.map((card) => card.angle));
    return after.angles.filter((angle) => !has.has(angle)).map((angle) => ({ fact: after, angle }));
  });
  await makeCards(session, fresh);
  const dropped = changes.flatMap(({ after, cards }) => cards.filter(({ angle }) => !after.angles.includes(angle)));
  await withdrawCards(context, session, idsOf(dropped), "angle");
  const again = changes.flatMap(({ before, after, cards }) =>
    cards.filter(({ angle }) => after.angles.includes(angle) && !before.angles.includes(angle)),
  );
  await bringBackCards(context, session, idsOf(again), "angle");
}

/** The identities of cards. */
export const idsOf = (cards: readonly CardRecord[]): readonly CardId[] => cards.map((card) => card.id);

/** Makes cards and puts them into the stock of the box. */
export async function makeCards(
  session: Session,
  wanted: readonly { readonly fact: Fact; readonly angle: Angle }[],
): Promise<readonly CardRecord[]> {
  if (wanted.length === 0) return [];
  const first = (await session.library.lastCardNumber()) + 1;
  const cards = wanted.map(
    ({ fact, angle }, i): CardRecord => ({
      id: cardId(fact.id, angle),
      number: first + i,
      fact: fact.id,
      subject: fact.subject,
      angle,
    }),
  );
  await session.library.addCards(cards);
  await stockCards(session, cards);
  return cards;
}
