// Whether a box is ticked, empty, or neither for sure. The limits were set on photos of one set of seeds and measured
// on another (docs/photo-reading.md); what lies between them is shown to the person.

/** What a box says. */
export type Judgement = "empty" | "ticked" | "doubtful";

/** Ink of one stroke in a box. */
export interface StrokeInk {
  readonly stroke: number;
  /** Mean darkness that the stroke gives to the inner box, 0 … 1. */
  readonly ink: number;
  /** How much of the stroke, printed frames left out, lies in this box: 0 … 1. */
  readonly share: number;
}

/** What is in a box. */
export interface BoxInk {
  /** Darkness of the palest side of its frame, 0 … 1. */
  readonly frame: number;
  readonly strokes: readonly StrokeInk[];
  /** Mean darkness of ink in the middle of the box: its inner half by length. */
  readonly middle: number;
  /** The paper in the box against the brightest beside it, 0 … 1. */
  readonly even: number;
}

/** Limits between the judgements. */
export const LIMITS = {
  /** At most so much ink in an empty box. */
  empty: 0.004,
  /** At least so much ink in a ticked box. */
  ticked: 0.05,
  /** At least so much ink in the middle of a ticked box: what only reaches in from outside leaves less. */
  middle: 0.03,
  /** More ink than this is a box that was blacked out. */
  blackedOut: 0.42,
  /** A stroke that crosses several boxes belongs to the one that holds most of it, and to others with this part of that. */
  tail: 0.6,
  /** A stroke belongs to a box if at least this part of it lies in it. */
  inside: 0.3,
  /** The paper in a box is at least so bright, against the brightest of the paper beside it. */
  even: 0.72,
  /** The palest side of a frame is at least so dark, or the box was not found. */
  frame: 0.08,
} as const;

/** Judges every box of a page together: a stroke that crosses several says something about each. */
export function judgeBoxes(boxes: readonly BoxInk[]): readonly Judgement[] {
  const most = new Map<number, number>();
  for (const { strokes } of boxes)
    for (const { stroke, ink } of strokes) most.set(stroke, Math.max(ink, most.get(stroke) ?? 0));
  const isOwn = ({ stroke, ink, share }: StrokeInk): boolean =>
    share >= LIMITS.inside && ink >= LIMITS.tail * (most.get(stroke) ?? 0);
  return boxes.map((box) => judgeBox(box, isOwn));
}

function judgeBox({ frame, strokes, middle, even }: BoxInk, isOwn: (one: StrokeInk) => boolean): Judgement {
  if (frame < LIMITS.frame || even < LIMITS.even) return "doubtful";
  const sum = (some: readonly StrokeInk[]): number => some.reduce((all, { ink }) => all + ink, 0);
  const all = sum(strokes);
  if (all < LIMITS.empty) return "empty";
  if (all > LIMITS.blackedOut || middle < LIMITS.middle) return "doubtful";
  return sum(strokes.filter(isOwn)) < LIMITS.ticked ? "doubtful" : "ticked";
}
