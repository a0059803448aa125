import { describe, expect, it } from "vitest";
import { printedBy } from "../../tests/support/verb-output.ts";
import { designVerb } from "./design-verb.ts";
import type { Call } from "./verb.ts";

/** What the verb prints when it is called with these options. */
const printed = (values: Call["values"]): Promise<string> => printedBy(designVerb, values);

interface Printed {
  readonly periods: readonly number[];
  readonly bundles: readonly number[];
  readonly offsets: readonly number[];
  readonly tabs: number;
  readonly mean: number;
  readonly peak: number;
  readonly peakToMean: number;
  readonly exact: boolean;
}

const json = async (values: Call["values"]): Promise<Printed> => JSON.parse(await printed({ ...values, json: true }));

describe("longhold design", () => {
  it("designs for seven compartments, eighteen tabs, nine recalls in ten and twenty new cards if nothing is said", async () => {
    const said = { compartments: "7", tabs: "18", recall: "0.9", new: "20" };
    const design = await json({});
    expect(design).toEqual(await json(said));
    expect(design.bundles).toEqual([1, 1, 1, 1, 2, 4, 8]);
    expect(design.tabs).toBe(18);
    // 20 new cards a day, each asked 10.907516 times: Feller, vol. 1, XIII.7; half of the last digit, twenty times.
    expect(Math.abs(design.mean - 20 * 10.907516)).toBeLessThan(20 * 5e-7);
    expect(design.peakToMean).toBeLessThan(1.27);
    expect(design.peak / design.mean).toBeCloseTo(design.peakToMean, 12);
  });

  it("counts mean and peak for the new cards a day", async () => {
    const one = await json({ new: "1" });
    const ten = await json({ new: "10" });
    expect(ten.mean).toBeCloseTo(10 * one.mean, 9);
    expect(ten.peak).toBeCloseTo(10 * one.peak, 9);
    expect(ten.peakToMean).toBe(one.peakToMean);
  });

  it("takes periods and a recall for each compartment", async () => {
    const design = await json({ periods: "1,3,9", recall: "0.8,.9,1", tabs: "5" });
    expect(design.periods).toEqual([1, 3, 9]);
    expect(design.tabs).toBeLessThanOrEqual(5);
    // By hand: 1/(0.8·0.9·1) + 1/(0.9·1) + 1/1 reviews a card, twenty a day.
    expect(design.mean).toBeCloseTo(20 * (1 / 0.72 + 1 / 0.9 + 1), 9);
  });

  it("says in words that no chart is below the mean, how far this one is above, and whether it is the best", async () => {
    const exact = await printed({ tabs: "18" });
    expect(exact).toContain("7 compartments, 18 tabs, 64 days\n");
    expect(exact).toContain("bundles  1,1,1,1,2,4,8\n");
    expect(exact).toMatch(
      /exact: no chart within the tabs .*; no chart can be below the mean, this one is 26\.5 % above/,
    );
    expect(exact).toContain("20 new cards a day, in the long run: 218.2 reviews on the mean day, 276.0 on the worst");
    const heuristic = await printed({ periods: "1,2,4,12,24,72,360", tabs: "30" });
    expect(heuristic).toMatch(/\nheuristic; no chart can be below the mean, this one is \d+\.\d % above\n$/);
  });

  it.each([
    [{ compartments: "0" }, "--compartments"],
    [{ compartments: "3", periods: "1,2" }, "--periods needs 3"],
    [{ periods: "1,x" }, "--periods"],
    [{ periods: "31,37,41" }, "at most 1100"],
    [{ tabs: "6" }, "tabs must be a whole number from 7"],
    [{ tabs: "many" }, "--tabs"],
    [{ new: "0" }, "--new"],
    [{ recall: "90%" }, "--recall"],
    [{ recall: "1.1" }, "--recall"],
    [{ recall: "0.9,0.8" }, "--recall needs one number, or 7"],
  ])("refuses %j and says why", async (values, words) => {
    await expect(printed(values)).rejects.toThrow(words);
  });
});
