// A sitting sheet printed as it comes out of the program, drawn as dots by another program.
import { spreadChart } from "../../../src/core/chart/make-chart.ts";
import type { KitPlan } from "../../../src/core/kit/kit-pages.ts";
import type { Size } from "../../../src/core/kit/paper.ts";
import { type SheetOrigin, type SheetPage, type SheetPile, sheetLayout } from "../../../src/core/kit/sheet-layout.ts";
import { printKit } from "../../../src/kit/print-kit.ts";
import { type GreyPage, readPdf } from "../pdf-tools.ts";

/** Dots an inch of the drawn pages. */
const DPI = 300;

/** Dots a millimetre of the drawn pages. */
export const DOTS_PER_MM = DPI / 25.4;

/** A page of a sheet and its drawing. */
export interface PrintedPage {
  readonly page: SheetPage;
  readonly drawing: GreyPage;
}

/** Prints a sheet; gives every page of it. */
export async function printSheet(
  piles: readonly SheetPile[],
  from: SheetOrigin,
  size: Size,
): Promise<readonly PrintedPage[]> {
  const sitting = { title: `Sitting of ${from.date}`, piles, from };
  const plan: KitPlan = {
    parts: new Set(["sheet"]),
    sheet: size,
    card: { width: 105, height: 74 },
    turn: "fold",
    offset: [0, 0],
    bleed: 0,
    style: { title: "The night sky", mark: "number", language: "en" },
    cards: [],
    chart: spreadChart([1, 2, 4], [1, 1, 1]),
    days: [],
    sitting,
  };
  const { pdf } = await printKit(plan, new Map());
  const reading = readPdf(pdf);
  const pages = sheetLayout(sitting, size).map((page, i) => ({ page, drawing: reading.draw(i + 1, DPI) }));
  reading.close();
  return pages;
}
