// The picture of a card side, with the region that is covered or outlined.
import { useState } from "react";
import type { CardSide } from "../../core/cards/cards.ts";
import { usePictureSource } from "./picture-source.ts";

interface PictureProps {
  readonly hash: string;
  readonly words: string;
  readonly cover: CardSide["cover"];
  /** Whether the region is what is asked: it is covered, not outlined. */
  readonly asked: boolean;
}

/** A picture, or a quiet frame where it cannot be shown (yet). */
export function CardPicture({ hash, words, cover, asked }: PictureProps) {
  const [missing, setMissing] = useState("");
  const source = usePictureSource();
  const url = source.urlOf(hash);
  if (url === null || missing === url) return <span className="card-picture-missing">{source.missing}</span>;
  const picture = <img className="card-picture" src={url} alt={words} onError={() => setMissing(url)} />;
  if (!cover) return picture;
  const share = (part: number): string => `${100 * part}%`;
  return (
    <span className="card-labelled">
      {picture}
      <span
        className={asked ? "card-cover" : "card-outline"}
        style={{
          left: share(cover.x),
          top: share(cover.y),
          width: share(cover.width),
          height: share(cover.height),
        }}
      />
    </span>
  );
}
