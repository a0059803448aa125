// The planning verbs as a shell sees them, on the demo's box.
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { DrawerView, TodayView } from "../../src/app/views.ts";
import { longhold, withFolder } from "../support/program.ts";

interface Day {
  readonly date: string;
  readonly kind: string;
  readonly day: number | null;
  readonly new: number;
  readonly reviews: { readonly mean: number; readonly sd: number; readonly q05: number; readonly q95: number };
}

const jsonOf = async (...words: string[]) => {
  const { status, stdout, stderr } = await longhold(...words, "--json");
  expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
  return JSON.parse(stdout);
};

describe("for the box in the data folder", () => {
  test("load, pace and deadline begin with its cards, rest as it does, and are wider for what is not known", () =>
    withFolder(async (folder) => {
      await longhold("demo", "--data", folder);
      const today = (await jsonOf("today", "--data", folder)) as TodayView & { readonly box: DrawerView["box"] };
      const load = await jsonOf("load", "--box", "--data", folder, "--days", "90");
      const days = load.days as readonly Day[];
      const first = days.find(({ kind }) => kind === "sitting");
      expect(load.bands).toBe("chance and what is not known of recall");
      // The demo rests on Sundays.
      for (const { date, kind } of days) expect(kind === "rest").toBe(new Date(`${date}T00:00:00Z`).getUTCDay() === 0);
      if (!today.restDay) expect(first).toMatchObject({ date: today.date, day: today.day });
      if (!today.restDay) expect(first?.reviews.mean).toBeCloseTo(today.due, 6);
      const known = await jsonOf("load", "--box", "--data", folder, "--days", "90", "--recall", "0.9");
      expect(known.bands).toBe("chance alone");
      const width = (list: readonly Day[]): number =>
        list.reduce((sum, { reviews }) => sum + reviews.q95 - reviews.q05, 0);
      expect(width(days)).toBeGreaterThan(width(known.days));
      expect(Math.max(...days.map((one) => one.new))).toBe(today.box?.newPerDay);
      // New cards end with the stock.
      const introduced = days.reduce((sum, day) => sum + day.new, 0);
      expect(introduced).toBeLessThanOrEqual(today.stock);
      // Pace and deadline count the cards that are there.
      const chart = ["--bundles", "1,1,1,1,2,4,8", "--start", "2026-03-14", "--recall", "0.9", "--seconds", "8,20,45"];
      const own = ["--box", "--data", folder, "--recall", "0.9", "--seconds", "8,20,45"];
      const empty = await jsonOf("afford", ...chart, "--minutes", "20", "--days", "60");
      const full = await jsonOf("afford", ...own, "--minutes", "20", "--days", "60");
      expect(full.new).toBeLessThanOrEqual(empty.new);
      expect(full.worstDate).toMatch(/^\d{4}-\d\d-\d\d$/);
      const by = new Date(Date.now() + 60 * 86_400_000).toISOString().slice(0, 10);
      const ready = await jsonOf("ready", ...own, "--by", by, "--facts", "50");
      expect(ready.introduced).toBeGreaterThan(0);
      expect(ready.recalled.mean).toBeLessThanOrEqual(ready.introduced);
      const unsure = await jsonOf("ready", "--box", "--data", folder, "--by", by, "--facts", "50");
      expect([unsure.bands, ready.bands]).toEqual(["chance and what is not known of recall", "chance alone"]);
    }));

  test("an empty folder has no box to plan for", () =>
    withFolder(async (folder) => {
      const { status, stderr } = await longhold("load", "--box", "--data", join(folder, "none"));
      expect(status).toBe(1);
      expect(stderr).toContain("There is no Longhold in");
    }));
});
