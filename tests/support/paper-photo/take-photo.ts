// Takes a made photo: the marked page through lens, sensor and JPEG.
import sharp from "sharp";
import type { GreyPage } from "../pdf-tools.ts";
import { placeAt, type Shot } from "./camera.ts";
import type { Dice } from "./dice.ts";

/** What lens and sensor do. */
export interface Lens {
  /** Spread of the blur in millimetres of paper. */
  readonly blur: number;
  /** Spread of the noise, of 255. */
  readonly noise: number;
  /** White paper in full light, of 255. */
  readonly exposure: number;
  /** JPEG quality. */
  readonly quality: number;
}

/** Dots of a photo over which light and place are taken as changing evenly. */
const CELL = 4;

/** The table under a page, of 255. */
const TABLE = 95;

/** The photo as a JPEG. `dotsPerMm` is that of the page. */
export async function takePhoto(
  page: GreyPage,
  dotsPerMm: number,
  shot: Shot,
  lens: Lens,
  chance: Dice,
): Promise<Uint8Array> {
  const { width, height } = shot;
  // A page that is much finer than the photo is made coarser first, as the dots of a sensor do.
  const coarse = dotsPerMm > 1.6 * shot.scale;
  const seen = expose(coarse ? halve(page) : page, coarse ? dotsPerMm / 2 : dotsPerMm, shot, lens.exposure);
  const raw = { raw: { width, height, channels: 1 } } as const;
  const spread = lens.blur * shot.scale;
  const blurred = spread < 0.35 ? seen : await sharp(seen, raw).blur(spread).toColourspace("b-w").raw().toBuffer();
  addNoise(blurred, lens.noise, chance);
  return new Uint8Array(await sharp(blurred, raw).jpeg({ quality: lens.quality }).toBuffer());
}

function expose(page: GreyPage, dotsPerMm: number, shot: Shot, exposure: number): Uint8Array {
  const { width, height } = shot;
  const dots = new Uint8Array(width * height);
  for (let top = 0; top < height; top += CELL)
    for (let left = 0; left < width; left += CELL) {
      const node = (x: number, y: number): readonly [number, number, number] => {
        const place = placeAt(shot, [x, y]);
        return [place[0] * dotsPerMm, place[1] * dotsPerMm, shot.light(place, [x, y]) * exposure];
      };
      const [right, below] = [left + CELL, top + CELL];
      const cell = [node(left, top), node(right, top), node(left, below), node(right, below)] as const;
      exposeCell(page, dots, width, [left, top, Math.min(right, width), Math.min(below, height)], cell);
    }
  return dots;
}

type Node = readonly [x: number, y: number, light: number];

function exposeCell(
  page: GreyPage,
  dots: Uint8Array,
  width: number,
  [left, top, right, below]: readonly [number, number, number, number],
  [a, b, c, d]: readonly [Node, Node, Node, Node],
): void {
  for (let j = top; j < below; j++) {
    const v = (j + 0.5 - top) / CELL;
    const x0 = a[0] + (c[0] - a[0]) * v;
    const y0 = a[1] + (c[1] - a[1]) * v;
    const l0 = a[2] + (c[2] - a[2]) * v;
    const dx = (b[0] + (d[0] - b[0]) * v - x0) / CELL;
    const dy = (b[1] + (d[1] - b[1]) * v - y0) / CELL;
    const dl = (b[2] + (d[2] - b[2]) * v - l0) / CELL;
    for (let i = left; i < right; i++) {
      const k = i + 0.5 - left;
      dots[j * width + i] = Math.min(255, (look(page, x0 + dx * k, y0 + dy * k) * (l0 + dl * k)) / 255);
    }
  }
}

/** The page's brightness at a place in dots, bilinear; the table where there is no page. */
function look({ width, height, dots }: GreyPage, x: number, y: number): number {
  if (x < 0.5 || y < 0.5 || x >= width - 0.5 || y >= height - 0.5) return TABLE;
  const left = Math.floor(x - 0.5);
  const top = Math.floor(y - 0.5);
  const u = x - 0.5 - left;
  const at = top * width + left;
  const above = (dots[at] as number) * (1 - u) + (dots[at + 1] as number) * u;
  const below = (dots[at + width] as number) * (1 - u) + (dots[at + width + 1] as number) * u;
  return above + (below - above) * (y - 0.5 - top);
}

function halve({ width, height, dots }: GreyPage): GreyPage {
  const [wide, high] = [width >> 1, height >> 1];
  const half = new Uint8Array(wide * high);
  for (let j = 0; j < high; j++)
    for (let i = 0; i < wide; i++) {
      const at = 2 * j * width + 2 * i;
      half[j * wide + i] =
        ((dots[at] as number) +
          (dots[at + 1] as number) +
          (dots[at + width] as number) +
          (dots[at + width + 1] as number)) /
        4;
    }
  return { width: wide, height: high, dots: half };
}

/** Noise from a table of normal variates that begins anew at a place of chance in each row's run. */
function addNoise(dots: Uint8Array, spread: number, chance: Dice): void {
  const table = Float32Array.from({ length: 65_521 }, () => chance.normal() * spread);
  let at = 0;
  for (let i = 0; i < dots.length; i++) {
    if (i % 1_021 === 0) at = Math.floor(chance.between(0, table.length - 1_021));
    dots[i] = Math.min(255, Math.max(0, (dots[i] as number) + (table[at++] as number)));
  }
}
