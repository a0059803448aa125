// longhold calendar as a shell sees it.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import ICAL from "ical.js";
import { afterEach, describe, expect, test, vi } from "vitest";
import type { CalendarDay } from "../../src/app/calendar-days.ts";
import type { TodayView } from "../../src/app/views.ts";
import { longhold, withFolder } from "../support/program.ts";

const eventsOf = (text: string): readonly ICAL.Event[] =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents("vevent").map((event) => new ICAL.Event(event));

afterEach(() => {
  vi.unstubAllEnvs();
});

describe("for the box in the data folder", () => {
  test("writes a file that ical.js reads, tells where to subscribe, and says of today what today says", () =>
    withFolder(async (folder) => {
      const data = join(folder, "box");
      await longhold("demo", "--data", data);
      const out = join(folder, "box.ics");
      writeFileSync(out, "an old calendar");
      const { status, stdout, stderr } = await longhold("calendar", "--out", out, "--data", data);
      expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
      const today = JSON.parse((await longhold("today", "--data", data, "--json")).stdout) as TodayView;
      const json = await longhold("calendar", "--json", "--data", data);
      const { days } = JSON.parse(json.stdout) as { days: readonly CalendarDay[] };
      const practice = days.filter((day) => !day.rest);
      expect(days).toHaveLength(64);
      // The demo rests on Sundays: nine of any 64 days, or ten.
      expect(64 - practice.length).toBeGreaterThanOrEqual(9);
      const rests = `${64 - practice.length} rest days left out`;
      expect(stdout).toContain(`${practice.length} days of practice written to ${out}, ${rests}.\n`);
      expect(stdout).toContain(`/calendar/${today.box?.id}.ics\n`);
      const events = eventsOf(readFileSync(out, "utf8"));
      expect(events.map(({ startDate }) => startDate.toString())).toEqual(practice.map(({ date }) => date));
      expect(readdirSync(folder).sort()).toEqual(["box", "box.ics"]);
      if (today.restDay) {
        expect(days[0]).toEqual({ date: today.date, rest: true });
        return;
      }
      expect(days[0]).toMatchObject({ date: today.date, reviews: today.due, newCards: today.newCards });
      expect(events[0]?.summary).toContain(`Longhold: chart day ${today.chartDay}, about `);
      expect(events[0]?.description).toContain(`About ${today.due} cards due, ${today.newCards} new`);
    }));

  test("fails in one line where there is no box, or no folder to write in", () =>
    withFolder(async (folder) => {
      const nowhere = join(folder, "none", "box.ics");
      const noBox = await longhold("calendar", "--out", "-", "--data", join(folder, "box"));
      const noFolder = await longhold("calendar", "--out", nowhere, "--start", "2026-03-14");
      expect([noBox.status, noFolder.status]).toEqual([1, 1]);
      expect(noBox.stderr).toContain("There is no Longhold in");
      expect(noFolder.stderr).toBe(`longhold: There is no folder ${join(folder, "none")} to write ${nowhere} in.\n`);
      expect(readdirSync(folder)).toEqual([]);
    }));
});

describe("for a box to come", () => {
  // Between the first and the last date clocks change in Europe (29 March) and nowhere in Pago Pago.
  test("prints the same dates on a machine in any time zone", async () => {
    const words = ["calendar", "--out", "-", "--start", "2026-03-27", "--days", "5", "--rest", "sat"];
    const outputs: string[] = [];
    for (const zone of ["Europe/Lisbon", "Pacific/Pago_Pago", "Pacific/Apia"]) {
      vi.stubEnv("TZ", zone);
      const { status, stdout } = await longhold(...words);
      expect(status).toBe(0);
      outputs.push(stdout.replaceAll(/^DTSTAMP:\d{8}T\d{6}Z\r\n/gm, ""));
    }
    expect(new Set(outputs).size).toBe(1);
    const dates = eventsOf(outputs[0] ?? "").map(({ startDate }) => startDate.toString());
    expect(dates).toEqual(["2026-03-27", "2026-03-29", "2026-03-30", "2026-03-31"]);
  });

  test("writes the file and prints the days, and counts the rest days it leaves out", () =>
    withFolder(async (folder) => {
      const out = join(folder, "plan.ics");
      const plan = ["calendar", "--out", out, "--start", "2026-03-14", "--days", "8", "--rest", "sun"];
      const said = await longhold(...plan, "--title", "Guides, hill; dome");
      expect(said.stdout).toBe(`7 days of practice written to ${out}, 1 rest day left out.\n`);
      expect(eventsOf(readFileSync(out, "utf8"))[0]?.summary).toBe("Guides, hill; dome: chart day 1, about 8 minutes");
      const json = await longhold(...plan, "--json");
      expect(JSON.parse(json.stdout)).toMatchObject({ subscription: null, days: { length: 8 } });
      expect(eventsOf(readFileSync(out, "utf8"))[0]?.summary).toMatch(/^Longhold: /);
    }));
});
