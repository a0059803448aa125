import fc from "fast-check";
import { expect, it } from "vitest";
import { isRegion } from "../../core/facts/check-content.ts";
import { movedRegion, regionBetween } from "./region-geometry.ts";

const share = fc.double({ min: -0.5, max: 1.5, noNaN: true });
const point = fc.tuple(share, share);
const keys = fc.array(fc.tuple(fc.constantFrom("ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown"), fc.boolean()), {
  maxLength: 200,
});

it("a region between two points has them as corners, whichever comes first", () => {
  expect(regionBetween([0.5, 0.75], [0.25, 0.25])).toEqual({ x: 0.25, y: 0.25, width: 0.25, height: 0.5 });
  expect(regionBetween([-1, 0.5], [2, 0.75])).toEqual({ x: 0, y: 0.5, width: 1, height: 0.25 });
});

it("keys never drive a region out of the picture, nor make it vanish", () => {
  fc.assert(
    fc.property(point, point, keys, (a, b, pressed) => {
      const begun = regionBetween(a, b);
      if (!isRegion(begun)) return;
      let region = begun;
      for (const [key, stretch] of pressed) region = movedRegion(region, key, stretch) ?? region;
      expect(isRegion(region)).toBe(true);
    }),
  );
});

it("other keys do nothing", () => expect(movedRegion({ x: 0, y: 0, width: 1, height: 1 }, "a", false)).toBeNull());
