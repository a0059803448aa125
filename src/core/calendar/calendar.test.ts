import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  boxDayOn,
  type Calendar,
  changeCalendar,
  type DayMark,
  daysAhead,
  isRestDay,
  type MissedDayPolicy,
  missedDays,
  passIdleDays,
  workingDays,
} from "./calendar.ts";
import { addDays } from "./local-date.ts";

// 2026-03-14 is a Saturday.
const START = "2026-03-14";

const calendarWith = (change: Partial<Calendar>): Calendar => ({
  timeZone: "Europe/Lisbon",
  rollOverHour: 4,
  restWeekdays: [],
  restDates: [],
  policy: "chart-waits",
  anchor: { date: START, day: 1 },
  ...change,
});

const anyCalendar = fc
  .record({
    policy: fc.constantFrom<MissedDayPolicy>("chart-waits", "chart-goes-on"),
    restWeekdays: fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { maxLength: 6 }),
    restDates: fc.array(
      fc.tuple(fc.nat(60), fc.nat(10)).map(([from, length]) => ({
        from: addDays(START, from),
        to: addDays(START, from + length),
      })),
      { maxLength: 3 },
    ),
  })
  .map(calendarWith);

/** Dates on which somebody sat down, given as gaps in days from the last one. */
const anySittings = fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 20 });

/** Sits down on each date in turn; the marks that result. */
function sit(calendar: Calendar, gaps: readonly number[]): readonly DayMark[] {
  const marks: DayMark[] = [];
  let date = START;
  for (const gap of gaps) {
    date = addDays(date, gap);
    marks.push({ date, day: boxDayOn(calendar, date, marks.at(-1) ?? null) });
  }
  return marks;
}

describe("a rest day", () => {
  const calendar = calendarWith({
    restWeekdays: [7],
    restDates: [{ from: "2026-04-03", to: "2026-04-05" }],
  });

  it("is a weekday without practice, or a date in a holiday, its ends included", () => {
    const rests = ["2026-03-15", "2026-03-16", "2026-04-02", "2026-04-03", "2026-04-05", "2026-04-06"];
    expect(rests.map((date) => isRestDay(calendar, date))).toEqual([true, false, false, true, true, false]);
  });

  it("is not counted among working days", () => {
    // Sunday 15 to Sunday 22 March: six working days.
    expect(workingDays(calendar, "2026-03-14", "2026-03-22")).toBe(6);
    expect(workingDays(calendar, "2026-03-22", "2026-03-14")).toBe(0);
  });

  it("has no number on the days ahead, and the numbers go on behind it", () => {
    const last = { date: START, day: 12 };
    expect(daysAhead(calendar, START, last, 4)).toEqual([12, null, 13, 14]);
  });

  // Sunday 15 March: a chart that waits has given 12 to Saturday and keeps 13 for Monday.
  it("leaves its number to the next practice day if the chart waits and nobody sits down", () => {
    expect(daysAhead(calendar, "2026-03-15", { date: START, day: 12 }, 3)).toEqual([null, 13, 14]);
    expect(daysAhead(calendar, "2026-03-15", { date: "2026-03-15", day: 13 }, 3)).toEqual([null, 14, 15]);
  });

  it("has no number of its own if the chart goes on", () => {
    const goesOn = { ...calendar, policy: "chart-goes-on" as const };
    expect(daysAhead(goesOn, "2026-03-15", { date: START, day: 1 }, 3)).toEqual([null, 2, 3]);
  });
});

describe("the box day, if the chart waits", () => {
  const waits = calendarWith({ policy: "chart-waits" });

  it("is 1 on the day the box is begun, and also if it is first used later", () => {
    expect(boxDayOn(waits, START, null)).toBe(1);
    expect(boxDayOn(waits, "2026-03-20", null)).toBe(1);
  });

  it("moves by one with each day of practice, however many were missed", () => {
    expect(sit(waits, [0, 1, 5, 0]).map(({ day }) => day)).toEqual([1, 2, 3, 3]);
  });
});

describe("the box day, if the chart goes on", () => {
  const goesOn = calendarWith({ policy: "chart-goes-on", restWeekdays: [7] });

  it("moves every day that is not a rest day", () => {
    // Saturday 14, Monday 16, Saturday 21 March.
    expect(sit(goesOn, [0, 2, 5]).map(({ day }) => day)).toEqual([1, 2, 7]);
  });

  it("stays the number of the last working day on a rest day", () => {
    expect(sit(goesOn, [0, 1, 1]).map(({ day }) => day)).toEqual([1, 1, 2]);
  });
});

describe("box days by any calendar", () => {
  it("never go back, and stay the same on one date", () => {
    fc.assert(
      fc.property(anyCalendar, anySittings, (calendar, gaps) => {
        const marks = sit(calendar, gaps);
        marks.forEach((mark, i) => {
          const before = marks[i - 1];
          if (!before) return;
          expect(mark.day).toBeGreaterThanOrEqual(before.day);
          if (mark.date === before.date) expect(mark.day).toBe(before.day);
        });
      }),
    );
  });

  it("run ahead as they will be sat, if every day that is no rest day is kept", () => {
    fc.assert(
      fc.property(
        anyCalendar,
        anySittings,
        fc.nat(9),
        fc.integer({ min: 1, max: 40 }),
        (calendar, gaps, gap, count) => {
          let last = sit(calendar, gaps).at(-1) ?? null;
          const from = addDays(last?.date ?? START, gap);
          daysAhead(calendar, from, last, count).forEach((day, i) => {
            const date = addDays(from, i);
            expect(day === null).toBe(isRestDay(calendar, date));
            if (day === null) return;
            expect(day).toBe(boxDayOn(calendar, date, last));
            last = { date, day };
          });
        },
      ),
    );
  });

  it("are not changed, for days that were sat, by a change of settings", () => {
    fc.assert(
      fc.property(anyCalendar, anyCalendar, anySittings, (calendar, { anchor: _, ...change }, gaps) => {
        const last = sit(calendar, gaps).at(-1) ?? null;
        const changed = changeCalendar(calendar, change, last);
        expect(changed.anchor).toEqual(last);
        if (last) {
          expect(boxDayOn(changed, last.date, last)).toBe(last.day);
          const next = addDays(last.date, 1);
          const rests = isRestDay(changed, next) && changed.policy === "chart-goes-on";
          expect(boxDayOn(changed, next, last)).toBe(last.day + (rests ? 0 : 1));
        }
      }),
    );
  });
});

describe("changing the calendar", () => {
  it("anchors the numbers at the last sitting, so new rest days do not shift the past", () => {
    const before = calendarWith({ policy: "chart-goes-on" });
    const last = { date: "2026-03-20", day: 7 };
    const after = changeCalendar(before, { restWeekdays: [5, 6, 7] }, last);
    expect(after.anchor).toEqual(last);
    // Saturday 21 and Sunday 22 rest now; Monday is the next day.
    expect(boxDayOn(after, "2026-03-23", last)).toBe(8);
  });

  it("keeps the start as anchor as long as nothing was sat", () => {
    expect(changeCalendar(calendarWith({}), { rollOverHour: 0 }, null).anchor).toEqual({ date: START, day: 1 });
  });
});

describe("missed days", () => {
  const calendar = calendarWith({ restWeekdays: [7] });

  it("are the working days between the last sitting and today", () => {
    // Saturday 14 to Thursday 19: Monday, Tuesday and Wednesday; Sunday was a rest day.
    expect(missedDays(calendar, "2026-03-19", { date: START, day: 1 })).toBe(3);
    expect(missedDays(calendar, "2026-03-16", { date: START, day: 1 })).toBe(0);
    expect(missedDays(calendar, START, { date: START, day: 1 })).toBe(0);
  });

  it("count from the start, that day included, if nothing was sat at all", () => {
    expect(missedDays(calendar, START, null)).toBe(0);
    expect(missedDays(calendar, "2026-03-17", null)).toBe(2);
  });

  it("are as many as the chart that goes on moves more than one that waits", () => {
    fc.assert(
      fc.property(anyCalendar, fc.nat(40), (calendar, gap) => {
        const last = { date: START, day: 1 };
        const date = addDays(START, gap);
        fc.pre(gap > 0 && !isRestDay(calendar, date));
        const [waits, goesOn] = (["chart-waits", "chart-goes-on"] as const).map((policy) =>
          boxDayOn({ ...calendar, policy }, date, last),
        ) as [number, number];
        expect(goesOn - waits).toBe(missedDays(calendar, date, last));
      }),
    );
  });
});

describe("days with nothing to do", () => {
  const last = { date: "2026-03-16", day: 5 };

  it("pass by themselves while the chart waits, until the first day with work", () => {
    const calendar = calendarWith({});
    expect(passIdleDays(calendar, "2026-03-20", last, 8)).toEqual({ date: "2026-03-18", day: 7 });
    expect(passIdleDays(calendar, "2026-03-20", last, Number.POSITIVE_INFINITY)).toEqual({
      date: "2026-03-19",
      day: 8,
    });
    expect(passIdleDays(calendar, "2026-03-20", last, 6)).toEqual(last);
    expect(passIdleDays(calendar, "2026-03-17", last, 9)).toEqual(last);
  });

  it("do not pass on rest days, nor where the chart goes on by itself", () => {
    // The 17th and 18th of March 2026 are a Tuesday and a Wednesday.
    const resting = calendarWith({ restWeekdays: [2, 3] });
    expect(passIdleDays(resting, "2026-03-20", last, 9)).toEqual({ date: "2026-03-19", day: 6 });
    expect(passIdleDays(calendarWith({ policy: "chart-goes-on" }), "2026-03-20", last, 9)).toEqual(last);
  });
});
