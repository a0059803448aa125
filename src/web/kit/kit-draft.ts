// What a person chose for a kit: kept on this device, read back with care, and put into the words of the server.
import { cleanText } from "../../core/facts/clean-text.ts";
import { parseNames } from "../../core/kit/class-names.ts";
import { KIT_PARTS, type KitPart } from "../../core/kit/kit-pages.ts";
import { parseCardSize, parseSheetSize } from "../../core/kit/paper.ts";
import type { KitOrder } from "../client.ts";

/** The choices. What is null was never chosen and follows from what there is. */
export interface KitDraft {
  readonly subjects: readonly string[] | null;
  readonly only: "all" | "changed" | null;
  readonly parts: readonly KitPart[] | null;
  /** "a4", "letter", "card" for sheets of the cards' own size, or a size such as 200x250mm. */
  readonly paper: string;
  readonly card: string;
  readonly turn: KitOrder["turn"];
  readonly mark: KitOrder["mark"];
  /** How far backs are moved, in millimetres. */
  readonly right: number;
  readonly down: number;
  /** Millimetres by which a picture that fills a side runs past the cut; 0 for none. */
  readonly bleed: number;
  readonly language: string;
  readonly days: number;
  readonly nameOnCards: boolean;
  readonly zip: boolean;
  /** First day of the boxes of a class; "" for today. */
  readonly start: string;
}

/** The farthest that backs can be moved, in millimetres. */
export const MOST_SHIFT = 10;

/** Places where sheets of 8.5 × 11 inches are what a shop sells. */
const LETTER_PLACES = /-(US|CA|MX|PH|CL|CO)\b/u;

/** A kit before anything was chosen; `locale` tells which paper is usual. */
export const freshDraft = (locale: string): KitDraft => ({
  subjects: null,
  only: null,
  parts: null,
  paper: LETTER_PLACES.test(locale) ? "letter" : "a4",
  card: "a7",
  turn: "long",
  mark: "number",
  right: 0,
  down: 0,
  bleed: 0,
  language: "en",
  days: 64,
  nameOnCards: false,
  zip: false,
  start: "",
});

const CHOICES: Partial<Record<keyof KitDraft, readonly unknown[]>> = {
  only: ["all", "changed", null],
  turn: ["long", "short", "fold"],
  mark: ["number", "code", "both", "none"],
};

/** The choices in a kept text; whatever cannot be read is as if it had never been chosen. */
export function readDraft(text: string | null, locale: string): KitDraft {
  const fresh = freshDraft(locale);
  const kept = keptObject(text);
  const good = Object.entries(fresh).filter(([key, usual]) => isFit(key as keyof KitDraft, kept[key], usual));
  return { ...fresh, ...Object.fromEntries(good.map(([key]) => [key, kept[key]])) };
}

function keptObject(text: string | null): Readonly<Record<string, unknown>> {
  try {
    const parsed: unknown = JSON.parse(text ?? "{}");
    return typeof parsed === "object" && parsed !== null ? (parsed as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

function isFit(key: keyof KitDraft, value: unknown, usual: unknown): boolean {
  const choices = CHOICES[key];
  if (choices) return choices.includes(value);
  if (key === "parts") return Array.isArray(value) && value.every((part) => KIT_PARTS.includes(part as KitPart));
  if (key === "subjects") return Array.isArray(value) && value.every((one) => typeof one === "string");
  return typeof value === typeof usual;
}

/** Parts of the first kit that is printed of a box, and of those that bring its paper up to date. */
const FIRST_PARTS: readonly KitPart[] = ["instructions", "cards", "dividers", "calendar"];
const LATER_PARTS: readonly KitPart[] = ["cards"];

/** What follows from what there is. */
export interface Around {
  /** Subjects that there are. */
  readonly subjects: readonly string[];
  /** Whether any card was recorded as printed. */
  readonly printed: boolean;
  /** One name a line. */
  readonly names: string;
}

/** A draft in which nothing is open any more. */
export interface SettledDraft extends KitDraft {
  readonly subjects: readonly string[];
  readonly only: "all" | "changed";
  readonly parts: readonly KitPart[];
}

/** The draft with what was never chosen filled in: all subjects, and once there is paper only what it lacks. */
export function settleDraft(draft: KitDraft, { subjects, printed, names }: Around): SettledDraft {
  const wanted = draft.subjects?.filter((one) => subjects.includes(one));
  const pack = names.trim() !== "";
  return {
    ...draft,
    subjects: wanted ?? subjects,
    only: pack ? "all" : (draft.only ?? (printed ? "changed" : "all")),
    parts: draft.parts ?? (printed && !pack ? LATER_PARTS : FIRST_PARTS),
  };
}

/** What is wrong with a choice, by field. */
export interface DraftProblems {
  readonly paper?: string;
  readonly card?: string;
  readonly names?: string;
}

/** What keeps a draft from being printed. */
export function draftProblems({ paper, card }: KitDraft, names: string): DraftProblems {
  const sheet = paper === "card" ? null : parseSheetSize(paper);
  const piece = parseCardSize(card);
  const class_ = parseNames(names);
  return {
    ...(sheet && !sheet.ok ? { paper: sentence(sheet.error) } : {}),
    ...(piece.ok ? {} : { card: sentence(piece.error) }),
    ...(class_.ok ? {} : { names: sentence(class_.error) }),
  };
}

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

/** The kit as the server takes it. */
export function orderOf(draft: SettledDraft, names: string): KitOrder {
  const { subjects, only, parts, paper, card, turn, mark, right, down, bleed, language, days, nameOnCards, start } =
    draft;
  return {
    ...{ subjects: [...subjects], only, parts: KIT_PARTS.filter((part) => parts.includes(part)) },
    ...{ paper: paper === "card" ? null : paper, card, turn, mark, right, down, bleed, language, days },
    ...(cleanText(names).trim() === "" ? {} : { names, nameOnCards, start: start === "" ? null : start }),
  };
}

/** A size of one's own in its pieces, as far as it is typed. */
export interface TypedSize {
  readonly width: string;
  readonly height: string;
  readonly unit: "mm" | "in";
}

/** The pieces of a size such as 85x55mm. */
export function typedSize(text: string): TypedSize {
  const [, width = "", height = "", unit = "mm"] = /^([^x]*)x([^x]*?)(mm|in)$/u.exec(text) ?? [];
  return { width, height, unit: unit === "in" ? "in" : "mm" };
}

/** A size out of its pieces; a decimal comma is taken for a point. */
export const sizeText = ({ width, height, unit }: TypedSize): string =>
  `${width.trim().replace(",", ".")}x${height.trim().replace(",", ".")}${unit}`;
