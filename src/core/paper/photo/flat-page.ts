// A photographed page laid flat: its darkness on an even grid in millimetres, against the white of the paper round
// each place, so that shadows and uneven light fall away.
import type { Size } from "../../kit/paper.ts";
import { type GreyImage, isInside, sampleAt } from "./grey-image.ts";
import { type Homography, mapPoint } from "./homography.ts";

/** Steps of the grid in a millimetre: thin pens leave strokes of two steps or more. */
export const STEPS = 5;

/** The page on its grid. Dot (i, j) stands at ((i + 0.5) / STEPS, (j + 0.5) / STEPS) mm. */
export interface FlatPage {
  readonly width: number;
  readonly height: number;
  /** 0 as white as the paper … 1 black. */
  readonly dark: Float32Array;
  /** The white of the paper at each dot, 0 … 255. */
  readonly white: Float32Array;
  /** Dots that the photo does not show. */
  readonly unseen: number;
}

/** Features narrower than this are ink, wider ones light and shadow; millimetres. Pens and fibre tips leave less than 2. */
const WIDEST_STROKE = 2.8;

/** Lays a photographed page flat; `toPhoto` takes millimetres of the page to dots of the photo. */
export function flattenPage(photo: GreyImage, toPhoto: Homography, size: Size): FlatPage {
  const width = Math.floor(size.width * STEPS);
  const height = Math.floor(size.height * STEPS);
  const light = new Float32Array(width * height);
  let unseen = 0;
  for (let j = 0; j < height; j++)
    for (let i = 0; i < width; i++) {
      const seen = meanLight(photo, toPhoto, i, j);
      if (seen === null) unseen++;
      light[j * width + i] = seen ?? 255;
    }
  const white = paperWhite(light, width, height);
  const dark = light.map((value, at) => Math.max(0, 1 - value / Math.max(1, white[at] as number)));
  return { width, height, dark, white, unseen };
}

/** Quarter points of a grid cell: together they see all of it. */
const QUARTERS = [0.25, 0.75] as const;

function meanLight(photo: GreyImage, toPhoto: Homography, i: number, j: number): number | null {
  let sum = 0;
  for (const v of QUARTERS)
    for (const u of QUARTERS) {
      const [x, y] = mapPoint(toPhoto, [(i + u) / STEPS, (j + v) / STEPS]);
      if (!isInside(photo, x, y)) return null;
      sum += sampleAt(photo, x, y);
    }
  return sum / 4;
}

/** Grey closing (the lightest value near by, then the darkest of those) on cells of two by two dots. */
function paperWhite(light: Float32Array, width: number, height: number): Float32Array {
  const [wide, high] = [Math.ceil(width / 2), Math.ceil(height / 2)];
  const coarse = new Float32Array(wide * high);
  for (let j = 0; j < high; j++)
    for (let i = 0; i < wide; i++) {
      const [x, y] = [Math.min(2 * i + 1, width - 1), Math.min(2 * j + 1, height - 1)];
      const at = (dx: number, dy: number): number => light[(y - dy) * width + x - dx] as number;
      coarse[j * wide + i] = (at(0, 0) + at(1, 0) + at(0, 1) + at(1, 1)) / 4;
    }
  const reach = Math.round((WIDEST_STROKE * STEPS) / 4);
  const closed = extremes(extremes(coarse, wide, high, reach, Math.max), wide, high, reach, Math.min);
  return Float32Array.from(light, (_, at) => {
    const [i, j] = [at % width, Math.floor(at / width)];
    return closed[(j >> 1) * wide + (i >> 1)] as number;
  });
}

/** The extreme of each square of 2 `reach` + 1 cells, row by row and then column by column. */
function extremes(
  cells: Float32Array,
  wide: number,
  high: number,
  reach: number,
  pick: (a: number, b: number) => number,
): Float32Array {
  const along = (from: Float32Array, step: number, long: number, place: (at: number) => number): Float32Array =>
    from.map((value, at) => {
      const here = place(at);
      let best = value;
      for (let k = -Math.min(reach, here); k <= Math.min(reach, long - 1 - here); k++)
        best = pick(best, from[at + k * step] as number);
      return best;
    });
  const rows = along(cells, 1, wide, (at) => at % wide);
  return along(rows, wide, high, (at) => Math.floor(at / wide));
}
