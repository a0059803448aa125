import { describe, expect, it } from "vitest";
import { printedBy } from "../../tests/support/verb-output.ts";
import type { CalendarDay } from "../app/calendar-days.ts";
import { calendarVerb } from "./calendar-verb.ts";
import type { Call } from "./verb.ts";

/** What the verb prints when it is called with these options. */
const printed = (values: Call["values"]): Promise<string> => printedBy(calendarVerb, values);

const planned = async (values: Call["values"]): Promise<readonly CalendarDay[]> => {
  const { subscription, days } = JSON.parse(await printed({ start: "2026-03-14", json: true, ...values }));
  expect(subscription).toBeNull();
  return days;
};

const idsOf = (text: string): readonly string[] => text.match(/^UID:.*$/gm) ?? [];

describe("longhold calendar for a box to come", () => {
  it("takes 64 days, ten new cards, nine recalls in ten and the plain chart if nothing is said", async () => {
    const said = { compartments: "7", new: "10", recall: "0.9", seconds: "8,20,45", days: "64", title: "Longhold" };
    expect(await planned({})).toEqual(await planned(said));
    const days = await planned({});
    expect(days).toHaveLength(64);
    // Common practice for the plain chart of 64 days: day 1 is "2, 1", day 2 is "3, 1". Ten new cards of 45 seconds.
    expect(days[0]).toEqual({
      date: "2026-03-14",
      rest: false,
      day: 1,
      chartDay: 1,
      visits: [
        { compartment: 2, bundle: 1 },
        { compartment: 1, bundle: 1 },
      ],
      late: [],
      reviews: 0,
      newCards: 10,
      minutes: 7.5,
    });
    // Ten reviews, one of them missed: 9 × 8 s + 20 s + 10 × 45 s.
    expect(days[1]).toMatchObject({ chartDay: 2, reviews: 10, minutes: (72 + 20 + 450) / 60 });
  });

  it("takes chart, pace and recall as they are said", async () => {
    const days = await planned({ periods: "1,3,9", new: "2", recall: "1,1,1", seconds: "30, 60,7.5", days: "2" });
    expect(days).toMatchObject([
      { minutes: 0.25, newCards: 2 },
      { minutes: 1.25, reviews: 2 },
    ]);
  });

  it("rests on weekdays by their names, and begins behind them", async () => {
    // 14 March 2026 is a Saturday.
    const days = await planned({ rest: "sat, Sun", days: "3" });
    expect(days.map(({ rest }) => rest)).toEqual([true, true, false]);
    expect(days[2]).toMatchObject({ date: "2026-03-16", day: 1 });
  });

  it("is one calendar as long as its title stays, whatever else changes", async () => {
    const plan = { start: "2026-03-14", out: "-", days: "5", title: "Guides of the hill" };
    const ids = idsOf(await printed(plan));
    expect(ids).toHaveLength(5);
    expect(idsOf(await printed({ ...plan, compartments: "4", new: "1" }))).toEqual(ids);
    expect(idsOf(await printed({ ...plan, start: "2026-03-15" })).slice(0, 4)).toEqual(ids.slice(1));
    expect(idsOf(await printed({ ...plan, title: "Guides of the valley" }))).not.toEqual(ids);
  });

  it("is planned to the end of the calendar and not behind it", async () => {
    const days = await planned({ start: "9999-12-30", days: "2" });
    expect(days.map(({ date }) => date)).toEqual(["9999-12-30", "9999-12-31"]);
    await expect(planned({ start: "9999-12-30", days: "3" })).rejects.toThrow("--start is too late");
  });

  it.each([
    [{}, "--out FILE is missing"],
    [{ out: "" }, "--out needs the name of a file"],
    [{ out: "-", json: true, start: "2026-03-14" }, "would print two things at once"],
    [{ out: "-", days: "0" }, "--days takes a whole number from 1 to 731, not “0”"],
    [{ out: "-", days: "732" }, "--days takes a whole number from 1 to 731"],
    [{ out: "-", start: "14.3.2026" }, "--start takes a date such as 2026-03-14, not “14.3.2026”"],
    [{ out: "-", start: "2026-02-29" }, "--start takes a date"],
    [{ out: "-", start: "2026-03-14", data: "box" }, "leave --data out"],
    [{ out: "-", new: "5" }, "--new is about a box that is begun on --start DATE"],
    [{ out: "-", rest: "sun" }, "--rest is about a box"],
    [{ out: "-", compartments: "5" }, "--compartments is about a box"],
    [{ out: "-", start: "2026-03-14", new: "1001" }, "--new takes a whole number from 0 to 1000"],
    [{ out: "-", start: "2026-03-14", rest: "sunday" }, "--rest takes mon, tue, wed, thu, fri, sat, sun"],
    [{ out: "-", start: "2026-03-14", rest: "mon,tue,wed,thu,fri,sat,sun" }, "at least one weekday"],
    [{ out: "-", start: "2026-03-14", seconds: "8,20" }, "--seconds takes three numbers from 0 to 3600"],
    [{ out: "-", start: "2026-03-14", seconds: "8,20,45,1" }, "--seconds takes three numbers"],
    [{ out: "-", start: "2026-03-14", seconds: "8,20,3601" }, "--seconds takes three numbers"],
    [{ out: "-", start: "2026-03-14", recall: "2" }, "--recall takes chances from 0 to 1"],
    [{ out: "-", start: "2026-03-14", periods: "1,x" }, "--periods takes whole numbers"],
    [{ out: "-", start: "2026-03-14", title: " " }, "--title takes 1 to 120 characters"],
  ])("refuses %j as bad usage", async (values, said) => {
    await expect(printed(values)).rejects.toThrow(said);
  });
});
