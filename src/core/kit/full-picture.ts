// A side that is a picture alone, printed past the cut, so that no white edge is left when the knife is a little off.
import { edgeItems, type FaceStyle, type KitCard, notesOf, pictureItem } from "./card-faces.ts";
import type { Slot } from "./impose.ts";
import { type PageItem, turnWith } from "./page.ts";
import type { Size } from "./paper.ts";
import { placePicture } from "./place-picture.ts";

/** So much of a picture must be left on the card, or it is printed whole with an edge as always. */
const LEAST_LEFT = 0.75;

/** White round a number, and how wide a digit of it is at the most, in millimetres. */
const PLATE = { pad: 1, digit: 2 } as const;

/** Where a side may print: the card, and the card with what is cut away. */
export interface SideRoom {
  readonly slot: Slot;
  readonly spread: Slot;
}

/**
 * The items of a side that is nothing but a picture, filling the card and running past the cut; number and code stand
 * on a white ground. Null for any other side, and for a picture whose form is too far from the card's.
 */
export function fullPictureItems(
  card: KitCard,
  side: "prompt" | "answer",
  { slot, spread }: SideRoom,
  { style, dots }: { readonly style: FaceStyle; readonly dots: Size | undefined },
): readonly PageItem[] | null {
  const { text, sound, picture, cover } = card[side];
  const words = text.length > 0 || sound !== null || (side === "answer" && notesOf(card).length > 0);
  if (!picture || words || cover || !dots || shareLeft(slot, dots) < LEAST_LEFT) return null;
  const full = { ...pictureItem(card, side, spread, picture), fit: "filling" as const };
  const marks = edgeItems(card, side, slot, { ...style, title: "" }).flatMap((item) => [plateOf(item), item]);
  return [full, ...marks.map((item) => turnWith(item, slot))];
}

/** The share of a picture that is seen when it fills a card. */
function shareLeft(card: Size, dots: Size): number {
  const { width, height } = placePicture({ ...card, fit: "filling" }, dots);
  return (card.width * card.height) / (width * height);
}

function plateOf(item: PageItem): PageItem {
  if (item.kind === "line") return item;
  const { x, y, width, height, turned } = item;
  const digits = item.kind === "text" ? item.runs.reduce((sum, run) => sum + run.text.length, 0) : 0;
  const place = digits > 0 ? { x: x - PLATE.pad, width: digits * PLATE.digit + 2 * PLATE.pad } : { x, width };
  return { kind: "box", turned, y, height, ...place, shade: 0, frame: false };
}
