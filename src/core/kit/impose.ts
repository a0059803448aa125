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

/** A place for one side of a card. */
export interface CardSlot extends Slot {
  /** As far as a picture may run past the cut, which is never over a fold. */
  readonly spread: Slot;
}

/** The places of a sheet's cards: `backs[i]` is behind `fronts[i]`; with folding both are on the one page. */
export interface Imposition {
  /** Its cells are the cards, or front and back of a folded one, with `bleed` round them. */
  readonly grid: Grid;
  readonly turn: Turn;
  /** Millimetres round every card that are cut away. */
  readonly bleed: number;
  readonly fronts: readonly CardSlot[];
  readonly backs: readonly CardSlot[];
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

/** A rectangle that is `by` millimetres larger on every side. */
export const grow = <T extends Size>(size: T, by: number): T => ({
  ...size,
  width: size.width + 2 * by,
  height: size.height + 2 * by,
});

/** Lays cards on a sheet, with `bleed` millimetres round each. However it is printed, a finished card is turned sideways, like a page. */
export function impose(sheet: Size, card: Size, turn: Turn, bleed = 0): Result<Imposition, string> {
  if (turn === "fold") return imposeFolded(sheet, card, bleed);
  const filled = fillSheet(sheet, grow(card, bleed));
  if (!filled.ok) return filled;
  const grid = filled.value;
  const fronts = cellsOf(grid).map((spread) => ({ ...inside(spread, bleed), spread }));
  const back = (slot: Slot): Slot => behind(grid.sheet, slot, turn);
  const backs = fronts.map((slot) => ({ ...back(slot), spread: back(slot.spread) }));
  return ok({ grid, turn, bleed, fronts, backs });
}

/** What is left of a rectangle within an edge. */
export const inside = (slot: Slot, edge: number): Slot => ({
  ...grow(slot, -edge),
  x: slot.x + edge,
  y: slot.y + edge,
});

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
function imposeFolded(sheet: Size, card: Size, bleed: number): Result<Imposition, string> {
  const beside = fillSheet(sheet, grow({ width: 2 * card.width, height: card.height }, bleed));
  const below = fillSheet(sheet, grow({ width: card.width, height: 2 * card.height }, bleed));
  const useBelow = below.ok && (!beside.ok || count(below.value) > count(beside.value));
  const filled = useBelow ? below : beside;
  if (!filled.ok) return filled;
  const halves = cellsOf(filled.value).map((cell) => foldCell(cell, card, { bleed, useBelow }));
  const [fronts, backs] = [halves.map(([front]) => front), halves.map(([, back]) => back)];
  return ok({ grid: filled.value, turn: "fold", bleed, fronts, backs });
}

function foldCell(
  cell: Slot,
  card: Size,
  { bleed, useBelow }: { readonly bleed: number; readonly useBelow: boolean },
): readonly [CardSlot, CardSlot] {
  const front = { ...inside(cell, bleed), ...card };
  const half = useBelow ? { height: cell.height / 2 } : { width: cell.width / 2 };
  const fold = useBelow ? { y: front.y + card.height, turned: true } : { x: front.x + card.width };
  const back = { ...front, ...fold };
  return [
    { ...front, spread: { ...cell, ...half } },
    { ...back, spread: { ...cell, ...half, ...fold } },
  ];
}

const count = ({ columns, rows }: Grid): number => columns * rows;
