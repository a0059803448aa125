// What stands on the two sides of a printed card, and where.

import { printedNumber } from "../cards/card-number.ts";
import { BLANK, type CardSide } from "../cards/cards.ts";
import type { PictureHash } from "../facts/fact.ts";
import { formulaRuns } from "../text/formula-runs.ts";
import { guessLanguage, longestWord } from "./guess-language.ts";
import type { Slot } from "./impose.ts";
import { type PageItem, type PictureItem, type TextItem, type TextRun, textItem, turnWith } from "./page.ts";

/** A card to be printed. */
export interface KitCard {
  readonly number: number;
  readonly prompt: CardSide;
  readonly answer: CardSide;
  readonly note: string;
  readonly story: string;
  readonly source: string;
  readonly why: string;
  readonly pictureAlt: string;
  readonly pictureSource: string;
  readonly pictureLicence: string;
  /** What stands above it where it is not the title of the kit. */
  readonly title?: string;
  /** The language of its words (BCP 47) where it is known; else that of the kit is taken. */
  readonly language?: string;
}

/** How cards are told apart on paper: a number with its check digit, a code for a camera, both or neither. */
export type CardMark = "number" | "code" | "both" | "none";

/** What all cards of a kit share. */
export interface FaceStyle {
  readonly title: string;
  readonly mark: CardMark;
  /** The language of what is written in Latin letters, and of characters that several languages share. */
  readonly language: string;
}

/** Sizes of what is on a card: millimetres, and points for text. Common practice for cards held at reading distance. */
export const FACE = {
  side: 6,
  edge: 8,
  edgeWithCode: 15,
  code: 12,
  prompt: { most: 20, least: 8 },
  /** A formula by itself cannot be broken into lines, so it may become as small as notes. */
  formulaLeast: 6,
  notes: { most: 9, least: 6 },
  foot: 7,
} as const;

/** The items of one side of a card in its slot, in reading order. */
export function faceItems(card: KitCard, side: "prompt" | "answer", slot: Slot, style: FaceStyle): readonly PageItem[] {
  const code = side === "prompt" && (style.mark === "code" || style.mark === "both");
  // The edge above is as high as the one below, so that the middle of what is asked is the middle of the card.
  const edge = code ? FACE.edgeWithCode : FACE.edge;
  const room = {
    ...slot,
    turned: false,
    x: slot.x + FACE.side,
    y: slot.y + edge,
    width: slot.width - 2 * FACE.side,
    height: slot.height - 2 * edge,
  };
  const language = card.language?.split("-")[0]?.toLowerCase() || style.language;
  const items = [...bodyItems(card, side, room, { ...style, language }), ...edgeItems(card, side, slot, style)];
  return items.map((item) => turnWith(item, slot));
}

function bodyItems(card: KitCard, side: "prompt" | "answer", room: Slot, style: FaceStyle): readonly PageItem[] {
  const { picture, cover, sound } = card[side];
  const text = sound === null ? runsOf(card[side].text) : [...runsOf(card[side].text), ...soundRuns(card[side])];
  const notes = side === "answer" ? notesOf(card) : [];
  const name = `the ${side} of card ${printedNumber(card.number)}`;
  const noteShare = notes.length > 0 ? (text.length > 0 && picture ? 0.22 : 0.42) : 0;
  const main = { ...room, height: room.height * (1 - noteShare) };
  const pictureShare = picture ? (text.length > 0 ? 0.66 : 1) : 0;
  const below = { ...main, y: main.y + main.height * pictureShare, height: main.height * (1 - pictureShare) };
  const items: PageItem[] = [];
  if (picture) {
    const height = main.height * pictureShare - (text.length > 0 ? 1 : 0);
    const region = cover && { ...cover, look: side === "prompt" ? ("covered" as const) : ("outlined" as const) };
    items.push({ ...pictureItem(card, side, { ...main, height }, picture), region });
  }
  const least = text.length === 1 && text[0]?.look === "formula" ? FACE.formulaLeast : FACE.prompt.least;
  if (text.length > 0) items.push(fittedText(below, text, { ...FACE.prompt, least, lie: "middle", name }, style));
  if (notes.length > 0) {
    const place = { ...room, y: room.y + main.height + 1, height: room.height - main.height - 1 };
    const look = { ...FACE.notes, lie: "bottom", ink: "quiet", name: `the notes on ${name}` } as const;
    items.push(fittedText(place, notes, look, style));
  }
  return items;
}

/** The picture of a side, whole in a place. */
export const pictureItem = (
  card: KitCard,
  side: "prompt" | "answer",
  place: Slot,
  picture: PictureHash,
): PictureItem => ({
  kind: "picture",
  fit: "whole",
  ...place,
  picture,
  alt: pictureWords(card, side),
  region: null,
});

function pictureWords(card: KitCard, side: "prompt" | "answer"): string {
  if (card.pictureAlt !== "") return card.pictureAlt;
  return side === "prompt" ? `Picture asked on card ${printedNumber(card.number)}` : "Picture of the answer";
}

/** What stands small below the answer, a line each. */
export function notesOf(card: KitCard): readonly TextRun[] {
  const credit = [card.pictureSource, card.pictureLicence].filter((one) => one !== "").join(", ");
  const lines = [card.note, card.story, card.why, card.source, credit === "" ? "" : `Picture: ${credit}`];
  const filled = lines.filter((line) => line !== "");
  return filled.flatMap((line, i) => runsOf(formulaRuns(i === 0 ? line : `\n${line}`), false));
}

/** Paper is silent, so a side with a sound says where it can be heard. */
const soundRuns = ({ text }: CardSide): readonly TextRun[] => [
  { text: `${text.length > 0 ? "\n" : ""}(a sound: play it on a screen)`, look: "plain" },
];

const runsOf = (parts: CardSide["text"], alone = parts.length === 1): readonly TextRun[] =>
  parts.map(({ text, role, asked }) => {
    if (role === "blank") return { text: BLANK, look: "plain" };
    if (role !== "formula") return { text, look: role };
    return { text, look: role, ...(alone ? { alone } : {}), ...(asked ? { asked } : {}) };
  });

/** Text set as large as it fits; what is not written in words does not tell language and line breaks. */
function fittedText(place: Slot, runs: readonly TextRun[], more: Partial<TextItem>, style: FaceStyle): TextItem {
  const all = runs.map((run) => (run.look === "formula" ? " " : run.text)).join("");
  const { code, direction } = guessLanguage(all, style.language);
  const longest = longestWord(all);
  return textItem(place, all, { align: "center", ...more, runs, language: code, direction, longest });
}

/** Title, number and code of a side, near its edges. */
export function edgeItems(card: KitCard, side: "prompt" | "answer", slot: Slot, style: FaceStyle): readonly PageItem[] {
  const items: PageItem[] = [];
  const number = printedNumber(card.number);
  const line = { turned: false, x: slot.x + FACE.side, width: slot.width / 2 - FACE.side, height: 3.5 };
  const small = { most: FACE.foot, least: 5, ink: "quiet", lie: "middle" } as const;
  const above = card.title ?? style.title;
  const { code: language, direction } = guessLanguage(above, style.language);
  // Above an answer the title stands at the other end, so that a pile shows at a glance which side is up.
  const title = { ...line, width: slot.width - 2 * FACE.side, y: slot.y + 3 };
  const align = (side === "prompt") === (direction === "ltr") ? "start" : "end";
  if (above !== "") items.push(textItem(title, above, { ...small, align, language, direction, name: "the title" }));
  const foot = { ...line, y: slot.y + slot.height - 3 - line.height };
  if (style.mark === "number" || style.mark === "both")
    items.push(textItem(foot, number, { ...small, ink: "text", runs: [{ text: number, look: "strong" }], most: 9 }));
  if ((style.mark === "code" || style.mark === "both") && side === "prompt") {
    const at = { x: slot.x + slot.width - FACE.code - 2, y: slot.y + slot.height - FACE.code - 2 };
    const square = { ...at, width: FACE.code, height: FACE.code, turned: false };
    items.push({ kind: "code", ...square, content: number, alt: `Code of card ${number}`, quiet: 4 });
  }
  return items;
}
