import { describe, expect, it } from "vitest";
import type { CalendarDay, PracticeDay } from "../app/calendar-days.ts";
import type { Visit } from "../core/chart/chart.ts";
import { LEVELLED_CHART } from "../core/chart/make-chart.ts";
import { calendarFile } from "./calendar-file.ts";

const STAMP = Date.parse("2026-03-14T20:00:00Z");

const visit = (compartment: number, bundle = 1): Visit => ({ compartment, bundle });

const practiceDay = (change: Partial<PracticeDay> = {}): PracticeDay => ({
  date: "2026-03-25",
  rest: false,
  day: 76,
  chartDay: 12,
  visits: [visit(7, 3), visit(2), visit(1)],
  late: [],
  reviews: 210.4,
  newCards: 10,
  minutes: 41.2,
  ...change,
});

const fileOf = (days: readonly CalendarDay[], id = "box", stamp = STAMP): string =>
  calendarFile({ id, chart: LEVELLED_CHART, days }, { stamp });

/** The lines of a property, unfolded, its name left out. */
const values = (text: string, name: string): readonly string[] =>
  text
    .replaceAll("\r\n ", "")
    .split("\r\n")
    .filter((line) => line.startsWith(`${name}:`))
    .map((line) => line.slice(name.length + 1));

describe("an event", () => {
  it("says the chart day and the minutes, then the piles, the cards that are due and the new ones", () => {
    const text = fileOf([practiceDay()]);
    expect(values(text, "SUMMARY")).toEqual(["Longhold: chart day 12\\, about 41 minutes"]);
    expect(values(text, "DESCRIPTION")).toEqual([
      "Compartments to visit: 7 bundle 3\\, then 2\\, then 1\\nAbout 210 cards due\\, 10 new",
    ]);
  });

  it("names what is left from earlier days", () => {
    const late = [visit(5, 2), visit(4)];
    expect(values(fileOf([practiceDay({ late })]), "DESCRIPTION")[0]).toContain(
      "\\nLeft from earlier days: 5 bundle 2\\, then 4\\n",
    );
  });

  it.each([
    [{ reviews: 0, newCards: 0, minutes: 0 }, "nothing to do", "No cards due\\, none new"],
    [{ reviews: 0.3, newCards: 0, minutes: 0.04 }, "less than a minute", "No cards due\\, none new"],
    [{ reviews: 1, newCards: 1, minutes: 1 }, "about 1 minute", "About 1 card due\\, 1 new"],
    [{ reviews: 1234, newCards: 0, minutes: 190 }, "about 3 hours", "About 1\\,234 cards due\\, none new"],
  ])("has words for little and for much: %j", (work, time, cards) => {
    const text = fileOf([practiceDay(work)]);
    expect(values(text, "SUMMARY")[0]).toBe(`Longhold: chart day 12\\, ${time}`);
    expect(values(text, "DESCRIPTION")[0]?.endsWith(`\\n${cards}`)).toBe(true);
  });

  it("says so if the chart visits nothing", () => {
    expect(values(fileOf([practiceDay({ visits: [] })]), "DESCRIPTION")[0]).toContain("No compartment to visit");
  });
});

describe("the identity of an event", () => {
  const ids = (text: string) => values(text, "UID");
  const dates = ["2026-03-25", "2026-03-26"].map((date) => practiceDay({ date }));

  it("stays the same for a date of one box, whatever is due on it and whenever the file is made", () => {
    const later = dates.map((day) => ({ ...day, reviews: 3, minutes: 1, visits: [], chartDay: 1 }));
    expect(ids(fileOf(later, "box", STAMP + 1))).toEqual(ids(fileOf(dates)));
    expect(ids(fileOf(dates.slice(1)))).toEqual(ids(fileOf(dates)).slice(1));
  });

  it("is another for another date or another box, and does not give the box's own away", () => {
    const all = [...ids(fileOf(dates)), ...ids(fileOf(dates, "other"))];
    expect(new Set(all).size).toBe(4);
    expect(fileOf(dates, "0195a1b2-box")).not.toContain("0195a1b2");
  });
});

describe("rest days", () => {
  const rest = (date: string) => ({ date, rest: true }) as const;

  it("have no event", () => {
    const text = fileOf([rest("2026-03-24"), practiceDay(), rest("2026-03-26")]);
    expect(values(text, "DTSTART;VALUE=DATE")).toEqual(["20260325"]);
  });

  it("are said to be rest days if there is nothing else", () => {
    const text = fileOf([rest("2026-03-24"), rest("2026-03-25")]);
    expect(values(text, "DTSTART;VALUE=DATE")).toEqual(["20260324"]);
    expect(values(text, "SUMMARY")).toEqual(["Longhold: rest day"]);
  });
});

it("equal days give equal text, and the time of making changes nothing but its own lines", () => {
  const text = fileOf([practiceDay()]);
  expect(fileOf([practiceDay()])).toBe(text);
  expect(values(text, "DTSTAMP")).toEqual(["20260314T200000Z"]);
  const later = fileOf([practiceDay()], "box", STAMP + 1_000);
  expect(later).not.toBe(text);
  expect(later.replace("20260314T200001Z", "20260314T200000Z")).toBe(text);
});
