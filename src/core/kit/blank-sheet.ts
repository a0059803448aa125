// A sitting sheet without a day: places to write the numbers of cards on, each with a box.
import { type KitPage, type PageItem, textItem } from "./page.ts";
import type { Size } from "./paper.ts";
import type { SittingSheet } from "./sheet-layout.ts";

const MARGIN = 15;
const COLUMNS = 6;
const LINE = 7;
const HEAD = 32;

/** The one page of a blank sheet, or of a day on which nothing is due. */
export function blankSheetPage({ title, piles }: SittingSheet, size: Size): KitPage {
  const place = { x: MARGIN, width: size.width - 2 * MARGIN };
  const words =
    piles[0]?.title ??
    "Write the numbers of the cards on the lines as you ask them. Mark the box of every card that you missed at the first asking. Missed cards go back to compartment 1, recalled cards go one compartment on. At the end ask the missed cards again until each is recalled.";
  const lines = piles.length > 0 ? 0 : Math.floor((size.height - 2 * MARGIN - HEAD) / LINE);
  return {
    ...size,
    items: [
      textItem({ ...place, y: MARGIN, height: 9 }, title, {
        most: 17,
        heading: 1,
        runs: [{ text: title, look: "strong" }],
      }),
      textItem({ ...place, y: MARGIN + 10, height: 18 }, words, { most: 10, name: "the words of the sheet" }),
      ...Array.from({ length: lines }, (_, i) => drawLine(size, MARGIN + HEAD + i * LINE)).flat(),
    ],
  };
}

function drawLine(size: Size, y: number): readonly PageItem[] {
  const width = (size.width - 2 * MARGIN) / COLUMNS;
  return Array.from({ length: COLUMNS }, (_, i): readonly PageItem[] => {
    const x = MARGIN + i * width;
    return [
      { kind: "box", x, y: y + 1, width: 4, height: 4, turned: false, shade: null, frame: true },
      { kind: "line", from: [x + 6, y + 5], to: [x + width - 2, y + 5], width: 0.1, look: "cut" },
    ];
  }).flat();
}
