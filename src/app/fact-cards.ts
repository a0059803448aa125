// The cards of a fact: made for the angles that are chosen, in the box or out of it.
import { cardId } from "../core/cards/cards.ts";
import type { Angle, Fact } from "../core/facts/fact.ts";
import { bringBackCards, stockCards, withdrawCards } from "./box-cards.ts";
import type { CardRecord, Context, Session } from "./ports.ts";

/** Makes the cards of new angles, takes those given up out of the box, and puts those chosen again back. */
export async function followAngles(
  context: Context,
  session: Session,
  before: Fact,
  after: Fact,
  cards: readonly CardRecord[],
): Promise<void> {
  const has = new Set(cards.map((card) => card.angle));
  await makeCards(
    session,
    after.angles.filter((angle) => !has.has(angle)).map((angle) => ({ fact: after, angle })),
  );
  const dropped = cards.filter((card) => !after.angles.includes(card.angle)).map((card) => card.id);
  await withdrawCards(context, session, dropped, "angle");
  const again = cards.filter((card) => after.angles.includes(card.angle) && !before.angles.includes(card.angle));
  await bringBackCards(
    context,
    session,
    again.map((card) => card.id),
    "angle",
  );
}

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
