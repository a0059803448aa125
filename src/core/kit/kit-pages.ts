// A whole kit: its parts as pages, in the order in which they come out of the printer.
import type { Chart } from "../chart/chart.ts";
import { fail, ok, type Result } from "../result.ts";
import { calendarPages, type PrintedDay } from "./calendar-pages.ts";
import type { FaceStyle, KitCard } from "./card-faces.ts";
import { cardPages, type Offset } from "./card-pages.ts";
import { chartTablePages, rulerPages } from "./chart-pages.ts";
import { dividerPages } from "./divider-pages.ts";
import { calibrationPages, instructionPage } from "./help-pages.ts";
import { impose, type Turn } from "./impose.ts";
import type { KitPage } from "./page.ts";
import type { Size } from "./paper.ts";
import type { SittingSheet } from "./sheet-layout.ts";
import { sheetPages } from "./sheet-pages.ts";

/** What a kit can hold, in the order in which it is printed. */
export const KIT_PARTS = ["calibration", "instructions", "cards", "dividers", "chart", "calendar", "sheet"] as const;

/** One part of a kit. */
export type KitPart = (typeof KIT_PARTS)[number];

/** Everything that a kit is made from. */
export interface KitPlan {
  readonly parts: ReadonlySet<KitPart>;
  readonly sheet: Size;
  readonly card: Size;
  readonly turn: Turn;
  readonly offset: Offset;
  readonly style: FaceStyle;
  readonly cards: readonly KitCard[];
  readonly chart: Chart;
  readonly days: readonly PrintedDay[];
  readonly sitting: SittingSheet;
}

/**
 * The pages of a kit. With cards that are turned over every page of the other parts has an empty back, so that the
 * whole can be printed on both sides in one go. Fails if cards or dividers are too large for the sheet.
 */
export function kitPages(plan: KitPlan): Result<readonly KitPage[], string> {
  const { sheet, card, turn, offset, style, chart } = plan;
  const laid = impose(sheet, card, turn);
  if (!laid.ok) return laid;
  const dividers = plan.parts.has("dividers") ? dividerPages(chart, card, sheet) : ok([]);
  if (!dividers.ok) return fail(`The dividers: ${dividers.error}`);
  const single = (pages: readonly KitPage[]): readonly KitPage[] =>
    turn === "fold" ? pages : pages.flatMap((page) => [page, { ...page, items: [] }]);
  const make: Readonly<Record<KitPart, () => readonly KitPage[]>> = {
    calibration: () => (turn === "fold" ? [] : calibrationPages(laid.value.grid.sheet, turn, offset)),
    instructions: () => single([instructionPage(sheet)]),
    cards: () => cardPages(plan.cards, laid.value, style, offset),
    dividers: () => single(dividers.value),
    chart: () => single([...rulerPages(chart, sheet), ...chartTablePages(chart, sheet)]),
    calendar: () => single(calendarPages(plan.days, sheet)),
    sheet: () => single(sheetPages(plan.sitting, sheet)),
  };
  return ok(KIT_PARTS.filter((part) => plan.parts.has(part)).flatMap((part) => make[part]()));
}

/** Below this many dots an inch a picture looks coarse in print. Common practice: 300 is good, half of it the least. */
const LEAST_DPI = 150;

/** One sentence for every picture that has too few dots for the size at which it is printed. */
export function coarsePictures(
  pages: readonly KitPage[],
  sizeOf: (picture: string) => Size | undefined,
): readonly string[] {
  return pages.flatMap((page) =>
    page.items.flatMap((item) => {
      const dots = item.kind === "picture" ? sizeOf(item.picture) : undefined;
      if (item.kind !== "picture" || !dots) return [];
      const dpi = Math.max(dots.width / item.width, dots.height / item.height) * 25.4;
      if (dpi >= LEAST_DPI) return [];
      return [`A picture is printed with ${Math.round(dpi)} dots an inch and looks coarse: ${item.alt}.`];
    }),
  );
}
