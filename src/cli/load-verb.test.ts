import { describe, expect, it } from "vitest";
import { loadVerb } from "./load-verb.ts";
import type { Call } from "./verb.ts";

/** What the verb prints when it is called with these options. */
async function printed(values: Call["values"]): Promise<string> {
  let text = "";
  const out = (more: string): void => {
    text += more;
  };
  const status = await loadVerb.run({ values, positionals: [], usage: (message) => new Error(message), out });
  expect(status).toBe(0);
  return text;
}

interface Printed {
  readonly days: readonly { readonly day: number; readonly new: number; readonly reviews: Record<string, number> }[];
  readonly longRun: Record<string, number> | null;
}

const json = async (values: Call["values"]): Promise<Printed> => JSON.parse(await printed({ ...values, json: true }));

describe("longhold load", () => {
  // Worked separately, by convolution over cohorts: plain chart, p = 0.9, ten new cards a day; printed to six decimals.
  it("prints each day's mean, sd and quantiles, and the long run, as JSON", async () => {
    const { days, longRun } = await json({ new: "10", recall: "0.9", compartments: "7", days: "100" });
    expect(days).toHaveLength(100);
    const last = days[99];
    expect(Object.keys(last ?? {})).toEqual(["day", "new", "reviews"]);
    expect(last).toMatchObject({ day: 100, new: 10, reviews: { q05: 119, q95: 142 } });
    expect(last?.reviews.mean).toBeCloseTo(130.279496, 6);
    expect(last?.reviews.sd).toBeCloseTo(6.963796, 6);
    expect(Object.keys(longRun ?? {})).toEqual(["mean", "peak", "peakToMean"]);
    expect(longRun?.mean).toBeCloseTo(109.07516, 5);
  });

  it("takes twenty new cards, nine recalls in ten, seven compartments and a year if nothing is said", async () => {
    const { days, longRun } = await json({});
    expect(days).toHaveLength(365);
    expect(days[0]?.new).toBe(20);
    expect(Math.round(longRun?.mean ?? 0)).toBe(218);
    expect(Math.round(longRun?.peak ?? 0)).toBe(1453);
  });

  // By hand: day 1 new; day 2 compartment 1; on day 3 those recalled on day 2 (all) and the ones from day 2 in 1.
  it("takes a chance for each compartment, and a chart as longhold chart does", async () => {
    const values = { new: "2", days: "4", recall: "1, 0.5", periods: "1,2", bundles: "1,2" };
    const { days, longRun } = await json(values);
    expect(days.map(({ reviews }) => reviews.mean)).toEqual([0, 2, 2, 4]);
    expect(longRun).toMatchObject({ mean: 8, peak: 8, peakToMean: 1 });
  });

  it("prints a table of one line a day between a heading and the long run", async () => {
    const lines = (await printed({ new: "10", days: "40" })).trimEnd().split("\n");
    expect(lines).toHaveLength(42);
    expect(lines[40]?.trim().split(/\s+/)).toEqual(["40", "10", "185.8", "6.3", "176", "196"]);
    expect(lines[41]).toBe(
      "in the long run 109.1 reviews a day, 726.5 on the busiest day of the cycle (6.66 times the mean)",
    );
  });

  it("says that a box never settles in which a compartment is never recalled", async () => {
    const values = { days: "3", compartments: "2", recall: "0.9,0" };
    expect((await json(values)).longRun).toBeNull();
    expect(await printed(values)).toContain("does not settle");
  });

  it.each([
    [{ new: "ten" }, "--new takes a whole number from 0 to 1000, not “ten”"],
    [{ new: "1001" }, "--new takes a whole number from 0 to 1000"],
    [{ days: "0" }, "--days takes a whole number from 1 to 3650, not “0”"],
    [{ days: "" }, "--days takes a whole number"],
    [{ recall: "1.1" }, "--recall takes chances from 0 to 1, not “1.1”"],
    [{ recall: "-0.5" }, "--recall takes chances from 0 to 1"],
    [{ recall: "0.9," }, "--recall needs one number, or 7, one for each compartment, not 2"],
    [{ recall: "0.9,,0.9", compartments: "3" }, "--recall takes chances from 0 to 1, not “”"],
    [{ compartments: "seven" }, "--compartments takes a whole number"],
  ])("refuses %j as bad usage", async (values, said) => {
    await expect(async () => printed(values)).rejects.toThrow(said);
  });
});
