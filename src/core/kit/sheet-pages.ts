// The sitting sheet: the numbers of a day's cards, pile by pile, with a box to mark each card that was missed. Four
// corner codes let a camera read it.
import { printedNumber } from "../cards/card-number.ts";
import { type KitPage, type LineItem, type PageItem, textItem } from "./page.ts";
import type { Size } from "./paper.ts";
import { plainSheetPages } from "./plain-sheet.ts";
import {
  cornerPlaces,
  FIRST_LINE,
  hasRoom,
  SHEET,
  type SheetPage,
  type SittingSheet,
  sheetLayout,
  titleLines,
} from "./sheet-layout.ts";

const WORDS =
  "Ask each pile from its top. Tick or cross the box of every card that you missed at the first asking; leave the others empty. Black a box out to take its mark back. Missed cards go back to compartment 1, recalled cards one compartment on; at the end ask the missed ones again until each is recalled. A pile that you did not ask: mark “left out” on its line.";

const PHOTO_WORDS =
  "To enter it: photograph the whole page with its four codes, lying flat, in even light. Or type the numbers of the missed cards.";

/** The pages of a sheet: with codes if it belongs to a day and the paper has room for them. */
export function sheetPages(sheet: SittingSheet, size: Size): readonly KitPage[] {
  const { from } = sheet;
  const pages = from && hasRoom(size) ? sheetLayout({ ...sheet, from }, size) : [];
  if (pages.length === 0) return plainSheetPages(sheet, size);
  return pages.map((page) => ({
    ...size,
    items: [...heads(sheet.title, page), ...codes(page), ...titles(page), ...boxes(page), ...foot(size)],
  }));
}

/** The strip between two codes, above or below. */
function strip({ width, height }: Size, where: "above" | "below") {
  const x = SHEET.margin + SHEET.code + SHEET.quiet;
  const y = where === "above" ? SHEET.margin : height - SHEET.margin - SHEET.code;
  return { x, y, width: width - 2 * x, height: SHEET.code };
}

function heads(title: string, { head }: SheetPage): readonly PageItem[] {
  const place = strip(head.size, "above");
  const numbered = head.pages > 1 ? `${title} (${head.page} of ${head.pages})` : title;
  return [
    textItem({ ...place, height: 8 }, numbered, {
      most: 15,
      heading: 1,
      runs: [{ text: numbered, look: "strong" }],
    }),
    textItem({ ...place, y: place.y + 8, height: place.height - 8 }, WORDS, {
      most: 8.5,
      name: "the words of the sheet",
    }),
  ];
}

const codes = ({ head, codes }: SheetPage): readonly PageItem[] =>
  cornerPlaces(head.size).map(([x, y], i) => ({
    kind: "code",
    x,
    y,
    width: SHEET.code,
    height: SHEET.code,
    turned: false,
    content: codes[i] as string,
    alt: "Code of this page for a camera",
    quiet: 0,
  }));

function titles({ titles, parts, head: { size } }: SheetPage): readonly PageItem[] {
  const lines = titleLines(parts);
  return titles.flatMap(({ title, cards, goesOn }, i): readonly PageItem[] => {
    const y = FIRST_LINE + (lines[i] as number) * SHEET.line;
    const text = `${title}${goesOn ? ", continued" : ""}: ${cards} ${cards === 1 ? "card" : "cards"}`;
    const place = { x: SHEET.margin, y, width: size.width - SHEET.margin - SHEET.leftOut - 4, height: SHEET.line };
    const beside = { ...place, x: size.width - SHEET.leftOut + SHEET.box + 2, width: SHEET.leftOut - SHEET.box - 12 };
    return [
      textItem(place, text, { most: 11, lie: "middle", runs: [{ text, look: "strong" }] }),
      textItem(beside, "left out", { most: 9, lie: "middle", ink: "quiet" }),
    ];
  });
}

function boxes({ boxes, head: { size } }: SheetPage): readonly PageItem[] {
  const wide = (size.width - 2 * SHEET.margin) / SHEET.columns - SHEET.box - 4;
  return boxes.flatMap(({ x, y, number }): readonly PageItem[] => {
    const place = { x: x + SHEET.box + 2, y, width: wide, height: SHEET.box };
    const label = number === null ? [] : [textItem(place, printedNumber(number), { most: 11, lie: "middle" })];
    return [...frame(x, y, SHEET.box), ...label];
  });
}

/** The frame of a box, its outer edge where the box ends. Dark, since a camera finds the box by it. */
function frame(x: number, y: number, side: number): readonly LineItem[] {
  const width = 0.25;
  const [from, to] = [width / 2, side - width / 2];
  const line = (a: readonly [number, number], b: readonly [number, number]): LineItem => ({
    kind: "line",
    from: [x + a[0], y + a[1]],
    to: [x + b[0], y + b[1]],
    width,
    look: "drawn",
  });
  return [
    line([0, from], [side, from]),
    line([0, to], [side, to]),
    line([from, 0], [from, side]),
    line([to, 0], [to, side]),
  ];
}

/** Lines to write on between the codes below. */
function foot(size: Size): readonly PageItem[] {
  const place = strip(size, "below");
  const title = "New cards to make, and notes";
  const lines = [13, 20].map(
    (down): LineItem => ({
      kind: "line",
      from: [place.x, place.y + down],
      to: [place.x + place.width, place.y + down],
      width: 0.1,
      look: "cut",
    }),
  );
  return [
    textItem({ ...place, height: 5 }, title, { most: 10, runs: [{ text: title, look: "strong" }] }),
    ...lines,
    textItem({ ...place, y: place.y + 22, height: 8 }, PHOTO_WORDS, { most: 8.5, ink: "quiet" }),
  ];
}
