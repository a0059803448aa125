// The options that say how a kit is printed.
import type { PrintChoices } from "../app/print-plan.ts";
import type { Offset } from "../core/kit/card-pages.ts";
import { KIT_PARTS, type KitPart } from "../core/kit/kit-pages.ts";
import { BLEED_LIMITS, isBleed, parseCardSize, parseSheetSize, type Size } from "../core/kit/paper.ts";
import type { Call, Option } from "./verb.ts";

/** How a kit is printed. */
export const PRINT_OPTIONS = {
  paper: { type: "string", about: "a4, letter, a size such as 200x250mm, or card: sheets of the cards' own size (a4)" },
  card: { type: "string", about: "a7, a6, or a size such as 3x5in or 85x55mm (a7)" },
  turn: {
    type: "string",
    about: "the edge over which sheets are turned, long or short; fold: one side, folded (long)",
  },
  parts: {
    type: "string",
    about: `of ${KIT_PARTS.join(",")} (all but calibration and pocket; chart brings the ruler along)`,
  },
  mark: { type: "string", about: "what tells cards apart: number, code, both or none (number)" },
  shift: { type: "string", about: "millimetres by which backs are moved right and down, as 1,-0.5 (0,0)" },
  bleed: { type: "string", about: "millimetres by which a picture that fills a side runs past the cut, as 2 (0)" },
  language: { type: "string", about: "the language of Latin letters, for hyphenation: en, de, pt … (en)" },
} as const satisfies Record<string, Option>;

/** Most millimetres by which a back is moved; a printer that is further off needs mending. */
const MOST_SHIFT = 10;

/** Reads them; throws the call's usage error for what cannot be taken. */
export function printFrom(call: Call): PrintChoices {
  const card = parseCardSize(text(call, "card", "a7"));
  if (!card.ok) throw call.usage(`--card: ${card.error}`);
  return {
    card: card.value,
    sheet: sheetFrom(call, card.value),
    turn: oneOf(call, "turn", ["long", "short", "fold"]),
    parts: partsFrom(call),
    mark: oneOf(call, "mark", ["number", "code", "both", "none"]),
    offset: shiftFrom(call),
    bleed: bleedFrom(call),
    language: languageFrom(call),
  };
}

const text = (call: Call, name: string, usual: string): string => {
  const value = call.values[name];
  return typeof value === "string" ? value : usual;
};

function oneOf<T extends string>(call: Call, name: string, known: readonly [T, ...T[]]): T {
  const value = text(call, name, known[0]);
  const found = known.find((one) => one === value);
  if (found) return found;
  throw call.usage(`--${name} takes ${known.join(", ")}, not “${value}”`);
}

function sheetFrom(call: Call, card: Size): Size {
  const name = text(call, "paper", "a4").toLowerCase();
  if (name === "card") return card;
  const sheet = parseSheetSize(name);
  if (sheet.ok) return sheet.value;
  throw call.usage(`--paper: ${sheet.error}; card means sheets of the cards' own size`);
}

/** Printed unless others are named: what a box needs, once. */
const USUAL_PARTS = KIT_PARTS.filter((part) => part !== "calibration" && part !== "pocket");

function partsFrom(call: Call): ReadonlySet<KitPart> {
  const given = call.values.parts;
  if (typeof given !== "string") return new Set(USUAL_PARTS);
  return new Set(
    given.split(",").flatMap((part): readonly KitPart[] => {
      const known = KIT_PARTS.find((one) => one === part.trim());
      // Who asks for the chart wants to hang it up and to look days up in it.
      if (known === "chart") return ["ruler", "chart"];
      if (known) return [known];
      throw call.usage(`--parts takes ${KIT_PARTS.join(", ")} with commas between, not “${part}”`);
    }),
  );
}

function shiftFrom(call: Call): Offset {
  const value = text(call, "shift", "0,0");
  const [, right, down] = /^\s*(-?\d+(?:\.\d+)?)\s*,\s*(-?\d+(?:\.\d+)?)\s*$/.exec(value) ?? [];
  const offset = [Number(right), Number(down)] as const;
  if (offset.every((one) => Math.abs(one) <= MOST_SHIFT)) return offset;
  throw call.usage(`--shift takes two numbers of at most ${MOST_SHIFT} mm, such as 1,-0.5, not “${value}”`);
}

function bleedFrom(call: Call): number {
  const value = text(call, "bleed", "0");
  const bleed = /^\d+(?:\.\d+)?$/.test(value) ? Number(value) : Number.NaN;
  if (isBleed(bleed)) return bleed;
  throw call.usage(`--bleed takes 0, or ${BLEED_LIMITS.least} to ${BLEED_LIMITS.most} mm, not “${value}”`);
}

function languageFrom(call: Call): string {
  const value = text(call, "language", "en").toLowerCase();
  if (/^[a-z]{2,3}$/.test(value)) return value;
  throw call.usage(`--language takes a code of ISO 639, such as en, de or pt, not “${value}”`);
}
