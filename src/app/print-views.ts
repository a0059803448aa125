// What the Kit page shows: the kit sheet by sheet, and a PDF in the making.

import { parseCardNumber } from "../core/cards/card-number.ts";
import type { DotsOf } from "../core/kit/card-pages.ts";
import { type KitPart, type KitPlan, kitParts } from "../core/kit/kit-pages.ts";
import type { KitPage } from "../core/kit/page.ts";
import { FailureError } from "./failure.ts";
import type { LibraryCard } from "./kit.ts";

/** Something that does not come out as it should; `card` is the one concerned, if it is one. */
export interface KitNotice {
  readonly text: string;
  readonly card: { readonly number: number; readonly fact: string } | null;
}

/** A part of a kit as it lies in the pile of sheets; for a class pack, in the first person's. */
export interface SheetsOfPart {
  readonly part: KitPart;
  readonly sheets: number;
}

/** One sheet of a kit as it will be printed. */
export interface KitPreview {
  /** Pages of the whole kit, all boxes of a class pack included. */
  readonly pages: number;
  readonly cards: number;
  /** Boxes: the names of a class pack, else 1. */
  readonly boxes: number;
  readonly parts: readonly SheetsOfPart[];
  /** Which sheet is shown, counted from 0; 0 of none if there is nothing to print. */
  readonly sheet: number;
  /** Millimetres. */
  readonly size: { readonly width: number; readonly height: number };
  /** Pictures of its sides (SVG), the front first; null for an empty one. */
  readonly sides: readonly (string | null)[];
  readonly notices: readonly KitNotice[];
}

/** A PDF in the making, or made. */
export interface KitJobView {
  readonly id: string;
  readonly state: "making" | "done" | "stopped" | "failed";
  /** What it is at, and how far that has come. */
  readonly step: "pictures" | "setting" | "finishing" | "names";
  readonly done: number;
  readonly total: number;
  readonly pages: number;
  readonly bytes: number;
  /** The name under which it is downloaded. */
  readonly file: string;
  readonly notices: readonly KitNotice[];
  readonly message: string | null;
  /** How many cards can be recorded as printed; 0 where none can. */
  readonly recordable: number;
  /** The step by which they were recorded; null before. */
  readonly recorded: string | null;
}

/** One sheet of a plan, and what surrounds it. */
export interface SheetPages {
  readonly sheet: number;
  readonly parts: readonly SheetsOfPart[];
  readonly pages: readonly KitPage[];
}

/** The pages of a sheet, counted from 0; the nearest if there are fewer. Fails with `invalid-input` if the pieces do not fit. */
export function sheetPagesOf(plan: KitPlan, wanted: number, dotsOf?: DotsOf): SheetPages {
  const { pack } = plan;
  const laid = kitParts(pack ? { ...plan, pack: { ...pack, names: pack.names.slice(0, 1) } } : plan, dotsOf);
  if (!laid.ok) throw new FailureError("invalid-input", `${capital(laid.error)}.`);
  const perSheet = plan.turn === "fold" ? 1 : 2;
  const parts = laid.value.map(({ part, pages }) => ({ part, sheets: Math.ceil(pages.length / perSheet) }));
  const pages = laid.value.flatMap((one) => one.pages);
  const last = Math.max(0, Math.ceil(pages.length / perSheet) - 1);
  const sheet = Math.min(wanted, last);
  return { sheet, parts, pages: pages.slice(sheet * perSheet, (sheet + 1) * perSheet) };
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** Notices with the cards that they name by their printed number. */
export function kitNotices(notices: readonly string[], cards: readonly LibraryCard[]): readonly KitNotice[] {
  const byNumber = new Map(cards.map(({ fact, card }) => [card.number, fact]));
  return notices.map((text) => {
    const named = /\bcard (\d+-\d)\b/u.exec(text)?.[1];
    const number = named === undefined ? null : parseCardNumber(named);
    const fact = number?.ok ? byNumber.get(number.value) : undefined;
    return { text, card: number?.ok && fact !== undefined ? { number: number.value, fact } : null };
  });
}
