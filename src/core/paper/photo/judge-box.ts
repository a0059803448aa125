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
  /** Mean darkness of dots that are nearly dark enough for ink, above that of the boxes near by: faint marks have many. */
  readonly pale: number;
  /** Mean darkness of ink in the middle of the box: its inner half by length. */
  readonly middle: number;
  /** The darkest paper in the box against the brightest in it, 0 … 1. */
  readonly steady: number;
  /** The paper in the box against the darkest beside it, 0 … 1. */
  readonly even: number;
}

/** Limits between the judgements. */
export const LIMITS = {
  /** At most so much ink in an empty box. */
  empty: 0.003,
  /** At most so much that is nearly ink. The faintest pencil of the tuning photos left 0.008 of both together. */
  pale: 0.004,
  /** At least so much ink in a ticked box. */
  ticked: 0.036,
  /** The same where the edge of a shadow crosses the box: caught between it and the frame, shadow looks like ink. */
  tickedInShadow: 0.09,
  /** The darkest paper in the box against the brightest; less is the edge of a shadow. */
  steady: 0.85,
  /** At least so much ink in the middle of a ticked box: what only reaches in from outside leaves less. */
  middle: 0.02,
  /** Darker than this altogether is a box that was blacked out. */
  blackedOut: 0.6,
  /** A stroke that crosses several boxes ticks the one that holds most of it, if each other holds less than this part of that. */
  shared: 0.35,
  /** A stroke belongs to a box if at least this part of it lies in it. */
  inside: 0.3,
  /** What reaches in from the mark of another box: at most so much ink, so much of its stroke, so much in the middle. */
  tail: { ink: 0.06, share: 0.22, middle: 0.004 },
  /** The paper in a box is at least so bright, against the darkest of the paper beside it. */
  even: 0.95,
  /** The palest side of a frame is at least so dark, or the box was not found. */
  frame: 0.08,
} as const;

/** Judges every box of a page together: a stroke that crosses several says something about each. */
export function judgeBoxes(boxes: readonly BoxInk[]): readonly Judgement[] {
  const homes = new Map<number, Home>();
  for (const { strokes } of boxes)
    for (const one of strokes) {
      const known = homes.get(one.stroke);
      if (!known) homes.set(one.stroke, { most: one, next: 0 });
      else if (one.ink > known.most.ink) homes.set(one.stroke, { most: one, next: known.most.ink });
      else homes.set(one.stroke, { ...known, next: Math.max(known.next, one.ink) });
    }
  return boxes.map((box) => judgeBox(box, homes));
}

/** Where a stroke has most of its ink, and the ink of the box that has most after that. */
interface Home {
  readonly most: StrokeInk;
  readonly next: number;
}

function judgeBox({ frame, strokes, pale, middle, even, steady }: BoxInk, homes: ReadonlyMap<number, Home>): Judgement {
  const ink = sumInk(strokes);
  // Where the paper itself looks dark, the box was shaded or blacked out.
  if (frame < LIMITS.frame || 1 - (1 - ink) * even > LIMITS.blackedOut) return "doubtful";
  const bare = even >= LIMITS.even && pale <= LIMITS.pale;
  const tails = ink < LIMITS.tail.ink && middle < LIMITS.tail.middle && strokes.every((one) => isTail(one, homes));
  if (bare && (ink < LIMITS.empty || tails)) return "empty";
  const own = strokes.filter((one) => {
    const home = homes.get(one.stroke);
    return one.share >= LIMITS.inside && home?.most === one && home.next < LIMITS.shared * one.ink;
  });
  const least = steady < LIMITS.steady ? LIMITS.tickedInShadow : LIMITS.ticked;
  return middle >= LIMITS.middle && sumInk(own) >= least ? "ticked" : "doubtful";
}

/** Ink of several strokes. */
const sumInk = (strokes: readonly StrokeInk[]): number => strokes.reduce((sum, { ink }) => sum + ink, 0);

/** Whether a stroke is the end of a mark that stands in another box for sure. */
function isTail({ stroke, share }: StrokeInk, homes: ReadonlyMap<number, Home>): boolean {
  const home = homes.get(stroke)?.most;
  return share < LIMITS.tail.share && home !== undefined && home.share >= LIMITS.inside && home.ink >= LIMITS.ticked;
}
