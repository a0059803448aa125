// Pages as they are drawn: every mark with its place in millimetres from the top left corner. What draws them
// decides nothing but the size of a text within its limits.
import type { PictureHash, Region } from "../facts/fact.ts";
import { guessLanguage } from "./guess-language.ts";
import type { Slot } from "./impose.ts";
import type { Size } from "./paper.ts";

/** The room that a drawn formula takes, in ems of the text it stands in; the base line parts ascent and depth. */
export interface FormulaBox {
  readonly width: number;
  readonly ascent: number;
  readonly depth: number;
}

/** A stretch of text in one look; a `blank` is drawn, not set, a `formula` is TeX without delimiters. */
export interface TextRun {
  readonly text: string;
  readonly look: "plain" | "strong" | "answer" | "formula";
  /** Whether nothing stands beside a formula, so that it has room. */
  readonly alone?: boolean;
  /** Whether a formula belongs to what is asked, as the look `answer` says of words. */
  readonly asked?: boolean;
  /** The room of a formula that was drawn; one without is set as it was written. */
  readonly box?: FormulaBox;
}

/** Text in a box. It is set as large as it fits between the two sizes (points); if it fits at none, that is told. */
export interface TextItem extends Slot {
  readonly kind: "text";
  readonly runs: readonly TextRun[];
  readonly most: number;
  readonly least: number;
  readonly align: "start" | "center" | "end";
  readonly lie: "top" | "middle" | "bottom";
  readonly ink: "text" | "quiet";
  readonly language: string;
  readonly direction: "ltr" | "rtl";
  /** The longest word: it must fit on a line, or be hyphenated. */
  readonly longest: string;
  /** How a notice names it, if it does not fit. */
  readonly name: string;
  /** Its rank as a heading for those who hear the page; 0 for text. */
  readonly heading: 0 | 1 | 2;
}

/** A picture in the middle of a box, and the region of it that is covered or outlined. */
export interface PictureItem extends Slot {
  readonly kind: "picture";
  /** As large as it can be seen whole, or filling the box, what is too much cut off. */
  readonly fit: "whole" | "filling";
  readonly picture: PictureHash;
  readonly alt: string;
  readonly region: (Region & { readonly look: "covered" | "outlined" }) | null;
}

/** A code that a camera can read, filling a square box with its quiet zone. */
export interface CodeItem extends Slot {
  readonly kind: "code";
  readonly content: string;
  readonly alt: string;
  /** Modules of white around it inside the box; where there are none, the page must leave four. */
  readonly quiet: number;
}

/** A line of a width in millimetres; it says nothing to those who hear the page. */
export interface LineItem {
  readonly kind: "line";
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [x: number, y: number];
  readonly width: number;
  readonly look: "cut" | "fold" | "drawn";
}

/** A filled or framed rectangle. */
export interface BoxItem extends Slot {
  readonly kind: "box";
  /** 0 white … 1 the darkest of one hue; null for none. */
  readonly shade: number | null;
  readonly frame: boolean;
}

/** Anything on a page. */
export type PageItem = TextItem | PictureItem | CodeItem | LineItem | BoxItem;

/** One side of a sheet. */
export interface KitPage extends Size {
  readonly items: readonly PageItem[];
  /** Millimetres on every side that are cut away, if the page is one card; usually nothing. */
  readonly bleed?: number;
}

/** The usual text item, with what differs. */
export function textItem(
  place: Omit<Slot, "turned"> & { readonly turned?: boolean },
  text: string,
  more: Partial<TextItem> = {},
): TextItem {
  return {
    kind: "text",
    turned: false,
    runs: [{ text, look: "plain" }],
    most: 10,
    least: 5,
    align: "start",
    lie: "top",
    ink: "text",
    language: "en",
    direction: "ltr",
    longest: "",
    name: text.slice(0, 40),
    heading: 0,
    ...place,
    ...more,
  };
}

/** The name of a person, whatever script it is in. */
export function nameItem(place: Omit<Slot, "turned">, name: string, more: Partial<TextItem> = {}): TextItem {
  const { code: language, direction } = guessLanguage(name, "en");
  return textItem(place, name, { language, direction, name: `the name “${name}”`, ...more });
}

/** An item of a page `by` millimetres further right and down. */
export function moveItem(item: PageItem, [right, down]: readonly [number, number]): PageItem {
  if (item.kind !== "line") return { ...item, x: item.x + right, y: item.y + down };
  const move = ([x, y]: readonly [number, number]) => [x + right, y + down] as const;
  return { ...item, from: move(item.from), to: move(item.to) };
}

/** An item drawn for an upright slot, as it lies if the slot stands on its head. */
export function turnWith<T extends PageItem>(item: T, slot: Slot): T {
  if (!slot.turned || item.kind === "line") return item;
  const { x, y, width, height } = item;
  const turned = { x: 2 * slot.x + slot.width - x - width, y: 2 * slot.y + slot.height - y - height };
  return { ...item, ...turned, turned: !item.turned };
}
