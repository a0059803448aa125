import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitHomography, type Homography, invert, mapPoint, type Point } from "./homography.ts";

/** Dots by which a place may differ from where an exact fit puts it: rounding of a few multiplications. */
const ROUNDING = 1e-6;

const page: readonly Point[] = [
  [10, 10],
  [200, 10],
  [200, 287],
  [10, 287],
  [105, 150],
  [40, 260],
];

/** Homographies as cameras make them: turned, tilted, moved. */
const anyHomography: fc.Arbitrary<Homography> = fc
  .record({
    turn: fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
    scale: fc.double({ min: 2, max: 15, noNaN: true }),
    tilt: fc.tuple(
      fc.double({ min: -8e-4, max: 8e-4, noNaN: true }),
      fc.double({ min: -8e-4, max: 8e-4, noNaN: true }),
    ),
    move: fc.tuple(fc.double({ min: 0, max: 3000, noNaN: true }), fc.double({ min: 0, max: 3000, noNaN: true })),
  })
  .map(({ turn, scale, tilt, move }) => {
    const [c, s] = [scale * Math.cos(turn), scale * Math.sin(turn)];
    return [c, -s, move[0], s, c, move[1], tilt[0], tilt[1], 1];
  });

const away = ([a, b]: Point, [c, d]: Point): number => Math.hypot(a - c, b - d);

describe("fitting a homography", () => {
  it("finds the one that made the pairs", () => {
    fc.assert(
      fc.property(anyHomography, (h) => {
        const fitted = fitHomography(page.map((place) => [place, mapPoint(h, place)])) as Homography;
        const far: Point = [123.4, 45.6];
        expect(away(mapPoint(fitted, far), mapPoint(h, far))).toBeLessThan(ROUNDING);
      }),
    );
  });

  it("puts a square onto a known quadrangle", () => {
    // By hand: x / (1 + x), y / (1 + x) takes the corner (1, 1) to (½, ½) and (1, 0) to (½, 0).
    const fitted = fitHomography([
      [
        [0, 0],
        [0, 0],
      ],
      [
        [1, 0],
        [0.5, 0],
      ],
      [
        [1, 1],
        [0.5, 0.5],
      ],
      [
        [0, 1],
        [0, 1],
      ],
    ]) as Homography;
    expect(away(mapPoint(fitted, [3, 2]), [0.75, 0.5])).toBeLessThan(ROUNDING);
  });

  it("lies between pairs that do not agree", () => {
    const shift = (by: number) => page.map((place): readonly [Point, Point] => [place, [place[0] + by, place[1]]]);
    const fitted = fitHomography([...shift(1), ...shift(-1)]) as Homography;
    expect(away(mapPoint(fitted, [100, 100]), [100, 100])).toBeLessThan(ROUNDING);
  });

  it("fails for points on a line and for fewer than four", () => {
    const line = page.map(([x]): readonly [Point, Point] => [
      [x, 2 * x],
      [x, x],
    ]);
    expect(fitHomography(line)).toBeNull();
    expect(fitHomography(page.slice(0, 3).map((place) => [place, place]))).toBeNull();
  });

  it("is undone by its inverse", () => {
    fc.assert(
      fc.property(anyHomography, (h) => {
        for (const place of page) expect(away(mapPoint(invert(h), mapPoint(h, place)), place)).toBeLessThan(ROUNDING);
      }),
    );
  });
});
