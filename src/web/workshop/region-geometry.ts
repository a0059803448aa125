// Rectangles on a picture, as shares of its width and height.
import type { Region } from "../../core/facts/fact.ts";

/** How far a key moves or stretches a region, and the least it may measure. */
const STEP = 0.01;

const inside = (share: number): number => Math.min(1, Math.max(0, share));

/** The rectangle between two points, as far as it lies inside the picture. */
export function regionBetween(a: readonly [number, number], b: readonly [number, number]): Region {
  const [left, right] = [inside(Math.min(a[0], b[0])), inside(Math.max(a[0], b[0]))];
  const [top, bottom] = [inside(Math.min(a[1], b[1])), inside(Math.max(a[1], b[1]))];
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** The region with its upper left corner at a point, as far as it stays inside. */
export const placedRegion = ({ width, height }: Region, [x, y]: readonly [number, number]): Region => ({
  x: Math.min(inside(x), 1 - width),
  y: Math.min(inside(y), 1 - height),
  width,
  height,
});

const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-STEP, 0],
  ArrowRight: [STEP, 0],
  ArrowUp: [0, -STEP],
  ArrowDown: [0, STEP],
};

/** The region after a key: moved, or with `stretch` its lower right corner; it stays inside. Null for other keys. */
export function movedRegion({ x, y, width, height }: Region, key: string, stretch: boolean): Region | null {
  const step = STEPS[key];
  if (!step) return null;
  const [right, down] = step;
  if (!stretch)
    return { x: Math.min(inside(x + right), 1 - width), y: Math.min(inside(y + down), 1 - height), width, height };
  return {
    x,
    y,
    width: Math.min(Math.max(width + right, STEP), 1 - x),
    height: Math.min(Math.max(height + down, STEP), 1 - y),
  };
}
