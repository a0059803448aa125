// Cards as pages: fronts and backs in turn, with marks to cut and fold along.
import { type FaceStyle, faceItems, type KitCard } from "./card-faces.ts";
import type { Grid, Imposition, Slot } from "./impose.ts";
import { type KitPage, type LineItem, moveItem, type PageItem } from "./page.ts";

/** How far the printer sets backs off from their fronts is made good by: millimetres to the right and down. */
export type Offset = readonly [right: number, down: number];

/** Half the length of a cut mark and the width of its line, in millimetres. */
const CUT = { arm: 2, width: 0.1 } as const;

/** The pages of some cards: two for every sheet, or one if it is folded. */
export const cardPages = (
  cards: readonly KitCard[],
  laid: Imposition,
  style: FaceStyle,
  offset: Offset,
): readonly KitPage[] =>
  sidedPages(cards, laid, offset, (card, side, slot) =>
    faceItems(card, side === "front" ? "prompt" : "answer", slot, style),
  );

/** The pages of pieces with two sides, whatever `draw` puts on each: two for every sheet, or one if it is folded. */
export function sidedPages<T>(
  pieces: readonly T[],
  laid: Imposition,
  offset: Offset,
  draw: (piece: T, side: "front" | "back", slot: Slot) => readonly PageItem[],
): readonly KitPage[] {
  const { grid, fronts, backs } = laid;
  const folded = foldOf(laid);
  const pages: KitPage[] = [];
  for (let from = 0; from < pieces.length; from += fronts.length) {
    const some = pieces.slice(from, from + fronts.length);
    const of = (side: "front" | "back"): readonly PageItem[] =>
      some.flatMap((piece, i) => {
        const slot = (side === "front" ? fronts : backs)[i];
        return slot ? draw(piece, side, slot) : [];
      });
    if (folded.length > 0)
      pages.push({ ...grid.sheet, items: [...of("front"), ...of("back"), ...cutMarks(grid), ...folded] });
    else {
      pages.push({ ...grid.sheet, items: [...of("front"), ...cutMarks(grid)] });
      pages.push({ ...grid.sheet, items: of("back").map((item) => moveItem(item, offset)) });
    }
  }
  return pages;
}

/** A small cross at every corner of every cell; only the front has them, so that none shows beside a cut. */
export function cutMarks({ sheet, cell, columns, rows }: Grid): readonly LineItem[] {
  const left = (sheet.width - columns * cell.width) / 2;
  const top = (sheet.height - rows * cell.height) / 2;
  const marks: LineItem[] = [];
  const line = (from: readonly [number, number], to: readonly [number, number]): void =>
    void marks.push({ kind: "line", from, to, width: CUT.width, look: "cut" });
  for (let row = 0; row <= rows; row++)
    for (let column = 0; column <= columns; column++) {
      const [x, y] = [left + column * cell.width, top + row * cell.height];
      line([Math.max(0, x - CUT.arm), y], [Math.min(sheet.width, x + CUT.arm), y]);
      line([x, Math.max(0, y - CUT.arm)], [x, Math.min(sheet.height, y + CUT.arm)]);
    }
  return marks;
}

function foldOf({ grid, fronts, backs }: Imposition): readonly LineItem[] {
  return fronts.flatMap((front, i) => {
    const back = backs[i];
    if (!back || (grid.cell.width === front.width && grid.cell.height === front.height)) return [];
    const [from, to] = back.turned
      ? ([
          [front.x, back.y],
          [front.x + front.width, back.y],
        ] as const)
      : ([
          [back.x, back.y],
          [back.x, back.y + back.height],
        ] as const);
    return [{ kind: "line", from, to, width: CUT.width, look: "fold" } as const];
  });
}
