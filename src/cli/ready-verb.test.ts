import { describe, expect, it } from "vitest";
import { printedBy } from "../../tests/support/verb-output.ts";
import { readyVerb } from "./ready-verb.ts";
import type { Call } from "./verb.ts";

const printed = (values: Call["values"]): Promise<string> => printedBy(readyVerb, values);
const json = async (values: Call["values"]) => JSON.parse(await printed({ ...values, json: true }));

const SAID = { start: "2026-03-14", by: "2026-06-20", facts: "300", bundles: "1,1,1,1,2,4,8" };

describe("longhold ready", () => {
  it("prints the pace, the last date for new cards and the number recalled with a band", async () => {
    const plan = await json(SAID);
    expect(plan.introduced).toBeLessThanOrEqual(300);
    expect(plan.recalled.mean).toBeLessThan(plan.introduced);
    expect(plan.recalled.q05).toBeLessThan(plan.recalled.mean);
    expect(plan.recalled.q95).toBeGreaterThan(plan.recalled.mean);
    expect(plan.lastNew >= "2026-03-14" && plan.lastNew < "2026-06-20").toBe(true);
    const most = Math.max(...plan.curve.map((one: { recalled: { mean: number } }) => one.recalled.mean));
    expect(plan.recalled.mean).toBe(most);
    expect(plan).toMatchObject({ sittings: 98, within: true });
  });

  it("knows more by the date with more minutes a day, and fewer by an earlier date", async () => {
    const mean = async (values: Call["values"]) => (await json({ ...SAID, facts: "2000", ...values })).recalled.mean;
    expect(await mean({ minutes: "60" })).toBeGreaterThan(await mean({}));
    expect(await mean({ by: "2026-05-01" })).toBeLessThan(await mean({}));
  });

  it("says it in words, with the curve as a table", async () => {
    const text = await printed(SAID);
    expect(text).toMatch(
      /^of 300 cards:\n\d+ new cards? a day until 2026-\d\d-\d\d, \d+ cards in all; on 2026-06-20 about/,
    );
    expect(text.match(/^2026-\d\d-\d\d +\d+ +\d+ +[\d.]+ +\d+ to \d+$/gm)?.length).toBeGreaterThan(10);
    expect(text).toContain("the ranges hold chance alone;");
  });

  it("counts a card for every angle of a fact", async () => {
    expect(await json({ ...SAID, facts: "100", angles: "3" })).toEqual(await json(SAID));
  });

  it("says that nothing fits where the limit is too small", async () => {
    expect(await printed({ ...SAID, minutes: "0.1" })).toContain("No new cards fit");
  });

  it.each([
    [{ facts: "10" }, "--by DATE is missing"],
    [{ by: "2026-06-20" }, "--facts N is missing"],
    [{ ...SAID, by: "2026-03-14" }, "--by must lie 1 to 1100 days after 2026-03-14"],
    [{ ...SAID, by: "soon" }, "--by takes a date"],
    [{ ...SAID, facts: "0" }, "--facts takes a whole number from 1"],
  ])("refuses %j as bad usage", async (values, said) => {
    await expect(async () => printed(values)).rejects.toThrow(said);
  });
});
