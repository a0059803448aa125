// Sizes of sheets and cards, in millimetres. ISO 216: A4 210 × 297, A6 105 × 148, A7 74 × 105; an inch is 25.4 mm.
import { fail, ok, type Result } from "../result.ts";

/** Width and height in millimetres. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

const INCH = 25.4;

/** Sheets by name, upright. */
export const SHEETS: Readonly<Record<string, Size>> = {
  a4: { width: 210, height: 297 },
  letter: { width: 8.5 * INCH, height: 11 * INCH },
};

/** Cards by name, lying. */
const CARDS: Readonly<Record<string, Size>> = {
  a7: { width: 105, height: 74 },
  a6: { width: 148, height: 105 },
};

/** How small and how large a card can be, in millimetres. */
export const CARD_LIMITS = { least: 40, most: 420 } as const;

/** How small and how large a sheet can be, in millimetres. */
export const SHEET_LIMITS = { least: 70, most: 900 } as const;

/** How much can be cut away round a card, in millimetres, if anything is: strokes to cut along lie in it. Common practice is 3. */
export const BLEED_LIMITS = { least: 1, most: 5 } as const;

/** Whether so much can be cut away round every card. */
export const isBleed = (millimetres: number): boolean =>
  millimetres === 0 || (millimetres >= BLEED_LIMITS.least && millimetres <= BLEED_LIMITS.most);

/** The sheet that a text names: a4, letter, or width × height such as 200x250mm; it stands upright. */
export function parseSheetSize(text: string): Result<Size, string> {
  const known = Object.hasOwn(SHEETS, text.toLowerCase()) ? SHEETS[text.toLowerCase()] : undefined;
  if (known) return ok(known);
  const sides = parseSides(text);
  if (!sides) return fail(`a sheet is ${Object.keys(SHEETS).join(", ")}, or a size such as 200x250mm, not “${text}”`);
  const { least, most } = SHEET_LIMITS;
  if (sides.some((side) => side < least || side > most))
    return fail(`the sides of a sheet are ${least} to ${most} mm, not ${sidesInWords(sides)}`);
  return ok({ width: Math.min(...sides), height: Math.max(...sides) });
}

/** Two numbers and a unit, in millimetres. */
function parseSides(text: string): readonly [number, number] | null {
  const [, first, second, unit] = /^(\d+(?:\.\d+)?)\s*[x×]\s*(\d+(?:\.\d+)?)\s*(mm|in)$/i.exec(text.trim()) ?? [];
  if (first === undefined) return null;
  const scale = unit?.toLowerCase() === "in" ? INCH : 1;
  return [Number(first) * scale, Number(second) * scale];
}

const sidesInWords = (sides: readonly number[]): string => `${sides.map((side) => +side.toFixed(1)).join(" × ")} mm`;

/** The size that a text names: a7, a6, or width × height such as 85x55mm or 3x5in. Cards lie: the longer side is the width. */
export function parseCardSize(text: string): Result<Size, string> {
  const known = Object.hasOwn(CARDS, text.toLowerCase()) ? CARDS[text.toLowerCase()] : undefined;
  if (known) return ok(known);
  const sides = parseSides(text);
  if (!sides) return fail(`a card is a7, a6, or a size such as 85x55mm or 3x5in, not “${text}”`);
  const { least, most } = CARD_LIMITS;
  if (sides.some((side) => side < least || side > most))
    return fail(`the sides of a card are ${least} to ${most} mm, not ${sidesInWords(sides)}`);
  return ok({ width: Math.max(...sides), height: Math.min(...sides) });
}

/** A size turned by a quarter. */
export const quarterTurn = ({ width, height }: Size): Size => ({ width: height, height: width });
