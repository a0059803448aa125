// A made photo of a page: where each dot of the photo looks on the page, and how much light falls there.
import type { Size } from "../../../src/core/kit/paper.ts";
import { fitHomography, type Homography, mapPoint, type Point } from "../../../src/core/paper/photo/homography.ts";
import type { Dice } from "./dice.ts";

/** How a photo is taken. */
export interface Shot {
  readonly width: number;
  readonly height: number;
  /** Takes dots of the photo to millimetres of a flat page. */
  readonly toPage: Homography;
  /** By how many millimetres the bent page lies off a flat one. */
  bend(place: Point): Point;
  /** Light on a place of the page, 0 … 1. */
  light(place: Point, dot: Point): number;
  /** Dots of the photo to a millimetre in the middle of the page. */
  readonly scale: number;
  /** Angle between camera and page, degrees. */
  readonly tilt: number;
}

/** What can be asked of a shot. */
export interface ShotRange {
  readonly width: number;
  readonly height: number;
  /** Largest tilt, degrees. */
  readonly tilt: number;
  /** Largest bend of the paper, millimetres. */
  readonly bend: number;
  /** Darkest shadow: light left in it, 0 … 1. */
  readonly shadow: number;
  /** How much of the frame the page takes up, along the side that is shorter on room; above 1 it is cut off. */
  readonly fill: readonly [least: number, most: number];
}

/** A shot with everything else left to chance: rotation, distance, light, shadows. */
export function aimCamera(page: Size, range: ShotRange, chance: Dice): Shot {
  const { width, height } = range;
  const tilt = range.tilt * Math.sqrt(chance.between(0, 1));
  const corners = lookAt(page, {
    tilt,
    axis: chance.between(0, 360),
    turn: chance.between(0, 360),
    far: chance.between(1.3, 2.2),
  });
  const placed = intoFrame(corners, range, chance);
  const flat: readonly Point[] = [
    [0, 0],
    [page.width, 0],
    [page.width, page.height],
    [0, page.height],
  ];
  const toPage = fitHomography(placed.map((dot, i) => [dot, flat[i] as Point])) as Homography;
  const side = Math.hypot(
    (placed[0]?.[0] as number) - (placed[1]?.[0] as number),
    (placed[0]?.[1] as number) - (placed[1]?.[1] as number),
  );
  return {
    width,
    height,
    toPage,
    tilt,
    scale: side / page.width,
    bend: bendOf(page, range.bend, chance),
    light: lightOf(page, range, chance),
  };
}

interface Stance {
  readonly tilt: number;
  /** Direction of the axis of the tilt, and turn of the page, degrees. */
  readonly axis: number;
  readonly turn: number;
  /** Distance of a pinhole camera in diagonals of the page. */
  readonly far: number;
}

/** The page's corners as a pinhole camera sees them. */
function lookAt({ width, height }: Size, { tilt, axis, turn, far }: Stance): readonly Point[] {
  const radians = (degrees: number): number => (degrees * Math.PI) / 180;
  const [s, c] = [Math.sin(radians(turn)), Math.cos(radians(turn))];
  const [ax, ay] = [Math.cos(radians(axis)), Math.sin(radians(axis))];
  const distance = far * Math.hypot(width, height);
  const corners: readonly Point[] = [
    [-width / 2, -height / 2],
    [width / 2, -height / 2],
    [width / 2, height / 2],
    [-width / 2, height / 2],
  ];
  return corners.map(([x, y]) => {
    const [u, v] = [c * x - s * y, s * x + c * y];
    const along = u * ax + v * ay;
    const across = -u * ay + v * ax;
    const depth = distance + across * Math.sin(radians(tilt));
    const flat = across * Math.cos(radians(tilt));
    return [(along * ax - flat * ay) / depth, (along * ay + flat * ax) / depth];
  });
}

/** Moves and scales the corners so that the page fills most of the frame. */
function intoFrame(corners: readonly Point[], { width, height, fill }: ShotRange, chance: Dice): readonly Point[] {
  const span = (k: 0 | 1): readonly [number, number] => [
    Math.min(...corners.map((corner) => corner[k])),
    Math.max(...corners.map((corner) => corner[k])),
  ];
  const [[left, right], [top, bottom]] = [span(0), span(1)];
  const scale = chance.between(...fill) * Math.min(width / (right - left), height / (bottom - top));
  const shift = (room: number): number => room * chance.between(0.1, 0.9);
  const dx = shift(width - scale * (right - left));
  const dy = shift(height - scale * (bottom - top));
  return corners.map(([x, y]) => [(x - left) * scale + dx, (y - top) * scale + dy]);
}

/** Paper that curls: slow waves along a direction. */
function bendOf({ width, height }: Size, most: number, chance: Dice): Shot["bend"] {
  const angle = chance.between(0, Math.PI);
  const wave = (Math.PI * chance.between(0.5, 1.5)) / Math.hypot(width, height);
  const start = chance.between(0, 2 * Math.PI);
  const [by, aside] = [most * chance.between(0, 1), most * chance.between(-0.5, 0.5)];
  return ([x, y]) => {
    const lift = Math.sin((x * Math.cos(angle) + y * Math.sin(angle)) * wave + start);
    return [by * lift * Math.cos(angle) + aside * lift, by * lift * Math.sin(angle) - aside * lift];
  };
}

/** A lamp to one side, darker corners of the lens, and shadows with soft and with sharp edges. */
function lightOf(page: Size, { width, height, shadow }: ShotRange, chance: Dice): Shot["light"] {
  const lamp = chance.between(0, 2 * Math.PI);
  const fall = chance.between(0, 0.35);
  const lens = chance.between(0, 0.25);
  const shadows = Array.from({ length: Math.floor(chance.between(0, 3)) }, () => shadowOf(page, shadow, chance));
  return ([x, y], [u, v]) => {
    const across = ((x / page.width - 0.5) * Math.cos(lamp) + (y / page.height - 0.5) * Math.sin(lamp)) * fall;
    const corner = ((u / width - 0.5) ** 2 + (v / height - 0.5) ** 2) * 2 * lens;
    return shadows.reduce((all, one) => all * one([x, y]), (1 + across) * (1 - corner));
  };
}

/** The shadow of a hand, a telephone or a pen: a round or a straight edge, with a penumbra. */
function shadowOf({ width, height }: Size, darkest: number, chance: Dice): (place: Point) => number {
  const light = chance.between(darkest, 0.9);
  const soft = chance.pick([chance.between(0.5, 3), chance.between(3, 30)]);
  const [cx, cy] = [chance.between(0, width), chance.between(0, height)];
  const angle = chance.between(0, 2 * Math.PI);
  const form = chance.pick(["edge", "blob", "bar"] as const);
  const size = form === "bar" ? chance.between(3, 9) : chance.between(20, 70);
  return ([x, y]) => {
    const across = (x - cx) * Math.cos(angle) + (y - cy) * Math.sin(angle);
    const inside =
      form === "edge" ? across : form === "bar" ? size - Math.abs(across) : size - Math.hypot(x - cx, y - cy);
    const depth = Math.min(1, Math.max(0, 0.5 + inside / soft));
    return 1 - (1 - light) * depth * depth * (3 - 2 * depth);
  };
}

/** Where a dot of the photo looks, bend included. */
export function placeAt(shot: Shot, dot: Point): Point {
  const [x, y] = mapPoint(shot.toPage, dot);
  const [dx, dy] = shot.bend([x, y]);
  return [x + dx, y + dy];
}
