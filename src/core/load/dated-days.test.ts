import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boxDayOn, type Calendar, type DayMark, isRestDay } from "../calendar/calendar.ts";
import { addDays } from "../calendar/local-date.ts";
import { datedDays } from "./dated-days.ts";

const calendar: Calendar = {
  timeZone: "Europe/Lisbon",
  rollOverHour: 4,
  restWeekdays: [7],
  restDates: [{ from: "2026-03-18", to: "2026-03-18" }],
  policy: "chart-waits",
  anchor: { date: "2026-03-14", day: 1 },
};
// 2026-03-14 is a Saturday.
const week = { calendar, last: null, from: "2026-03-14", dates: 7, missed: ["2026-03-17"] };

describe("the dates ahead", () => {
  it("leave out missed days while the chart waits", () => {
    const days = datedDays(week);
    expect(days.map(({ day }) => day)).toEqual([1, null, 2, null, null, 3, 4]);
    expect(days.map(({ kind }) => kind)).toEqual([
      "sitting",
      "rest",
      "sitting",
      "missed",
      "rest",
      "sitting",
      "sitting",
    ]);
  });

  it("number missed days where the chart goes on", () => {
    const days = datedDays({ ...week, calendar: { ...calendar, policy: "chart-goes-on" } });
    expect(days.map(({ day }) => day)).toEqual([1, null, 2, 3, null, 4, 5]);
    expect(days[3]).toEqual({ date: "2026-03-17", kind: "missed", day: 3 });
  });

  it("bear the box days that somebody finds who sits on every one that is not missed", () => {
    const anyDates = fc.record({
      policy: fc.constantFrom("chart-waits" as const, "chart-goes-on" as const),
      restWeekdays: fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { maxLength: 5 }),
      rest: fc.array(fc.nat(30), { maxLength: 4 }),
      missed: fc.array(fc.nat(30), { maxLength: 8 }),
      since: fc.option(fc.integer({ min: 1, max: 9 })),
    });
    fc.assert(
      fc.property(anyDates, ({ policy, restWeekdays, rest, missed, since }) => {
        const own: Calendar = {
          ...calendar,
          policy,
          restWeekdays,
          restDates: rest.map((i) => ({ from: addDays("2026-03-14", i), to: addDays("2026-03-14", i) })),
        };
        let last: DayMark | null = since === null ? null : { date: addDays("2026-03-14", -since), day: 1 };
        const question = {
          calendar: last ? { ...own, anchor: last } : own,
          last,
          from: "2026-03-14",
          dates: 31,
          missed: missed.map((i) => addDays("2026-03-14", i)),
        };
        for (const { date, kind, day } of datedDays(question)) {
          expect(kind === "rest").toBe(isRestDay(question.calendar, date));
          if (kind !== "sitting") continue;
          expect(question.missed).not.toContain(date);
          expect(day).toBe(boxDayOn(question.calendar, date, last));
          last = { date, day: day ?? 0 };
        }
      }),
    );
  });
});
