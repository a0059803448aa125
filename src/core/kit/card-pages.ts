// Cards as pages: fronts and backs in turn, with marks to cut and fold along.
import type { PictureHash } from "../facts/fact.ts";
import { type FaceStyle, faceItems, type KitCard } from "./card-faces.ts";
import { fullPictureItems } from "./full-picture.ts";
import { type CardSlot, cellsOf, type Grid, type Imposition, inside } from "./impose.ts";
import { type KitPage, type LineItem, moveItem, type PageItem } from "./page.ts";
import type { Size } from "./paper.ts";

/** How far the printer sets backs off from their fronts is made good by: millimetres to the right and down. */
export type Offset = readonly [right: number, down: number];

/** Half the length of a cross, how far a stroke keeps off a card, and the width of their lines, in millimetres. */
const CUT = { arm: 2, gap: 0.5, width: 0.1 } as const;

/** Width and height of a picture in dots, if it is known. */
export type DotsOf = (picture: PictureHash) => Size | undefined;

/** What the pages of some cards are made with. */
export interface CardPageStyle {
  readonly style: FaceStyle;
  readonly offset: Offset;
  readonly dotsOf: DotsOf;
}

/** The pages of some cards: two for every sheet, or one if it is folded. */
export const cardPages = (cards: readonly KitCard[], laid: Imposition, by: CardPageStyle): readonly KitPage[] =>
  sidedPages(cards, laid, by.offset, (card, side, slot) =>
    sideItems(card, side === "front" ? "prompt" : "answer", slot, { ...by, bleed: laid.bleed }),
  );

/** The pages of pieces with two sides, whatever `draw` puts on each: two for every sheet, or one if it is folded. */
export function sidedPages<T>(
  pieces: readonly T[],
  laid: Imposition,
  offset: Offset,
  draw: (piece: T, side: "front" | "back", slot: CardSlot) => readonly PageItem[],
): readonly KitPage[] {
  const { grid, turn, bleed, fronts, backs } = laid;
  // A sheet that is nothing but one card needs no marks: it is not cut, or as its page says.
  const own = grid.cell.width === grid.sheet.width && grid.cell.height === grid.sheet.height;
  const sheet = own ? { ...grid.sheet, bleed } : grid.sheet;
  const marks = own ? [] : cutMarks(laid);
  const pages: KitPage[] = [];
  for (let from = 0; from < pieces.length; from += fronts.length) {
    const some = pieces.slice(from, from + fronts.length);
    const of = (side: "front" | "back"): readonly PageItem[] =>
      some.flatMap((piece, i) => {
        const slot = (side === "front" ? fronts : backs)[i];
        return slot ? draw(piece, side, slot) : [];
      });
    if (turn === "fold") pages.push({ ...sheet, items: [...of("front"), ...of("back"), ...marks, ...foldLines(laid)] });
    else {
      pages.push({ ...sheet, items: [...of("front"), ...marks] });
      pages.push({ ...sheet, items: of("back").map((item) => moveItem(item, offset)) });
    }
  }
  return pages;
}

function sideItems(
  card: KitCard,
  side: "prompt" | "answer",
  { spread, ...slot }: CardSlot,
  { style, dotsOf, bleed }: CardPageStyle & { readonly bleed: number },
): readonly PageItem[] {
  const { picture } = card[side];
  const dots = picture === null || bleed === 0 ? undefined : dotsOf(picture);
  return fullPictureItems(card, side, { slot, spread }, { style, dots }) ?? faceItems(card, side, slot, style);
}

/** Where to cut; only the front has it, so that none shows beside a cut. */
const cutMarks = ({ grid, bleed }: Imposition): readonly LineItem[] =>
  bleed === 0 ? crosses(grid) : ticks(grid, bleed);

/** A small cross at every corner of every cell. */
function crosses({ sheet, cell, columns, rows }: Grid): readonly LineItem[] {
  const left = (sheet.width - columns * cell.width) / 2;
  const top = (sheet.height - rows * cell.height) / 2;
  const marks: LineItem[] = [];
  for (let row = 0; row <= rows; row++)
    for (let column = 0; column <= columns; column++) {
      const [x, y] = [left + column * cell.width, top + row * cell.height];
      marks.push(
        cutLine([Math.max(0, x - CUT.arm), y], [Math.min(sheet.width, x + CUT.arm), y]),
        cutLine([x, Math.max(0, y - CUT.arm)], [x, Math.min(sheet.height, y + CUT.arm)]),
      );
    }
  return marks;
}

/** Two strokes at every corner of every card, outside of it: they lie in what is cut away. */
function ticks(grid: Grid, bleed: number): readonly LineItem[] {
  const { width, height } = grid.sheet;
  const marks = new Map<string, LineItem>();
  const [near, far] = [CUT.gap, 2 * bleed - CUT.gap];
  const within = (at: number, most: number): number => Math.min(most, Math.max(0, at));
  const add = (from: readonly [number, number], to: readonly [number, number]): void => {
    const ends = [from, to].map(([x, y]) => [within(x, width), within(y, height)] as const).sort(byPlace);
    const [first = from, last = to] = ends;
    marks.set(ends.map((end) => end.map((one) => one.toFixed(3)).join()).join(), cutLine(first, last));
  };
  for (const cell of cellsOf(grid)) {
    const card = inside(cell, bleed);
    for (const [x, out] of [
      [card.x, -1],
      [card.x + card.width, 1],
    ] as const)
      for (const [y, down] of [
        [card.y, -1],
        [card.y + card.height, 1],
      ] as const) {
        add([x + out * near, y], [x + out * far, y]);
        add([x, y + down * near], [x, y + down * far]);
      }
  }
  return [...marks.values()];
}

const byPlace = (a: readonly [number, number], b: readonly [number, number]): number => a[0] - b[0] || a[1] - b[1];

const cutLine = (from: readonly [number, number], to: readonly [number, number]): LineItem => ({
  kind: "line",
  from,
  to,
  width: CUT.width,
  look: "cut",
});

/** The line that each front shares with its back. */
const foldLines = ({ fronts, backs }: Imposition): readonly LineItem[] =>
  fronts.flatMap((front, i) => {
    const back = backs[i];
    if (!back) return [];
    const to = back.turned ? ([front.x + front.width, back.y] as const) : ([back.x, back.y + back.height] as const);
    return [{ kind: "line", from: [back.x, back.y], to, width: CUT.width, look: "fold" } as const];
  });
