// A photographed page laid flat: its darkness on an even grid in millimetres, against the white of the paper round
// each place, so that shadows and uneven light fall away.
import type { Size } from "../../kit/paper.ts";
import { type GreyImage, sampleAt } from "./grey-image.ts";
import type { Homography } from "./homography.ts";

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
}

/** Features narrower than this are ink, wider ones light and shadow; millimetres. Pens and fibre tips leave less than 2. */
const WIDEST_STROKE = 2.8;

/** Lays a photographed page flat; `toPhoto` takes millimetres of the page to dots of the photo. */
export function flattenPage(photo: GreyImage, toPhoto: Homography, size: Size): FlatPage {
  const width = Math.floor(size.width * STEPS);
  const height = Math.floor(size.height * STEPS);
  const light = smoothGrid(lightOnGrid(photo, toPhoto, width, height), width, height);
  const white = paperWhite(light, width, height);
  const dark = new Float32Array(light.length);
  for (let at = 0; at < dark.length; at++)
    dark[at] = Math.max(0, 1 - (light[at] as number) / Math.max(1, white[at] as number));
  return { width, height, dark, white };
}

/** Quarter points of a grid cell: together they see all of it. */
const QUARTERS = [0.25, 0.75] as const;

/** Mean brightness of each cell of the grid; what the photo does not show counts as white. */
function lightOnGrid(photo: GreyImage, toPhoto: Homography, width: number, height: number): Float32Array {
  const light = new Float32Array(width * height);
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 1] = toPhoto;
  for (let row = 0; row < height; row++)
    for (const v of QUARTERS) {
      // Along a row the three sums of the homography grow evenly; millions of dots are worth the longhand.
      const y = (row + v) / STEPS;
      const [right, down, depth] = [b * y + c, e * y + f, h * y + i];
      for (let column = 0; column < width; column++)
        for (const u of QUARTERS) {
          const x = (column + u) / STEPS;
          const w = g * x + depth;
          const at = row * width + column;
          light[at] = (light[at] as number) + sampleAt(photo, (a * x + right) / w, (d * x + down) / w) / 4;
        }
    }
  return light;
}

/** Takes noise away: each dot with its neighbours, weighed 1 : 2 : 1 across and down. */
export function smoothGrid(light: Float32Array, width: number, height: number): Float32Array {
  const across = Float32Array.from(light);
  for (let at = 1; at + 1 < light.length; at++)
    across[at] = ((light[at - 1] as number) + 2 * (light[at] as number) + (light[at + 1] as number)) / 4;
  const down = Float32Array.from(across);
  for (let at = width; at < width * (height - 1); at++)
    down[at] = ((across[at - width] as number) + 2 * (across[at] as number) + (across[at + width] as number)) / 4;
  return down;
}

/** Grey closing (the lightest value near by, then the darkest of those) on cells of two by two dots. */
function paperWhite(light: Float32Array, width: number, height: number): Float32Array {
  const wide = width >> 1;
  const high = height >> 1;
  const coarse = new Float32Array(wide * high);
  for (let j = 0; j < high; j++)
    for (let i = 0; i < wide; i++) {
      const at = 2 * j * width + 2 * i;
      const pair = (light[at] as number) + (light[at + 1] as number);
      coarse[j * wide + i] = (pair + (light[at + width] as number) + (light[at + width + 1] as number)) / 4;
    }
  const closed = extremes(extremes(coarse, wide, high, Math.max), wide, high, Math.min);
  const white = new Float32Array(width * height);
  for (let j = 0; j < height; j++)
    for (let i = 0; i < width; i++)
      white[j * width + i] = closed[Math.min(j >> 1, high - 1) * wide + Math.min(i >> 1, wide - 1)] as number;
  return white;
}

/** Cells to each side of one, in which `paperWhite` looks for the paper. */
const REACH = Math.round((WIDEST_STROKE * STEPS) / 4);

/** The extreme of the square round each cell. */
function extremes(
  cells: Float32Array,
  wide: number,
  high: number,
  pick: (a: number, b: number) => number,
): Float32Array {
  const rows = Float32Array.from(cells);
  for (let j = 0; j < high; j++)
    for (let i = 0; i < wide; i++)
      for (let k = Math.max(0, i - REACH); k <= Math.min(wide - 1, i + REACH); k++)
        rows[j * wide + i] = pick(rows[j * wide + i] as number, cells[j * wide + k] as number);
  const squares = Float32Array.from(rows);
  for (let j = 0; j < high; j++)
    for (let k = Math.max(0, j - REACH); k <= Math.min(high - 1, j + REACH); k++)
      for (let i = 0; i < wide; i++)
        squares[j * wide + i] = pick(squares[j * wide + i] as number, rows[k * wide + i] as number);
  return squares;
}
