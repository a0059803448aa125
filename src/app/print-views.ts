// What the Kit page shows: the kit sheet by sheet, and a PDF in the making.

import { parseCardNumber } from "../core/cards/card-number.ts";
import type { DotsOf } from "../core/kit/card-pages.ts";
import type { KitPlan } from "../core/kit/kit-pages.ts";
import { type KitSheet, kitSheet, type SheetsOfPart } from "../core/kit/kit-sheet.ts";
import { FailureError } from "./failure.ts";
import type { LibraryCard } from "./kit.ts";

/** Something that does not come out as it should; `card` is the one concerned, if it is one. */
export interface KitNotice {
  readonly text: string;
  readonly card: { readonly number: number; readonly fact: string } | null;
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

/** A sheet of a kit, counted from 0; the last if there are fewer. Fails with `invalid-input` if the pieces do not fit. */
export function sheetOf(plan: KitPlan, wanted: number, dotsOf?: DotsOf): KitSheet {
  const sheet = kitSheet(plan, wanted, dotsOf);
  if (!sheet.ok) throw new FailureError("invalid-input", `${capital(sheet.error)}.`);
  return sheet.value;
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
