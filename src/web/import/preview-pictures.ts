// Pictures of a list that is not saved yet are shown from the files that were chosen with it.
import { useEffect, useMemo } from "react";
import type { ImportPreview } from "../../app/views.ts";
import { type Card, sideText } from "../../core/cards/cards.ts";
import type { PictureSource } from "../cards/picture-source.ts";
import { pictureUrl } from "../client.ts";

const named = (name: string): string => name.trim().normalize("NFC").toLowerCase();
/** A picture that is stored already goes by its content address. */
const STORED = /^([0-9a-f]{64})\.\w{2,5}$/;

/** The name of a card's picture file, from the row that says the same as the card; null if it is not among the first rows. */
export function pictureNameOf(
  card: Card,
  { columns, sample }: Pick<ImportPreview, "columns" | "sample">,
): string | null {
  const at = columns.indexOf("picture");
  const sides = new Set([sideText(card.prompt), sideText(card.answer)].filter((text) => text !== ""));
  const row = sample.find((cells) => cells[at]?.trim() && cells.some((cell, i) => i !== at && sides.has(plain(cell))));
  return row?.[at]?.trim() ?? null;
}

/** A cell without the brackets of its gaps. */
const plain = (cell: string): string => cell.trim().replace(/[[\]]/g, "");

/** Where the pictures of a preview's cards are shown from, card by card. */
export function usePreviewPictures(pictures: readonly File[], preview: ImportPreview): (card: Card) => PictureSource {
  const urls = useMemo(
    () => new Map(pictures.map((file) => [named(file.name), URL.createObjectURL(file)])),
    [pictures],
  );
  useEffect(
    () => () => {
      for (const url of urls.values()) URL.revokeObjectURL(url);
    },
    [urls],
  );
  const only = urls.size === 1 ? [...urls.values()][0] : undefined;
  return (card) => {
    const name = pictureNameOf(card, preview);
    const stored = name === null ? undefined : STORED.exec(name)?.[1];
    const url = name === null ? only : (urls.get(named(name)) ?? (stored ? pictureUrl(stored) : undefined));
    return { urlOf: () => url ?? null, missing: "The picture will be shown here." };
  };
}
