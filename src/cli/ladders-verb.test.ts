import { describe, expect, it } from "vitest";
import { printedBy } from "../../tests/support/verb-output.ts";
import { laddersVerb } from "./ladders-verb.ts";
import type { Call } from "./verb.ts";

const printed = (values: Call["values"]): Promise<string> => printedBy(laddersVerb, values);

describe("longhold ladders", () => {
  it("prints the figures of five compartments that triple and seven that double, each with its chart", async () => {
    const { ladders } = JSON.parse(await printed({ json: true }));
    const of = (periods: readonly number[]) =>
      ladders.find((one: { periods: readonly number[] }) => one.periods.join() === periods.join());
    const tripling = of([1, 3, 9, 27, 81]);
    const doubling = of([1, 2, 4, 8, 16, 32, 64]);
    // Feller, vol. 1, XIII.7: 6.935088 and 10.907516 trials until five and seven successes in a row at 0.9.
    expect(tripling.reviewsPerCard).toBeCloseTo(6.935088, 6);
    expect(doubling.mean).toBeCloseTo(20 * 10.907516, 4);
    expect(doubling.bundles).toEqual([1, 1, 1, 1, 2, 4, 8]);
    expect(doubling.peak / doubling.mean).toBeCloseTo(doubling.peakToMean, 12);
    const growths = ladders.map(({ ratio }: { ratio: number }) => ratio);
    expect(growths.some((ratio: number) => !Number.isInteger(ratio))).toBe(true);
  });

  it("prints a row for each, and says what is not proved", async () => {
    const text = await printed({ compartments: "5", tabs: "12", new: "10" });
    expect(text).toMatch(/^1,2,4,8,16 +2 +\d+ +6\.9 /m);
    expect(text.match(/^1,[\d,]+ /gm)?.length).toBeGreaterThan(4);
    expect(text).toContain("heuristic");
  });

  it.each([
    [{ recall: "0" }, "--recall takes one chance above 0"],
    [{ recall: "0.9,0.8" }, "--recall takes one chance"],
    [{ tabs: "3" }, "--tabs takes a whole number from 4"],
    [{ compartments: "40", tabs: "50" }, "no ladder of 40 compartments"],
  ])("refuses %j as bad usage", async (values, said) => {
    await expect(async () => printed(values)).rejects.toThrow(said);
  });
});
