// What people do to the boxes of a sheet with a pen, and what they mean by it.
import { SHEET, type TickBox } from "../../../src/core/kit/sheet-layout.ts";
import type { GreyPage } from "../pdf-tools.ts";
import type { Dice } from "./dice.ts";
import { drawInk, type Pen, type Place } from "./draw-ink.ts";

/** Kinds of marks that say that the card was missed. */
export const MEANT = [
  "tick",
  "cross",
  "scribble",
  "line",
  "faint pencil",
  "thick pen",
  "long tick",
  "small tick",
  "shaded",
] as const;
/** Kinds of marks that mean nothing: accidents, and marks that were taken back. */
export const UNMEANT = ["dot", "erased", "taken back", "tail from outside"] as const;

/** A kind of mark; "nothing" is an empty box. */
export type MarkKind = (typeof MEANT)[number] | (typeof UNMEANT)[number] | "nothing";

/** How somebody marks: shares of all boxes, and the kind of mark that is usual, null if every kind comes as often. */
export interface Habit {
  readonly meant: number;
  /** As `meant`, for the boxes that leave a pile out. */
  readonly leftOut: number;
  readonly unmeant: number;
  readonly usual: (typeof MEANT)[number] | null;
}

/** How many marks of somebody with a usual kind are of that kind. */
const USUALLY = 0.85;

/** Marks some of the boxes; gives the kind for each. */
export function markBoxes(
  page: GreyPage,
  dotsPerMm: number,
  boxes: readonly TickBox[],
  habit: Habit,
  chance: Dice,
): readonly MarkKind[] {
  const pen = writingPen(chance);
  return boxes.map(({ x, y, number }) => {
    const kind = chance.chance(number === null ? habit.leftOut : habit.meant)
      ? habit.usual && chance.chance(USUALLY)
        ? habit.usual
        : chance.pick(MEANT)
      : chance.chance(habit.unmeant)
        ? chance.pick(UNMEANT)
        : "nothing";
    for (const stroke of strokesOf(kind, pen, chance)) {
      const placed = stroke.line.map(([u, v]): Place => [x + u * SHEET.box, y + v * SHEET.box]);
      drawInk(page, dotsPerMm, wobble(placed, chance), stroke.pen);
    }
    return kind;
  });
}

/** Ball pens, felt tips and soft pencils. */
const writingPen = (chance: Dice): Pen => ({
  width: chance.between(0.35, 0.8),
  dark: chance.between(0.55, 0.92),
  grain: chance.between(0, 0.25),
});

interface Stroke {
  /** In sides of the box from its top left corner. */
  readonly line: readonly Place[];
  readonly pen: Pen;
}

function strokesOf(kind: MarkKind, pen: Pen, chance: Dice): readonly Stroke[] {
  const near = (u: number, v: number, by = 0.1): Place => [u + chance.between(-by, by), v + chance.between(-by, by)];
  const tick = (): readonly Place[] => [near(0.15, 0.5), near(0.4, 0.85), near(0.95, 0.1, 0.15)];
  switch (kind) {
    case "nothing":
      return [];
    case "tick":
      return [{ line: tick(), pen }];
    case "cross":
      return [
        { line: [near(0.1, 0.1, 0.15), near(0.9, 0.9, 0.15)], pen },
        { line: [near(0.9, 0.1, 0.15), near(0.1, 0.9, 0.15)], pen },
      ];
    case "scribble":
      return [{ line: zigzag(chance, 0.2, 5), pen: { ...pen, width: Math.min(pen.width, 0.55) } }];
    case "line":
      return [{ line: [near(0.1, 0.9), near(0.9, 0.1)], pen }];
    case "faint pencil":
      return [{ line: tick(), pen: { width: chance.between(0.4, 0.7), dark: chance.between(0.22, 0.45), grain: 0.3 } }];
    case "thick pen":
      return [{ line: tick(), pen: { width: chance.between(0.9, 1.6), dark: 0.92, grain: 0 } }];
    case "long tick":
      // Into the box above, or beyond it: lines are 8.5 mm apart and boxes 6 mm high.
      return [{ line: [near(0.1, 0.5), near(0.4, 0.9), near(1, chance.between(-0.5, -1.4))], pen }];
    case "small tick":
      return [{ line: [near(0.3, 0.5, 0.05), near(0.45, 0.7, 0.05), near(0.75, 0.3, 0.05)], pen }];
    case "shaded":
      return [{ line: zigzag(chance, 0.08, 9), pen: { width: 0.9, dark: chance.between(0.3, 0.7), grain: 0.3 } }];
    case "dot": {
      const at = near(0.5, 0.5, 0.45);
      return [{ line: [at, at], pen: { ...pen, width: chance.between(0.3, 0.8) } }];
    }
    case "erased":
      return [
        { line: tick(), pen: { width: 0.6, dark: chance.between(0.02, 0.12), grain: 0.4 } },
        { line: zigzag(chance, 0.1, 4), pen: { width: 1.2, dark: chance.between(0.01, 0.04), grain: 0.2 } },
      ];
    case "taken back":
      return [
        { line: tick(), pen },
        { line: zigzag(chance, 0.02, 14), pen: { ...pen, width: Math.max(pen.width, 0.6) } },
        {
          line: zigzag(chance, 0.02, 13).map(([u, v]): Place => [v, u]),
          pen: { ...pen, width: Math.max(pen.width, 0.6) },
        },
      ];
    case "tail from outside":
      // Something written beside the box that reaches into it.
      return [{ line: [near(-1.2, 1.5, 0.2), near(-0.3, 1), near(chance.between(0.05, 0.4), 0.7)], pen }];
  }
}

function zigzag(chance: Dice, inset: number, turns: number): readonly Place[] {
  return Array.from({ length: turns + 1 }, (_, k): Place => {
    const along = inset + ((1 - 2 * inset) * k) / turns;
    return [(k % 2 === 0 ? inset : 1 - inset) + chance.between(-0.05, 0.05), along];
  });
}

/** A hand is never quite straight: each piece of a line is bent a little. */
function wobble(line: readonly Place[], chance: Dice): readonly Place[] {
  return line.flatMap((place, k): readonly Place[] => {
    const next = line[k + 1];
    if (!next) return [place];
    const bend = (): number => chance.between(-0.15, 0.15);
    return [place, [(place[0] + next[0]) / 2 + bend(), (place[1] + next[1]) / 2 + bend()]];
  });
}
