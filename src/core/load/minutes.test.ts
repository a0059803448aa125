import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clicksFor, DEFAULT_PACE, median, minutesFor } from "./minutes.ts";

describe("the minutes of a day", () => {
  it("add the seconds of recalled, missed and new cards", () => {
    // 90 recalled at 8 s, 10 missed at 20 s, 4 new at 45 s: 720 + 200 + 180 = 1100 s.
    expect(minutesFor(DEFAULT_PACE, { reviews: 100, missed: 10, newCards: 4 })).toBeCloseTo(1100 / 60, 12);
    expect(minutesFor(DEFAULT_PACE, { reviews: 0, missed: 0, newCards: 0 })).toBe(0);
  });
});

describe("the grid of seconds", () => {
  it.each([
    [
      { recalled: 8, missed: 20 },
      { unit: 4, steps: { recalled: 2, missed: 5 } },
    ],
    [
      { recalled: 20, missed: 8 },
      { unit: 4, steps: { recalled: 5, missed: 2 } },
    ],
    [
      { recalled: 7.5, missed: 15 },
      { unit: 7.5, steps: { recalled: 1, missed: 2 } },
    ],
    [
      { recalled: 0, missed: 12 },
      { unit: 12, steps: { recalled: 0, missed: 1 } },
    ],
    [
      { recalled: 9, missed: 9 },
      { unit: 9, steps: { recalled: 1, missed: 1 } },
    ],
    [
      { recalled: 0, missed: 0 },
      { unit: 1, steps: { recalled: 0, missed: 0 } },
    ],
  ])("of %o is exact: %o", (pace, clicks) => {
    expect(clicksFor(pace)).toEqual(clicks);
  });

  it("keeps the dearer cost, and the cheaper to a tenth of the dearer", () => {
    const cost = fc.double({ min: 0.01, max: 600, noNaN: true });
    fc.assert(
      fc.property(cost, cost, (recalled, missed) => {
        const { unit, steps } = clicksFor({ recalled, missed });
        const dearer = Math.max(recalled, missed);
        const off = [steps.recalled * unit - recalled, steps.missed * unit - missed].map(Math.abs);
        expect(Math.max(...off)).toBeLessThan(dearer / 10 + 1e-9 * dearer);
        expect(recalled >= missed ? off[0] : off[1]).toBeLessThan(1e-12 * dearer);
      }),
    );
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
