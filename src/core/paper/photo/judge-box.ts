// Whether a box is ticked, empty, or neither for sure. The limits were set on photos of one set of seeds and measured
// on another (docs/photo-reading.md); what lies between them is shown to the person.
import { SHEET } from "../../kit/sheet-layout.ts";
import { type Frame, findFrame } from "./find-frame.ts";
import { type FlatPage, STEPS } from "./flat-page.ts";
import type { StrokeMap } from "./ink-strokes.ts";

/** What a box says. */
export type Judgement = "empty" | "ticked" | "doubtful";

/** Limits between the judgements; ink is the mean darkness of the inner box, 0 … 1. */
export const LIMITS = {
  /** Darkness that counts as ink: above the noise of a camera. */
  ink: 0.06,
  /** Darkness that joins dots to a stroke. */
  stroke: 0.1,
  /** At most so much ink in an empty box. */
  empty: 0.004,
  /** At least so much ink in a ticked box. */
  ticked: 0.05,
  /** At least so much ink in the middle of a ticked box: what only reaches in from outside leaves less. */
  middle: 0.03,
  /** More ink than this is a box that was blacked out. */
  blackedOut: 0.42,
  /** A stroke belongs to the box that holds most of it; one that holds less than this part of that may have caught its tail. */
  tail: 0.6,
  /** The paper in a box is at least so bright, against the brightest of the paper beside it. */
  even: 0.72,
  /** The palest side of a frame is at least so dark, or the box was not found. */
  frame: 0.08,
} as const;

/** Millimetres from a box's outer edge to what counts as inside: past its frame and a little blur. */
const INSET = 0.8;

/** What is in a box. */
export interface BoxInk {
  readonly frame: Frame;
  /** Ink of the inner box by stroke; 0 is what is too pale for a stroke. */
  readonly byStroke: ReadonlyMap<number, number>;
  /** Ink of all strokes in the middle of the box: its inner half by length. */
  readonly middle: number;
  /** The paper in the box against the brightest beside it, 0 … 1. */
  readonly even: number;
}

/** Measures the box whose corner should be at (x, y) mm. */
export function measureBox(page: FlatPage, strokes: StrokeMap, x: number, y: number): BoxInk {
  const frame = findFrame(page, x, y);
  const inset = Math.round(INSET * STEPS);
  const long = SHEET.box * STEPS - 2 * inset;
  const quarter = Math.round(long / 4);
  const byStroke = new Map<number, number>();
  let [middle, white] = [0, 0];
  for (let j = 0; j < long; j++)
    for (let i = 0; i < long; i++) {
      const at = (frame.top + inset + j) * page.width + frame.left + inset + i;
      white += page.white[at] as number;
      const dark = page.dark[at] as number;
      if (dark < LIMITS.ink) continue;
      const stroke = strokes[at] as number;
      byStroke.set(stroke, (byStroke.get(stroke) ?? 0) + dark / long ** 2);
      if (Math.min(i, j) >= quarter && Math.max(i, j) < long - quarter) middle += dark / (long - 2 * quarter) ** 2;
    }
  return { frame, byStroke, middle, even: Math.min(1, white / long ** 2 / whiteBeside(page, frame)) };
}

/** The brightest paper 2 mm outside the corners and sides of a box. */
function whiteBeside({ width, height, white }: FlatPage, { left, top }: Frame): number {
  const side = SHEET.box * STEPS;
  const away = 2 * STEPS;
  let most = 1;
  for (const v of [-away, side / 2, side + away])
    for (const u of [-away, side / 2, side + away]) {
      if (u === side / 2 && v === side / 2) continue;
      const [x, y] = [Math.min(Math.max(left + u, 0), width - 1), Math.min(Math.max(top + v, 0), height - 1)];
      most = Math.max(most, white[y * width + x] as number);
    }
  return most;
}

/** Judges every box of a page together: a stroke that crosses several says something about each. */
export function judgeBoxes(boxes: readonly BoxInk[]): readonly Judgement[] {
  const mostOf = new Map<number, number>();
  for (const { byStroke } of boxes)
    for (const [stroke, ink] of byStroke) mostOf.set(stroke, Math.max(ink, mostOf.get(stroke) ?? 0));
  return boxes.map((box) =>
    judgeBox(box, (stroke, ink) => stroke === 0 || ink >= LIMITS.tail * (mostOf.get(stroke) ?? 0)),
  );
}

function judgeBox(
  { frame, byStroke, middle, even }: BoxInk,
  isOwn: (stroke: number, ink: number) => boolean,
): Judgement {
  if (frame.palest < LIMITS.frame || even < LIMITS.even) return "doubtful";
  let [all, own] = [0, 0];
  for (const [stroke, ink] of byStroke) {
    all += ink;
    if (isOwn(stroke, ink)) own += ink;
  }
  if (all < LIMITS.empty) return "empty";
  if (own < LIMITS.ticked || middle < LIMITS.middle || all > LIMITS.blackedOut) return "doubtful";
  return "ticked";
}
