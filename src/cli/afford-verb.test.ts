import { describe, expect, it } from "vitest";
import { printedBy } from "../../tests/support/verb-output.ts";
import { plainChart } from "../core/chart/make-chart.ts";
import { exactLoad } from "../core/load/exact-load.ts";
import { DEFAULT_PACE } from "../core/load/minutes.ts";
import { affordVerb } from "./afford-verb.ts";
import type { Call } from "./verb.ts";

const printed = (values: Call["values"]): Promise<string> => printedBy(affordVerb, values);
const json = async (values: Call["values"]) => JSON.parse(await printed({ ...values, json: true }));

/** The largest 95 % quantile of any day's minutes in a year at a pace, by the load itself. */
const worstOfAYear = (each: number): number => {
  const question = { chart: plainChart(7), recall: Array(7).fill(0.9), waiting: [], from: 1, days: 365 };
  const load = exactLoad({ ...question, newCards: () => each, quantiles: [0.95], pace: DEFAULT_PACE });
  return Math.max(...load.map(({ minutes }) => minutes?.quantiles[0] ?? 0));
};

describe("longhold afford", () => {
  it("prints the pace, the worst day and its minutes, and takes half an hour and a year if nothing is said", async () => {
    const said = { minutes: "30", seconds: "8,20,45", recall: "0.9", compartments: "7", days: "365", quantile: "0.95" };
    const found = await json(said);
    expect(await json({})).toEqual(found);
    expect(Object.keys(found)).toEqual(["new", "worstDay", "minutes", "within"]);
    expect(found.minutes).toBe(worstOfAYear(found.new));
    expect(found.minutes).toBeLessThanOrEqual(30);
    expect(worstOfAYear(found.new + 1)).toBeGreaterThan(30);
  });

  it("says it in words, with a date where there is one", async () => {
    const { worstDay, minutes, new: each } = await json({});
    expect(await printed({})).toBe(
      `${each} new cards a day. The worst day is day ${worstDay}: at most ${minutes.toFixed(1)} minutes with 95 % certainty.\n`,
    );
    const dated = await json({ start: "2026-03-14" });
    // Day 1 is the 14th.
    expect(Date.parse(dated.worstDate) - Date.parse("2026-03-14")).toBe((worstDay - 1) * 86_400_000);
  });

  it("affords more with rest days left out of the year than with none", async () => {
    const levelled = { bundles: "1,1,1,1,2,4,8", start: "2026-03-14" };
    const all = await json(levelled);
    expect((await json({ ...levelled, minutes: "60" })).new).toBeGreaterThan(all.new);
    // A chart that waits meets the same days, only later: a rested year reaches fewer of them.
    expect((await json({ ...levelled, rest: "sun" })).new).toBeGreaterThanOrEqual(all.new);
  });

  it.each([
    [{ minutes: "0" }, "--minutes takes a number above 0 and at most 1440, not “0”"],
    [{ minutes: "1e2" }, "--minutes takes a number"],
    [{ quantile: "0.4" }, "--quantile takes a number from 0.5 to below 1, not “0.4”"],
    [{ quantile: "1" }, "--quantile takes a number"],
    [{ days: "0" }, "--days takes a whole number from 1 to 1100"],
  ])("refuses %j as bad usage", async (values, said) => {
    await expect(async () => printed(values)).rejects.toThrow(said);
  });
});
