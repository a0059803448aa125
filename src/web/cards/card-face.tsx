// A card as it lies on the table: paper, in the proportions of A7, one side up.
import { type Card, type CardSide, sideText } from "../../core/cards/cards.ts";
import { textLanguage } from "../../core/critique/languages.ts";
import { foldText } from "../../core/text/fold-text.ts";
import { formulaRuns } from "../../core/text/formula-runs.ts";
import { CardPicture } from "./card-picture.tsx";
import { CardSound } from "./card-sound.tsx";
import { Formula } from "./formula.tsx";
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
        <Words side={prompt} card={card} />
        {prompt.sound ? <CardSound hash={prompt.sound} /> : null}
        {prompt.picture ? (
          <CardPicture hash={prompt.picture} words={promptPictureWords(card)} cover={prompt.cover} asked />
        ) : null}
      </div>
    </article>
  );
}

/** The answer side: the prompt small, the answer large, then picture, story, note and source. */
export function AnswerFace({ card, turning = false }: FaceProps) {
  const { prompt, answer } = card;
  const inPlace = answer.text.some((part) => part.role === "answer" || part.asked);
  const picture = answer.picture ?? prompt.picture;
  return (
    <article className="card" data-side="answer" data-turning={turning ? "" : undefined} aria-label="Answer side">
      <div className="card-body">
        {inPlace || prompt.text.length === 0 ? null : (
          <p className="card-echo" dir="auto" {...spokenAs(prompt, card)}>
            <SideText side={prompt} />
          </p>
        )}
        <Words side={answer} card={card} />
        {(answer.sound ?? prompt.sound) ? <CardSound hash={answer.sound ?? prompt.sound ?? ""} /> : null}
        {picture ? <CardPicture hash={picture} words={pictureWords(card)} cover={answer.cover} asked={false} /> : null}
        <Extras card={card} />
      </div>
    </article>
  );
}

function Words({ side, card }: { readonly side: CardSide; readonly card: Card }) {
  if (side.text.length === 0) return null;
  return (
    <p className="card-words" dir="auto" data-size={textSize(side)} {...spokenAs(side, card)}>
      <SideText side={side} />
    </p>
  );
}

/** The language in which a side is read out; left to the page where nothing tells. */
function spokenAs(side: CardSide, { language }: Card): { readonly lang?: string } {
  const lang = textLanguage(sideText(side), language);
  return lang === "" ? {} : { lang };
}

function Extras({ card }: { readonly card: Card }) {
  const { story, note, source, why, pictureSource, pictureLicence } = card;
  const picture = [pictureSource, pictureLicence].filter((text) => text !== "").join(", ");
  if (![story, note, source, why, picture].some((text) => text !== "")) return null;
  return (
    <div className="card-extras">
      <Extra text={story} className="card-story" />
      <Extra text={why} className="card-why" />
      <Extra text={note} />
      <Extra text={source === "" ? "" : `Source: ${source}`} className="card-source" />
      <Extra text={picture === "" ? "" : `Picture: ${picture}`} className="card-source" />
    </div>
  );
}

function Extra({ text, className }: { readonly text: string; readonly className?: string }) {
  if (text === "") return null;
  return (
    <p className={className} dir="auto">
      {formulaRuns(text).map((run, i) =>
        run.role === "formula" ? <Formula key={`${i}`} tex={run.text} /> : <span key={`${i}`}>{run.text}</span>,
      )}
    </p>
  );
}

/** What a picture on the answer side shows: its description, or words already on the card. */
const pictureWords = (card: Card): string =>
  card.pictureAlt || sideText(card.answer) || sideText(card.prompt) || "Picture";

/** What is to be named must not be said; where the description would say it, it stays away. */
function promptPictureWords(card: Card): string {
  const { pictureAlt } = card;
  const answer = foldText(sideText(card.answer)).trim();
  const told = answer !== "" && foldText(pictureAlt).includes(answer);
  const asked = card.prompt.cover
    ? "The prompt: a picture with a covered part to be named"
    : "The prompt: a picture to be named";
  return pictureAlt === "" || told ? asked : `${asked}. ${pictureAlt}`;
}
