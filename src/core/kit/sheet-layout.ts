// Where everything stands on a sitting sheet that can be read from a photo. The sheet is drawn and read by this, so
// both always agree; a change here needs another prefix in the corner codes.
import type { LocalDate } from "../calendar/local-date.ts";
import type { Size } from "./paper.ts";
import { boxMark, bytesOf, cornerCodes, MOST_BYTES, type SheetHead, type SheetPart, sheetMark } from "./sheet-code.ts";

/** A pile of the sheet: what it is called, and its cards' numbers. */
export interface SheetPile {
  readonly title: string;
  readonly numbers: readonly number[];
}

/** The box and the day that a sheet belongs to. */
export interface SheetOrigin {
  readonly box: string;
  readonly date: LocalDate;
  /** Box day. */
  readonly day: number;
}

/** What a sheet is about; without piles it is a blank one to write numbers on. */
export interface SittingSheet {
  readonly title: string;
  readonly piles: readonly SheetPile[];
  /** A sheet without it carries no codes and cannot be read from a photo. */
  readonly from?: SheetOrigin;
}

/** Millimetres of a sheet. */
export const SHEET = {
  /** Edge of the paper to anything printed: most printers reach to 5. */
  margin: 10,
  /** Side of a corner code without its quiet zone: a module is at least 30 / 37 = 0.81. */
  code: 30,
  /** Corner codes to the first and the last line: four modules of the coarsest code, and a little more. */
  quiet: 5,
  columns: 6,
  line: 8.5,
  /** Side of a box to tick. */
  box: 6,
  /** Left edge of the box that leaves a pile out, from the right edge of the paper. */
  leftOut: 36,
} as const;

/** A box to tick. */
export interface TickBox {
  /** Top left corner, millimetres from that of the paper. */
  readonly x: number;
  readonly y: number;
  /** Which part of the page it belongs to, from 0. */
  readonly part: number;
  /** The card that it marks as missed; null marks the part as left out. */
  readonly number: number | null;
}

/** The top left corners of the four codes, in the order of `CornerCode.corner`. */
export const cornerPlaces = ({ width, height }: Size): readonly (readonly [x: number, y: number])[] => {
  const [right, below] = [width - SHEET.margin - SHEET.code, height - SHEET.margin - SHEET.code];
  return [
    [SHEET.margin, SHEET.margin],
    [right, SHEET.margin],
    [SHEET.margin, below],
    [right, below],
  ];
};

/** Where the first line begins. */
export const FIRST_LINE = SHEET.margin + SHEET.code + SHEET.quiet;

/** How many lines a page has. */
export const linesOf = ({ height }: Size): number => Math.floor((height - 2 * FIRST_LINE) / SHEET.line);

/** Whether a paper holds the codes, words between them that can be read, and some lines. */
export const hasRoom = (size: Size): boolean => size.width >= 180 && linesOf(size) >= 8;

const linesFor = (part: SheetPart): number => 1 + Math.ceil(part.length / SHEET.columns);

/** The line on which each part begins with its title, from 0. */
export function titleLines(parts: readonly SheetPart[]): readonly number[] {
  let line = 0;
  return parts.map((part) => {
    const at = line;
    line += linesFor(part);
    return at;
  });
}

/** Every box of a page, in reading order. */
export function tickBoxes(parts: readonly SheetPart[], size: Size): readonly TickBox[] {
  const lines = titleLines(parts);
  const inLine = (line: number): number => FIRST_LINE + line * SHEET.line + (SHEET.line - SHEET.box) / 2;
  const pitch = (size.width - 2 * SHEET.margin) / SHEET.columns;
  return parts.flatMap((numbers, part): readonly TickBox[] => {
    const first = lines[part] as number;
    const leftOut = { x: size.width - SHEET.leftOut, y: inLine(first), part, number: null };
    const cards = numbers.map((number, i) => ({
      x: SHEET.margin + (i % SHEET.columns) * pitch,
      y: inLine(first + 1 + Math.floor(i / SHEET.columns)),
      part,
      number,
    }));
    return [leftOut, ...cards];
  });
}

/** A page of a sheet. */
export interface SheetPage {
  readonly head: SheetHead;
  /** The title of each part's pile, and whether the page before began it. */
  readonly titles: readonly { readonly title: string; readonly cards: number; readonly goesOn: boolean }[];
  readonly parts: readonly SheetPart[];
  readonly boxes: readonly TickBox[];
  /** What the codes hold, in the order of `cornerPlaces`. */
  readonly codes: readonly string[];
}

/** The pages of a sheet that belongs to a box and a day, on paper that has room. Piles without cards are left out; it may have no page. */
export function sheetLayout(sheet: SittingSheet & { readonly from: SheetOrigin }, size: Size): readonly SheetPage[] {
  const piles = sheet.piles
    .map(({ title, numbers }) => ({ title, numbers: numbers.toSorted((a, b) => a - b) }))
    .filter(({ numbers }) => numbers.length > 0);
  const mark = sheetMark(
    sheet.from,
    piles.map((pile) => pile.numbers),
  );
  const laid = breakPages(piles, linesOf(size));
  return laid.map((pieces, i): SheetPage => {
    const parts = pieces.map((piece) => piece.numbers);
    const { box, date, day } = sheet.from;
    const head = { sheet: mark, box: boxMark(box), date, day, page: i + 1, pages: laid.length, size };
    return {
      head,
      titles: pieces.map(({ title, cards, goesOn }) => ({ title, cards, goesOn })),
      parts,
      boxes: tickBoxes(parts, size),
      codes: cornerCodes(head, parts),
    };
  });
}

interface Piece {
  readonly title: string;
  readonly cards: number;
  readonly goesOn: boolean;
  readonly numbers: readonly number[];
}

/** Cuts piles into pages: line by line, as many as there is room for on the paper and in the codes. */
function breakPages(piles: readonly SheetPile[], lines: number): readonly (readonly Piece[])[] {
  const pages: (readonly Piece[])[] = [[]];
  for (const { title, numbers } of piles)
    for (let at = 0; at < numbers.length; at += SHEET.columns) {
      const line = { title, cards: numbers.length, goesOn: at > 0, numbers: numbers.slice(at, at + SHEET.columns) };
      const page = pages.at(-1) as readonly Piece[];
      const begun = at > 0 ? page.at(-1) : undefined;
      const longer = begun
        ? [...page.slice(0, -1), { ...begun, numbers: [...begun.numbers, ...line.numbers] }]
        : [...page, line];
      if (fitsPage(longer, lines)) pages[pages.length - 1] = longer;
      else pages.push([line]);
    }
  return pages.filter((page) => page.length > 0);
}

function fitsPage(pieces: readonly Piece[], lines: number): boolean {
  const parts = pieces.map((piece) => piece.numbers);
  return parts.reduce((sum, part) => sum + linesFor(part), 0) <= lines && bytesOf(parts) <= MOST_BYTES;
}
