import fc from "fast-check";
import { expect, test } from "vitest";
import { niceScale } from "./nice-scale.ts";

test("an axis ends at a round number above the largest value", () => {
  expect(niceScale(276)).toEqual({ top: 300, marks: [0, 50, 100, 150, 200, 250, 300] });
  expect(niceScale(41)).toEqual({ top: 50, marks: [0, 10, 20, 30, 40, 50] });
  expect(niceScale(0)).toEqual({ top: 1, marks: [0, 1] });
});

test("every value has its place on the axis, between few marks of whole numbers", () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (most) => {
      const { top, marks } = niceScale(most);
      expect(top).toBeGreaterThanOrEqual(most - 1e-6);
      expect(marks.length).toBeLessThanOrEqual(9);
      expect(marks.every(Number.isInteger)).toBe(true);
      expect(marks.at(-1)).toBe(top);
    }),
  );
});
