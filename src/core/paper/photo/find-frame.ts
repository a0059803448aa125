// Where the frame of a box really is: paper is never quite flat, so each box is found by its own printed lines.
import { SHEET } from "../../kit/sheet-layout.ts";
import { type FlatPage, STEPS } from "./flat-page.ts";

/** A frame that was found. */
export interface Frame {
  /** Top left corner on the page's grid, in steps. */
  readonly left: number;
  readonly top: number;
  /** Darkness of the palest of its four sides, 0 … 1: how sharp the picture is there. */
  readonly palest: number;
}

/** How far a frame is looked for, in steps: 1.4 mm. */
const REACH = 7;

const SIDE = SHEET.box * STEPS;

/** The best place for the frame of the box whose corner should be at (x, y) mm. */
export function findFrame(page: FlatPage, x: number, y: number): Frame {
  const [left, top] = [Math.round(x * STEPS), Math.round(y * STEPS)];
  let best: Frame = { left, top, palest: 0 };
  let most = -1;
  for (let v = -REACH; v <= REACH; v++)
    for (let u = -REACH; u <= REACH; u++) {
      const sides = sidesAt(page, left + u, top + v);
      const palest = Math.min(...sides);
      // All four sides count, the palest twice: a stroke lies on one of them, a frame on all.
      const score = palest * 4 + sides.reduce((sum, side) => sum + Math.min(side, 0.5), 0);
      if (score > most) [most, best] = [score, { left: left + u, top: top + v, palest }];
    }
  return best;
}

/** Mean darkness along the four sides of a frame. */
function sidesAt(
  { width, height, dark }: FlatPage,
  left: number,
  top: number,
): readonly [number, number, number, number] {
  if (left < 0 || top < 0 || left + SIDE > width || top + SIDE > height) return [0, 0, 0, 0];
  let [above, below, first, last] = [0, 0, 0, 0];
  const [end, start] = [(top + SIDE - 1) * width + left, top * width + left];
  // The corners belong to two sides and are left out.
  for (let k = 1; k < SIDE - 1; k++) {
    above += dark[start + k] as number;
    below += dark[end + k] as number;
    first += dark[start + k * width] as number;
    last += dark[start + k * width + SIDE - 1] as number;
  }
  const long = SIDE - 2;
  return [above / long, below / long, first / long, last / long];
}
