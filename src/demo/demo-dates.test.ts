import { describe, expect, it } from "vitest";
import type { Calendar } from "../core/calendar/calendar.ts";
import { addDays, daysBetween, isoWeekday } from "../core/calendar/local-date.ts";
import { instantAt, practisedDates, restWeekdayFor } from "./demo-dates.ts";

const calendarOn = (today: string): Calendar => ({
  timeZone: "UTC",
  rollOverHour: 4,
  restWeekdays: [restWeekdayFor(today)],
  restDates: [],
  policy: "chart-waits",
  anchor: { date: today, day: 1 },
});

const WEEK = Array.from({ length: 7 }, (_, i) => addDays("2026-03-09", i));

describe("the days of the demo's history", () => {
  it.each(WEEK)("end before %s, leave one weekday free and miss two days", (today) => {
    const calendar = calendarOn(today);
    const dates = practisedDates(calendar, today);
    const rest = restWeekdayFor(today);
    expect(rest).not.toBe(isoWeekday(today));
    expect(dates.every((date) => isoWeekday(date) !== rest && date < today)).toBe(true);
    expect(daysBetween(dates[0] as string, today)).toBeGreaterThanOrEqual(39);
    const free = Array.from({ length: 40 }, (_, i) => addDays(today, -1 - i)).filter(
      (date) => isoWeekday(date) === rest,
    ).length;
    expect(dates).toHaveLength(40 - free - 2);
  });
});

describe("an hour on the wall clock", () => {
  it.each([
    ["2026-01-15", 19.5, "Europe/Lisbon", "2026-01-15T19:30:00.000Z"],
    ["2026-07-15", 19.5, "Europe/Lisbon", "2026-07-15T18:30:00.000Z"],
    ["2026-07-15", 20, "Asia/Kathmandu", "2026-07-15T14:15:00.000Z"],
    ["2026-01-15", 19, "Pacific/Auckland", "2026-01-15T06:00:00.000Z"],
    // Clocks go forward in the night before, and back in the night before.
    ["2026-03-08", 19, "America/New_York", "2026-03-08T23:00:00.000Z"],
    ["2026-11-01", 19, "America/New_York", "2026-11-02T00:00:00.000Z"],
  ])("%s at %d in %s is %s", (date, hour, timeZone, instant) => {
    expect(new Date(instantAt(date, hour, timeZone)).toISOString()).toBe(instant);
  });
});
