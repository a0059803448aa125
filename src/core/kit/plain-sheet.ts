// A sitting sheet without codes: a blank one to write numbers on, and that of paper too small for codes.
import { printedNumber } from "../cards/card-number.ts";
import { type KitPage, type PageItem, textItem } from "./page.ts";
import type { Size } from "./paper.ts";
import type { SittingSheet } from "./sheet-layout.ts";

const MARGIN = 15;
const COLUMNS = 6;
const LINE = 7;
const HEAD = 32;

/** The pages of a sheet without codes; without piles one page of places to write on. */
export function plainSheetPages(sheet: SittingSheet, size: Size): readonly KitPage[] {
  const rows = rowsOf(sheet);
  const perPage = Math.floor((size.height - 2 * MARGIN - HEAD) / LINE);
  const pages: KitPage[] = [];
  for (let from = 0; from < rows.length; from += perPage) {
    const some = rows.slice(from, from + perPage);
    const numbered =
      rows.length > perPage
        ? `${sheet.title} (${pages.length + 1} of ${Math.ceil(rows.length / perPage)})`
        : sheet.title;
    pages.push({
      ...size,
      items: [...heads(numbered, size), ...some.flatMap((row, i) => drawRow(row, size, MARGIN + HEAD + i * LINE))],
    });
  }
  return pages;
}

/** A line of the sheet: the title of a pile, or some of its cards; null is a place to write a number on. */
type Row = { readonly title: string } | { readonly cards: readonly (number | null)[] };

function rowsOf({ piles }: SittingSheet): readonly Row[] {
  if (piles.length === 0)
    return Array.from({ length: 30 }, () => ({ cards: Array.from({ length: COLUMNS }, () => null) }));
  return piles.flatMap(({ title, numbers }): Row[] => {
    const rows: Row[] = [{ title: `${title}: ${numbers.length} ${numbers.length === 1 ? "card" : "cards"}` }];
    for (let i = 0; i < numbers.length; i += COLUMNS) rows.push({ cards: numbers.slice(i, i + COLUMNS) });
    return rows;
  });
}

function heads(title: string, size: Size): readonly PageItem[] {
  const line = { x: MARGIN, width: size.width - 2 * MARGIN };
  const words =
    "Ask each pile from the top of the sheet down. Mark the box of every card that you missed at the first asking, and leave the others empty. Missed cards go back to compartment 1, recalled cards go one compartment on. At the end ask the missed cards again until each is recalled.";
  return [
    textItem({ ...line, y: MARGIN, height: 9 }, title, {
      most: 17,
      heading: 1,
      runs: [{ text: title, look: "strong" }],
    }),
    textItem({ ...line, y: MARGIN + 10, height: 18 }, words, {
      most: 10,
      ink: "quiet",
      name: "the words of the sheet",
    }),
  ];
}

function drawRow(row: Row, size: Size, y: number): readonly PageItem[] {
  const width = (size.width - 2 * MARGIN) / COLUMNS;
  if ("title" in row) {
    const place = { x: MARGIN, y, width: size.width - 2 * MARGIN, height: LINE - 1 };
    return [textItem(place, row.title, { most: 11, lie: "middle", runs: [{ text: row.title, look: "strong" }] })];
  }
  return row.cards.flatMap((number, i): readonly PageItem[] => {
    const x = MARGIN + i * width;
    const box = { kind: "box", x, y: y + 1, width: 4, height: 4, turned: false, shade: null, frame: true } as const;
    const place = { x: x + 6, y, width: width - 8, height: LINE - 1 };
    if (number === null)
      return [
        box,
        { kind: "line", from: [place.x, y + 5], to: [place.x + place.width, y + 5], width: 0.1, look: "cut" },
      ];
    return [box, textItem(place, printedNumber(number), { most: 10, lie: "middle" })];
  });
}
