import { describe, expect, it } from "vitest";
import { printedBy } from "../../tests/support/verb-output.ts";
import { loadVerb } from "./load-verb.ts";
import type { Call } from "./verb.ts";

/** What the verb prints when it is called with these options. */
const printed = (values: Call["values"]): Promise<string> => printedBy(loadVerb, values);

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
    expect(Object.keys(last ?? {})).toEqual(["day", "new", "reviews", "minutes"]);
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
    expect(lines).toHaveLength(43);
    // 185.81 reviews, nine in ten recalled, at 8 and 20 s, and ten new cards of 45 s: 1709 + 450 s.
    expect(lines[40]?.trim().split(/\s+/)).toEqual(["40", "10", "185.8", "6.3", "176", "196", "36.0"]);
    expect(lines[41]).toBe(
      "in the long run 109.1 reviews a day, 726.5 on the busiest day of the cycle (6.66 times the mean)",
    );
  });

  it("lays the days over dates, with rest days, missed days and a schedule by weekday", async () => {
    // 14 March 2026 is a Saturday.
    const said = { start: "2026-03-14", rest: "sun,2026-03-18", missed: "2026-03-16..2026-03-17", days: "6" };
    const { days } = await json({ ...said, policy: "goes-on", new: "1,2,3,4,5,6,7", recall: "1" });
    expect(days).toMatchObject([
      { date: "2026-03-14", kind: "sitting", day: 1, new: 6, reviews: { mean: 0 } },
      { date: "2026-03-15", kind: "rest", day: null, new: 0 },
      { date: "2026-03-16", kind: "missed", day: 2, new: 0, reviews: { mean: 0 } },
      { date: "2026-03-17", kind: "missed", day: 3, new: 0 },
      { date: "2026-03-18", kind: "rest", day: null, new: 0 },
      { date: "2026-03-19", kind: "sitting", day: 4, new: 4, reviews: { mean: 6 } },
    ]);
    expect((await json({ ...said, policy: "waits" })).days.map(({ day }) => day)).toEqual([
      1,
      null,
      null,
      null,
      null,
      2,
    ]);
    expect(await printed({ ...said, policy: "goes-on" })).toMatch(/^2026-03-16 +2 {2}missed$/m);
  });

  it("ends new cards with a date or a list", async () => {
    const until = await json({ start: "2026-03-14", days: "4", until: "2026-03-15", new: "3" });
    expect(until.days.map((day) => day.new)).toEqual([3, 3, 0, 0]);
    const list = await json({ days: "4", "new-list": "9,0,4" });
    expect(list.days.map((day) => day.new)).toEqual([9, 0, 4, 0]);
    expect(list.longRun).toBeNull();
  });

  it("says that a box never settles in which a compartment is never recalled", async () => {
    const values = { days: "3", compartments: "2", recall: "0.9,0" };
    expect((await json(values)).longRun).toBeNull();
    expect(await printed(values)).toContain("does not settle");
  });

  it.each([
    [{ new: "ten" }, "--new takes a whole number, or seven with commas between, from 0 to 1000, not “ten”"],
    [{ new: "1001" }, "--new takes a whole number"],
    [{ new: "1,2,3" }, "--new takes one number, or seven for Monday to Sunday, not 3"],
    [{ new: "1,2,3,4,5,6,7" }, "--new with seven numbers needs --start DATE or --box"],
    [{ "new-list": "1", new: "2" }, "--new-list says it all"],
    [{ until: "2026-03-20" }, "--until needs --start DATE or --box"],
    [{ rest: "sun" }, "--rest needs --start DATE or --box"],
    [{ missed: "2026-03-20" }, "--missed needs --start DATE or --box"],
    [{ start: "2026-03-14", rest: "sol" }, "--rest takes mon, tue, wed, thu, fri, sat, sun, dates and ranges"],
    [{ start: "2026-03-14", rest: "mon,tue,wed,thu,fri,sat,sun" }, "--rest must leave at least one weekday"],
    [{ start: "2026-03-14", missed: "2026-03-20..2026-03-19" }, "--missed takes dates and ranges"],
    [{ start: "2026-02-30" }, "--start takes a date such as 2026-03-14, not “2026-02-30”"],
    [{ policy: "stops" }, "--policy takes waits or goes-on, not “stops”"],
    [{ seconds: "8,20" }, "--seconds takes three numbers from 0 to 3600"],
    [{ box: true, start: "2026-03-14" }, "--start is about a box to come"],
    [{ data: "somewhere" }, "--data is about --box"],
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
