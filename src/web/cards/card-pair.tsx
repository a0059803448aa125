// Both sides of a card side by side, as in the workshop and on a card's own page.
import type { Card } from "../../core/cards/cards.ts";
import { angleName } from "../words.ts";
import { AnswerFace, PromptFace } from "./card-face.tsx";
import { SpeakButton } from "./speak-button.tsx";

/** A card laid open. */
export function CardPair({ card, caption = true }: { readonly card: Card; readonly caption?: boolean }) {
  return (
    <figure className="card-pair">
      {caption ? <figcaption>{angleName(card.angle)}</figcaption> : null}
      <div className="card-pair-sides">
        <PromptFace card={card} />
        <AnswerFace card={card} />
      </div>
      <span className="row">
        <SpeakButton side={card.prompt} language={card.language} label="Hear the prompt" />
        <SpeakButton side={card.answer} language={card.language} label="Hear the answer" />
      </span>
    </figure>
  );
}
