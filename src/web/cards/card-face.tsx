// A card as it lies on the table: paper, in the proportions of A7, one side up.
import { useState } from "react";
import { type Card, type CardSide, sideText } from "../../core/cards/cards.ts";
import { usePictureSource } from "./picture-source.ts";
import { SideText, textSize } from "./side-text.tsx";

interface FaceProps {
  readonly card: Card;
  /** Whether the side has just been turned up. */
  readonly turning?: boolean;
}

/** The prompt side. */
export function PromptFace({ card }: FaceProps) {
  const { prompt } = card;
  return (
    <article className="card" data-side="prompt" aria-label="Prompt side">
      <div className="card-body">
        <Words side={prompt} />
        {prompt.picture ? <Picture hash={prompt.picture} words="The prompt: a picture to be named" /> : null}
      </div>
    </article>
  );
}

/** The answer side: the prompt small, the answer large, then picture, story, note and source. */
export function AnswerFace({ card, turning = false }: FaceProps) {
  const { prompt, answer } = card;
  const inPlace = answer.text.some((part) => part.role === "answer");
  const picture = answer.picture ?? prompt.picture;
  return (
    <article className="card" data-side="answer" data-turning={turning ? "" : undefined} aria-label="Answer side">
      <div className="card-body">
        {inPlace || prompt.text.length === 0 ? null : (
          <p className="card-echo" dir="auto">
            <SideText side={prompt} />
          </p>
        )}
        <Words side={answer} />
        {picture ? <Picture hash={picture} words={pictureWords(card)} /> : null}
        <Extras card={card} />
      </div>
    </article>
  );
}

/** A picture, or a quiet frame where it cannot be shown (yet). */
function Picture({ hash, words }: { readonly hash: string; readonly words: string }) {
  const [missing, setMissing] = useState("");
  const source = usePictureSource();
  const url = source.urlOf(hash);
  if (url === null || missing === url) return <span className="card-picture-missing">{source.missing}</span>;
  return <img className="card-picture" src={url} alt={words} onError={() => setMissing(url)} />;
}

function Words({ side }: { readonly side: CardSide }) {
  if (side.text.length === 0) return null;
  return (
    <p className="card-words" dir="auto" data-size={textSize(side)}>
      <SideText side={side} />
    </p>
  );
}

function Extras({ card }: { readonly card: Card }) {
  if (!card.story && !card.note && !card.source) return null;
  return (
    <div className="card-extras">
      {card.story ? (
        <p className="card-story" dir="auto">
          {card.story}
        </p>
      ) : null}
      {card.note ? <p dir="auto">{card.note}</p> : null}
      {card.source ? (
        <p className="card-source" dir="auto">
          Source: {card.source}
        </p>
      ) : null}
    </div>
  );
}

/** What a picture on the answer side shows, in words already on the card. */
const pictureWords = (card: Card): string => sideText(card.answer) || sideText(card.prompt) || "Picture";
