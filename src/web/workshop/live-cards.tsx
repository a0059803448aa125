// The cards of the fact that is being written.
import type { Card } from "../../core/cards/cards.ts";
import { CardPair } from "../cards/card-pair.tsx";
import { counted } from "../words.ts";

/** Cards as they will look, or why there are none yet. */
export function LiveCards({ cards, problem }: { readonly cards: readonly Card[]; readonly problem: string | null }) {
  return (
    <section className="live-cards" aria-label="Its cards">
      <h3>{cards.length === 0 ? "Its cards" : counted(cards.length, "card")}</h3>
      {cards.length === 0 ? (
        <p className="card-blank">{problem ?? "Tick at least one way to ask it."}</p>
      ) : (
        cards.map((card) => <CardPair key={card.id} card={card} />)
      )}
    </section>
  );
}
