// One sheet of a kit. The cards on all the others are counted, not laid out: there may be tens of thousands.
import { ok, type Result } from "../result.ts";
import type { DotsOf } from "./card-pages.ts";
import { KIT_PARTS, type KitPart, type KitPlan, kitParts, layCards } from "./kit-pages.ts";
import type { KitPage } from "./page.ts";

/** A part of a kit as it lies in the pile of sheets; for a class pack, in the first person's. */
export interface SheetsOfPart {
  readonly part: KitPart;
  readonly sheets: number;
}

/** One sheet, and what surrounds it. */
export interface KitSheet {
  /** Which sheet it is, counted from 0; 0 of none if there is nothing to print. */
  readonly sheet: number;
  readonly parts: readonly SheetsOfPart[];
  /** Its front and back, or its only side if cards are folded. */
  readonly pages: readonly KitPage[];
  /** Pages of the whole kit, all boxes of a class pack included. */
  readonly allPages: number;
}

/** A sheet of a kit, counted from 0; the last if there are fewer. Fails as `kitParts` does. */
export function kitSheet(plan: KitPlan, wanted: number, dotsOf?: DotsOf): Result<KitSheet, string> {
  const laid = layCards(plan);
  if (!laid.ok) return laid;
  const first = firstBox(plan);
  const others = kitParts({ ...first, cards: [] });
  if (!others.ok) return others;
  const sides = plan.turn === "fold" ? 1 : 2;
  const onSheet = laid.value.fronts.length;
  const pagesOf = (part: KitPart): readonly KitPage[] => others.value.find((one) => one.part === part)?.pages ?? [];
  const cardSheets = plan.parts.has("cards") ? Math.ceil(plan.cards.length / onSheet) : 0;
  const parts = KIT_PARTS.map((part) => ({
    part,
    sheets: part === "cards" ? cardSheets : Math.ceil(pagesOf(part).length / sides),
  })).filter(({ sheets }) => sheets > 0);
  const place = placeOf(parts, wanted);
  const boxes = plan.pack?.names.length ?? 1;
  const allPages = parts.reduce((sum, { part, sheets }) => sum + sides * sheets * (isOnce(part) ? 1 : boxes), 0);
  if (!place) return ok({ sheet: 0, parts, pages: [], allPages });
  const { sheet, part, at } = place;
  if (part !== "cards") return ok({ sheet, parts, pages: pagesOf(part).slice(at * sides, (at + 1) * sides), allPages });
  const cards = plan.cards.slice(at * onSheet, (at + 1) * onSheet);
  const shown = kitParts({ ...first, parts: new Set(["cards"]), cards }, dotsOf);
  return shown.ok ? ok({ sheet, parts, pages: shown.value.flatMap(({ pages }) => pages), allPages }) : shown;
}

/** The calibration page is about the printer, not about a box. */
const isOnce = (part: KitPart): boolean => part === "calibration";

const firstBox = (plan: KitPlan): KitPlan =>
  plan.pack ? { ...plan, pack: { ...plan.pack, names: plan.pack.names.slice(0, 1) } } : plan;

/** Where in the pile a sheet is: in which part, and how many sheets of that come before it. */
function placeOf(parts: readonly SheetsOfPart[], wanted: number) {
  const total = parts.reduce((sum, { sheets }) => sum + sheets, 0);
  const sheet = Math.min(wanted, total - 1);
  let at = sheet;
  for (const { part, sheets } of parts) {
    if (at < sheets) return { sheet, part, at };
    at -= sheets;
  }
  return null;
}
