// The first cards of a list, as they will look once they are saved.
import type { ImportPreview } from "../../app/views.ts";
import { CardPair } from "../cards/card-pair.tsx";
import { PictureContext } from "../cards/picture-source.ts";
import { count, counted } from "../words.ts";
import { usePreviewPictures } from "./preview-pictures.ts";

const MOST_SHOWN = 20;

/** Some cards, and how many there are; nothing if there are none. */
export function CardsAhead({
  preview,
  pictures,
}: {
  readonly preview: ImportPreview;
  readonly pictures: readonly File[];
}) {
  const sourceOf = usePreviewPictures(pictures, preview);
  const shown = preview.cards.slice(0, MOST_SHOWN);
  if (shown.length === 0) return null;
  const all = shown.length >= preview.cardCount;
  return (
    <section aria-labelledby="cards-ahead">
      <h2 id="cards-ahead">The first cards, as they will look</h2>
      <p className="hint">
        {all
          ? `All ${counted(preview.cardCount, "card")}.`
          : `The first ${shown.length} of ${count(preview.cardCount)}.`}
      </p>
      <div className="cards-ahead">
        {shown.map((card) => (
          <PictureContext key={card.id} value={sourceOf(card)}>
            <CardPair card={card} />
          </PictureContext>
        ))}
      </div>
    </section>
  );
}
