import fc from "fast-check";
import { expect, test } from "vitest";
import { addDays } from "../../../core/calendar/local-date.ts";
import { between, inRanges, mergedRanges, withoutRest, withRest } from "./rest-ranges.ts";

const on = (day: number) => addDays("2026-12-01", day);
const range = (from: number, to: number) => ({ from: on(from), to: on(to) });

test("neighbouring dates become one range", () => {
  expect(mergedRanges([range(3, 3), range(1, 2), range(5, 6)])).toEqual([range(1, 3), range(5, 6)]);
  expect(withRest([range(0, 1), range(3, 4)], range(2, 2))).toEqual([range(0, 4)]);
});

test("a date taken from the middle of a range cuts it in two", () => {
  expect(withoutRest([range(0, 6)], range(3, 3))).toEqual([range(0, 2), range(4, 6)]);
  expect(withoutRest([range(0, 6)], range(0, 6))).toEqual([]);
});

test("a range is found whichever end comes first", () => {
  expect(between(on(5), on(2))).toEqual(range(2, 5));
});

const anyRange = fc
  .tuple(fc.nat(40), fc.nat(10))
  .map(([from, length]): { from: string; to: string } => range(from, from + length));

test("merging changes no date, adding and taking change exactly those named, and ranges never touch", () => {
  fc.assert(
    fc.property(fc.array(anyRange, { maxLength: 8 }), anyRange, (ranges, other) => {
      const results = [mergedRanges(ranges), withRest(ranges, other), withoutRest(ranges, other)] as const;
      for (let day = -2; day < 60; day++) {
        const [was, named] = [inRanges(ranges, on(day)), inRanges([other], on(day))];
        expect(results.map((one) => inRanges(one, on(day)))).toEqual([was, was || named, was && !named]);
      }
      for (const one of results)
        one.forEach(({ from }, i) => {
          const before = one[i - 1];
          if (before) expect(from > addDays(before.to, 1)).toBe(true);
        });
    }),
  );
});
