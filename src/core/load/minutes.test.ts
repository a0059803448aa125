import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DEFAULT_PACE, median, minutesFor } from "./minutes.ts";

describe("the minutes of a day", () => {
  it("add the seconds of recalled, missed and new cards", () => {
    // 90 recalled at 8 s, 10 missed at 20 s, 4 new at 45 s: 720 + 200 + 180 = 1100 s.
    expect(minutesFor(DEFAULT_PACE, { reviews: 100, missed: 10, newCards: 4 })).toBeCloseTo(1100 / 60, 12);
    expect(minutesFor(DEFAULT_PACE, { reviews: 0, missed: 0, newCards: 0 })).toBe(0);
  });
});

describe("the median", () => {
  it("is the middle value, or the mean of the two in the middle", () => {
    expect(median([8, 3, 40])).toBe(8);
    expect(median([8, 3, 40, 5])).toBe(6.5);
    expect(median([])).toBeNull();
  });

  it("has as many values below it as above it, and leaves the list as it was", () => {
    const values = fc.array(fc.integer({ min: 0, max: 600 }), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(values, (list) => {
        const before = [...list];
        const middle = median(list) as number;
        expect(list.filter((one) => one < middle).length).toBeLessThanOrEqual(list.length / 2);
        expect(list.filter((one) => one > middle).length).toBeLessThanOrEqual(list.length / 2);
        expect(list).toEqual(before);
      }),
    );
  });
});
