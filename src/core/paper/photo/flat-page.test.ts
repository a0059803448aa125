import { describe, expect, it } from "vitest";
import { findFrame } from "./find-frame.ts";
import { type FlatPage, flattenPage, STEPS } from "./flat-page.ts";
import { type GreyImage, sampleAt, toGrey } from "./grey-image.ts";

/** Dots of the drawn photos to a millimetre: each cell of the grid is two by two dots. */
const SCALE = 2 * STEPS;
const SIZE = { width: 60, height: 40 };
const STRAIGHT = [SCALE, 0, 0, 0, SCALE, 0, 0, 0, 1];

/** A photo straight from above, from the brightness of each place in millimetres. */
function photoOf(light: (x: number, y: number) => number): GreyImage {
  const [width, height] = [SIZE.width * SCALE, SIZE.height * SCALE];
  const dots = Uint8Array.from({ length: width * height }, (_, at) =>
    light(((at % width) + 0.5) / SCALE, (Math.floor(at / width) + 0.5) / SCALE),
  );
  return { width, height, dots };
}

const flat = (light: (x: number, y: number) => number): FlatPage => flattenPage(photoOf(light), STRAIGHT, SIZE);

const darkAt = ({ width, dark }: FlatPage, x: number, y: number): number =>
  dark[Math.floor(y * STEPS) * width + Math.floor(x * STEPS)] as number;

describe("a page laid flat", () => {
  const line = (y: number): boolean => y >= 20 && y < 20.6;

  it("keeps a thin line as dark against the paper in light as in shadow", () => {
    const page = flat((x, y) => (line(y) ? 50 : 250) * (x < 30 ? 1 : 0.4));
    expect(darkAt(page, 15, 20.3)).toBeGreaterThan(0.6);
    expect(darkAt(page, 45, 20.3)).toBeCloseTo(darkAt(page, 15, 20.3), 1);
  });

  it("is white on both sides of the sharp edge of a shadow, and under a slow change of light", () => {
    const edge = flat((x) => (x < 30 ? 250 : 120));
    const slope = flat((x, y) => 100 + 2 * x + y);
    for (let x = 5; x < 55; x += 0.2) {
      // The dot that the edge itself crosses is smeared over its neighbours.
      if (Math.abs(x - 30) > 0.5) expect(darkAt(edge, x, 20)).toBeLessThan(0.05);
      expect(darkAt(slope, x, 20)).toBeLessThan(0.05);
    }
  });

  it("shows a wide dark patch as dark paper, not as ink", () => {
    const page = flat((x, y) => (Math.hypot(x - 30, y - 20) < 6 ? 60 : 240));
    expect(darkAt(page, 30, 20)).toBeLessThan(0.05);
    expect(page.white[20 * STEPS * page.width + 30 * STEPS]).toBeLessThan(80);
  });
});

describe("the frame of a box", () => {
  const framed = (left: number, top: number) => (x: number, y: number) => {
    const deep = Math.min(x - left, y - top, left + 6 - x, top + 6 - y);
    return deep >= 0 && deep < 0.25 ? 40 : 240;
  };

  it("is found where it is, up to 1.4 mm from where it should be", () => {
    for (const [dx, dy] of [
      [0, 0],
      [0.8, -0.6],
      [-1.4, 1.4],
    ] as const) {
      const { left, top, palest } = findFrame(flat(framed(20 + dx, 15 + dy)), 20, 15);
      expect(left / STEPS).toBeCloseTo(20 + dx);
      expect(top / STEPS).toBeCloseTo(15 + dy);
      expect(palest).toBeGreaterThan(0.3);
    }
  });

  it("is not taken for found on bare paper, or where a single line runs", () => {
    expect(
      findFrame(
        flat(() => 240),
        20,
        15,
      ).palest,
    ).toBeLessThan(0.05);
    expect(
      findFrame(
        flat((_, y) => (y >= 15 && y < 15.3 ? 40 : 240)),
        20,
        15,
      ).palest,
    ).toBeLessThan(0.05);
  });
});

describe("a grey image", () => {
  it("is weighed as BT.601 does, and white stays white", () => {
    const grey = toGrey(
      2,
      2,
      Uint8ClampedArray.from([255, 255, 255, 255, 255, 0, 0, 255, 0, 255, 0, 255, 0, 0, 255, 255]),
    );
    // 0.299, 0.587 and 0.114 of 255 (Rec. ITU-R BT.601).
    expect([...grey.dots]).toEqual([255, 76, 150, 29].map((value) => expect.closeTo(value, -0.4)));
  });

  it("is sampled between dots and white outside", () => {
    const image: GreyImage = { width: 2, height: 2, dots: Uint8Array.from([0, 100, 100, 200]) };
    expect(sampleAt(image, 1, 1)).toBe(100);
    expect(sampleAt(image, 0.5, 0.5)).toBe(0);
    expect(sampleAt(image, 1.25, 0.5)).toBe(75);
    expect(sampleAt(image, -3, 1)).toBe(255);
  });
});
