// A whole kit: its parts as pages, in the order in which they come out of the printer.
import type { Chart } from "../chart/chart.ts";
import { fail, ok, type Result } from "../result.ts";
import { calendarPages, type PrintedDay } from "./calendar-pages.ts";
import type { FaceStyle, KitCard } from "./card-faces.ts";
import { cardPages, type DotsOf, type Offset } from "./card-pages.ts";
import { chartTablePages, rulerPages } from "./chart-pages.ts";
import { dividerPages } from "./divider-pages.ts";
import { calibrationPages, instructionPage } from "./help-pages.ts";
import { grow, type Imposition, impose, type Turn } from "./impose.ts";
import type { KitPage } from "./page.ts";
import type { Size } from "./paper.ts";
import { dotsAnInch } from "./place-picture.ts";
import { pocketPages } from "./pocket-calendar.ts";
import type { SittingSheet } from "./sheet-layout.ts";
import { sheetPages } from "./sheet-pages.ts";

/** What a kit can hold, in the order in which it is printed. */
export const KIT_PARTS = [
  "calibration",
  "instructions",
  "cards",
  "dividers",
  "ruler",
  "chart",
  "calendar",
  "pocket",
  "sheet",
] as const;

/** One part of a kit; `ruler` is the chart as a poster, `chart` as a table. */
export type KitPart = (typeof KIT_PARTS)[number];

/** A box for each of several people. */
export interface ClassPack {
  /** In the order in which their boxes are printed. */
  readonly names: readonly string[];
  /** Whether the name stands on the cards too, behind the title. */
  readonly onCards: boolean;
}

/** Everything that a kit is made from. */
export interface KitPlan {
  readonly parts: ReadonlySet<KitPart>;
  readonly sheet: Size;
  readonly card: Size;
  readonly turn: Turn;
  readonly offset: Offset;
  /** Millimetres by which a side that is a picture alone is printed past the cut; cards then keep apart. */
  readonly bleed: number;
  readonly style: FaceStyle;
  readonly cards: readonly KitCard[];
  readonly chart: Chart;
  readonly days: readonly PrintedDay[];
  readonly sitting: SittingSheet;
  /** For whom, if not for one person without a name. */
  readonly pack?: ClassPack;
}

/** The pages of one part, for one person. */
export interface PartPages {
  readonly part: KitPart;
  /** Whose it is; empty if that is not said. */
  readonly owner: string;
  readonly pages: readonly KitPage[];
}

/** Cards or dividers that are too large for the sheet, or nothing to print. */
export type KitPagesResult<T> = Result<readonly T[], string>;

/** The pages of a kit, one after another. Fails as `kitParts` does. */
export function kitPages(plan: KitPlan, dotsOf?: DotsOf): KitPagesResult<KitPage> {
  const parts = kitParts(plan, dotsOf);
  return parts.ok ? ok(parts.value.flatMap(({ pages }) => pages)) : parts;
}

/**
 * A kit part by part. With cards that are turned over every page of the other parts has an empty back, so that the
 * whole can be printed on both sides in one go. A class pack holds all parts of the first person, then those of the
 * next; the calibration page comes once. `dotsOf` is asked only if there is bleed; a picture of unknown size keeps its
 * white edge. Fails if cards or dividers are too large for the sheet.
 */
export function kitParts(plan: KitPlan, dotsOf: DotsOf = () => undefined): KitPagesResult<PartPages> {
  const laid = layCards(plan);
  if (!laid.ok) return laid;
  const dividers = plan.parts.has("dividers") ? dividerPages(plan.chart, plan.card, plan.sheet) : ok([]);
  if (!dividers.ok) return fail(`The dividers: ${dividers.error}`);
  const parts: PartPages[] = [];
  for (const [i, owner] of (plan.pack?.names ?? [""]).entries())
    for (const part of KIT_PARTS) {
      if (!plan.parts.has(part) || (part === "calibration" && i > 0)) continue;
      const pages = partPages(part, plan, { laid: laid.value, dotsOf, owner });
      if (pages.length > 0) parts.push({ part, owner: part === "calibration" ? "" : owner, pages });
    }
  return ok(parts);
}

/** Where the cards of a kit lie on a sheet. Fails if they are too large for it. */
export function layCards({ sheet, card, turn, bleed }: KitPlan): Result<Imposition, string> {
  const own = sheet.width === card.width && sheet.height === card.height;
  return impose(own ? grow(sheet, bleed) : sheet, card, turn, bleed);
}

interface PartMeans {
  readonly laid: Imposition;
  readonly dotsOf: DotsOf;
  readonly owner: string;
}

function partPages(part: KitPart, plan: KitPlan, { laid, dotsOf, owner }: PartMeans): readonly KitPage[] {
  const { sheet, card, turn, offset, style, chart } = plan;
  const single = (pages: readonly KitPage[]): readonly KitPage[] =>
    turn === "fold" ? pages : pages.flatMap((page) => [page, { ...page, items: [] }]);
  switch (part) {
    case "calibration":
      return turn === "fold" ? [] : calibrationPages(laid.grid.sheet, turn, offset);
    case "instructions":
      return single([instructionPage(sheet, owner)]);
    case "cards":
      return cardPages(cardsFor(plan, owner), laid, { style, offset, dotsOf });
    case "dividers": {
      const dividers = dividerPages(chart, card, sheet, owner);
      return single(dividers.ok ? dividers.value : []);
    }
    case "ruler":
      return single(rulerPages(chart, sheet));
    case "chart":
      return single(chartTablePages(chart, sheet));
    case "calendar":
      return single(calendarPages(plan.days, sheet, owner));
    case "pocket":
      return pocketPages(plan.days, laid, offset, owner);
    case "sheet":
      return single(sheetPages(plan.sitting, sheet));
  }
}

function cardsFor({ cards, pack, style }: KitPlan, owner: string): readonly KitCard[] {
  if (!pack?.onCards || owner === "") return cards;
  const named = (title: string): string => (title === "" ? owner : `${title} · ${owner}`);
  return cards.map((card) => ({ ...card, title: named(card.title ?? style.title) }));
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
      const dpi = dotsAnInch(item, dots);
      if (dpi >= LEAST_DPI) return [];
      return [`A picture is printed with ${Math.round(dpi)} dots an inch and looks coarse: ${item.alt}.`];
    }),
  );
}
