// Where cards lie on a sheet, so that front and back come to lie on each other. Millimetres from the top left corner.
import { fail, ok, type Result } from "../result.ts";
import { quarterTurn, type Size } from "./paper.ts";

/** How the back gets behind the front: the printer turns the sheet over an edge, or one side is printed and folded. */
export type Turn = "long" | "short" | "fold";

/** A rectangle on a page. `turned` says that what is in it stands on its head. */
export interface Slot extends Size {
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

/** Equal rectangles in the middle of a sheet, edge to edge. */
export interface Grid {
  readonly sheet: Size;
  readonly cell: Size;
  readonly columns: number;
  readonly rows: number;
}

/** The places of a sheet's cards: `backs[i]` is behind `fronts[i]`; with folding both are on the one page. */
export interface Imposition {
  readonly grid: Grid;
  readonly fronts: readonly Slot[];
  readonly backs: readonly Slot[];
}

/** Rounding that a size in inches may bring, in millimetres. */
const SLACK = 1e-6;

/** As many cells as fit, on the sheet upright or lying, whichever takes more; upright if it is the same. */
export function fillSheet(sheet: Size, cell: Size): Result<Grid, string> {
  const best = [sheet, quarterTurn(sheet)]
    .map((way) => ({
      sheet: way,
      cell,
      columns: fitting(way.width, cell.width),
      rows: fitting(way.height, cell.height),
    }))
    .reduce((a, b) => (b.columns * b.rows > a.columns * a.rows ? b : a));
  if (best.columns * best.rows > 0) return ok(best);
  return fail(
    `a piece of ${words(cell)} does not fit on a sheet of ${words(sheet)}; choose smaller cards or larger paper`,
  );
}

const fitting = (room: number, side: number): number => Math.floor((room + SLACK) / side);
const words = ({ width, height }: Size): string => `${+width.toFixed(1)} × ${+height.toFixed(1)} mm`;

/** The cell in a column and row, both counted from 0. */
export function cellAt({ sheet, cell, columns, rows }: Grid, column: number, row: number): Slot {
  const left = (sheet.width - columns * cell.width) / 2;
  const top = (sheet.height - rows * cell.height) / 2;
  return { x: left + column * cell.width, y: top + row * cell.height, ...cell, turned: false };
}

/** All cells in reading order. */
export const cellsOf = (grid: Grid): readonly Slot[] =>
  Array.from({ length: grid.columns * grid.rows }, (_, i) =>
    cellAt(grid, i % grid.columns, Math.floor(i / grid.columns)),
  );

/** Lays cards on a sheet. However it is printed, a finished card is turned sideways, like a page. */
export function impose(sheet: Size, card: Size, turn: Turn): Result<Imposition, string> {
  if (turn === "fold") return imposeFolded(sheet, card);
  const filled = fillSheet(sheet, card);
  if (!filled.ok) return filled;
  const fronts = cellsOf(filled.value);
  return ok({ grid: filled.value, fronts, backs: fronts.map((slot) => behind(filled.value.sheet, slot, turn)) });
}

/**
 * Where the back of a slot is on the other page. Over a vertical edge left and right change places. Over a horizontal
 * edge top and bottom do, and the back stands on its head, so that the card is still turned sideways.
 */
export function behind(sheet: Size, slot: Slot, turn: "long" | "short"): Slot {
  const lying = sheet.width > sheet.height;
  const vertical = (turn === "long") !== lying;
  return vertical
    ? { ...slot, x: sheet.width - slot.x - slot.width }
    : { ...slot, y: sheet.height - slot.y - slot.height, turned: !slot.turned };
}

/** Front and back beside each other, or the back below on its head: whichever brings more cards onto a sheet. */
function imposeFolded(sheet: Size, card: Size): Result<Imposition, string> {
  const beside = fillSheet(sheet, { width: 2 * card.width, height: card.height });
  const below = fillSheet(sheet, { width: card.width, height: 2 * card.height });
  const useBelow = below.ok && (!beside.ok || count(below.value) > count(beside.value));
  const filled = useBelow ? below : beside;
  if (!filled.ok) return filled;
  const cells = cellsOf(filled.value);
  return ok({
    grid: filled.value,
    fronts: cells.map((cell) => ({ ...cell, ...card })),
    backs: cells.map((cell) =>
      useBelow
        ? { ...cell, ...card, y: cell.y + card.height, turned: true }
        : { ...cell, ...card, x: cell.x + card.width },
    ),
  });
}

const count = ({ columns, rows }: Grid): number => columns * rows;
