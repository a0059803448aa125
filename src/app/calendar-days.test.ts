import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { anyChart } from "../../tests/support/any-chart.ts";
import { DAY_MS, FIRST_EVENING } from "../../tests/support/any-log.ts";
import { type BoxScene, setUpScene } from "../../tests/support/box-scene.ts";
import { sitEvening } from "../../tests/support/sit-evening.ts";
import { newSqliteDatabase } from "../../tests/support/sqlite-database.ts";
import type { StoreDatabase } from "../../tests/support/store-database.ts";
import { addDays, isoWeekday } from "../core/calendar/local-date.ts";
import { chartDay, visitsOn } from "../core/chart/chart.ts";
import { plainChart } from "../core/chart/make-chart.ts";
import { type CalendarDay, calendarDays, daysToCome, type PracticeDay } from "./calendar-days.ts";
import { changeSettings } from "./set-up.ts";
import { todayView } from "./today.ts";

/** Sums of products in another order: the last bits of a double. */
const ROUNDING_DIGITS = 9;

let database: StoreDatabase;
let scene: BoxScene;

// The first evening is that of Saturday 14 March 2026. Sixteen cards in the stock, ten new ones a day; the chart goes on.
beforeEach(async () => {
  database = await newSqliteDatabase();
  await database.open();
  scene = await setUpScene(database, { chart: plainChart(7), stars: 8, evenings: 0 });
  scene.context.now = FIRST_EVENING;
});
afterEach(() => database.drop());

const daysOf = async (count: number): Promise<readonly CalendarDay[]> =>
  (await calendarDays(scene.context, count)).days;

const practice = (days: readonly CalendarDay[]): readonly PracticeDay[] =>
  days.filter((day): day is PracticeDay => !day.rest);

describe("the dates of a box", () => {
  it("begin with today, and are 64 unless another number is asked for", async () => {
    const { id, days } = await calendarDays(scene.context);
    expect(id).toBe(scene.box);
    expect(days).toHaveLength(64);
    expect(days[0]).toMatchObject({ date: "2026-03-14", day: 1, chartDay: 1 });
    expect(days[63]).toMatchObject({ date: "2026-05-16", day: 64, chartDay: 64 });
    expect((await daysOf(731)).at(-1)).toMatchObject({ date: "2028-03-13", day: 731, chartDay: 27 });
  });

  it("bring the daily number of new cards while the stock lasts, and their reviews behind them", async () => {
    const days = practice(await daysOf(4));
    expect(days.map(({ newCards }) => newCards)).toEqual([10, 6, 0, 0]);
    expect(days.map(({ reviews }) => reviews)[0]).toBe(0);
    expect(days.map(({ reviews }) => reviews)[1]).toBe(10);
  });

  it("say of today what Today says: all of it, what is left of it, and nothing when it is done", async () => {
    const sameAsToday = async () => {
      const view = await todayView(scene.context, "Europe/Lisbon");
      const [first] = practice(await daysOf(3));
      expect(first).toMatchObject({ date: view.date, day: view.day, chartDay: view.chartDay, newCards: view.newCards });
      expect(first?.reviews).toBe(view.due);
      expect(first?.minutes).toBeCloseTo(view.minutes, ROUNDING_DIGITS);
      return view.due + view.newCards;
    };
    await sitEvening(scene, 0, { newCards: 10 });
    expect(await sameAsToday()).toBe(0);
    scene.context.now += DAY_MS;
    expect(await sameAsToday()).toBe(16);
    await sitEvening(scene, 1, { newCards: 6, steps: 4 });
    expect(await sameAsToday()).toBe(12);
    await sitEvening(scene, 1, { newCards: 6 });
    expect(await sameAsToday()).toBe(0);
  });

  it("name the piles that were left from earlier days, on the first practice day only", async () => {
    await sitEvening(scene, 0, { newCards: 4 });
    scene.context.now += DAY_MS;
    await sitEvening(scene, 1, { newCards: 0 });
    expect(practice(await daysOf(3)).map(({ late }) => late)).toEqual([[], [], []]);
    // By the plain chart compartment 2 is visited on day 3, which is missed, and 4 and 1 are on day 4.
    scene.context.now += 2 * DAY_MS;
    const [today, tomorrow] = practice(await daysOf(2));
    expect(today).toMatchObject({ day: 4, reviews: 4, late: [{ compartment: 2, bundle: 1 }] });
    expect(today?.visits.map(({ compartment }) => compartment)).toEqual([4, 1]);
    expect(tomorrow?.late).toEqual([]);
    // On a rest day it waits for the next practice day, which has the number 4 then.
    await changeSettings(scene.context, { restWeekdays: [2] });
    expect((await daysOf(2))[0]).toEqual({ date: "2026-03-17", rest: true });
    expect(practice(await daysOf(2))).toMatchObject([
      { date: "2026-03-18", day: 4, reviews: 4, late: [{ compartment: 2, bundle: 1 }] },
    ]);
  });

  it("fail in words before a box is set up", async () => {
    const empty = await newSqliteDatabase();
    const context = { ...scene.context, store: await empty.open() };
    await expect(calendarDays(context)).rejects.toMatchObject({ failure: { kind: "not-found" } });
    await empty.drop();
  });
});

describe("rest days", () => {
  it("are given as rest, and the numbers and the work go on behind them", async () => {
    await sitEvening(scene, 0, { newCards: 10 });
    await changeSettings(scene.context, {
      restWeekdays: [7],
      restDates: [{ from: "2026-03-17", to: "2026-03-18" }],
    });
    const days = await daysOf(6);
    expect(days.map(({ date, rest }) => `${date.slice(8)} ${rest ? "rest" : "practice"}`)).toEqual([
      "14 practice",
      "15 rest",
      "16 practice",
      "17 rest",
      "18 rest",
      "19 practice",
    ]);
    expect(days[1]).toEqual({ date: "2026-03-15", rest: true });
    expect(practice(days).map(({ day }) => day)).toEqual([1, 2, 3]);
    expect(practice(days).map(({ newCards }) => newCards)).toEqual([0, 6, 0]);
  });

  it("give all of the day's new cards to the next practice day, also if somebody sat on the rest day", async () => {
    await changeSettings(scene.context, { newPerDay: 4, restWeekdays: [6] });
    await sitEvening(scene, 0, { newCards: 4 });
    const days = await daysOf(3);
    expect(days[0]).toEqual({ date: "2026-03-14", rest: true });
    expect(practice(days)).toMatchObject([
      { date: "2026-03-15", newCards: 4, reviews: 4 },
      { date: "2026-03-16", newCards: 4 },
    ]);
  });

  it("may last longer than a year, or without end", async () => {
    await sitEvening(scene, 0, { newCards: 10 });
    await changeSettings(scene.context, { restDates: [{ from: "2026-03-14", to: "2027-06-30" }] });
    const days = practice(await daysOf(731));
    expect(days.slice(0, 2)).toMatchObject([
      { date: "2027-07-01", day: 2, reviews: 10, newCards: 6 },
      { date: "2027-07-02", day: 3, newCards: 0 },
    ]);
    await changeSettings(scene.context, { restDates: [{ from: "2026-03-14", to: "9999-12-31" }] });
    expect(practice(await daysOf(731))).toEqual([]);
  });
});

// Clocks go back on 25 October 2026 in Lisbon (02:00 to 01:00, then UTC) and on 1 November 2026 in St. John's
// (02:00 to 01:00, then UTC-3:30): IANA time zone database, rules EU and Canada. Days begin at four in the morning.
describe.each([
  { timeZone: "Europe/Lisbon", before: "2026-10-24", change: "2026-10-25", four: "2026-10-25T04:00:00Z" },
  { timeZone: "America/St_Johns", before: "2026-10-31", change: "2026-11-01", four: "2026-11-01T07:30:00Z" },
])("in $timeZone, where clocks change on $change", ({ timeZone, before, change, four }) => {
  const firstAt = async (instant: number) => {
    scene.context.now = instant;
    return daysOf(64);
  };

  it("a date begins at the roll-over hour of the wall clock, and none is left out or comes twice", async () => {
    await changeSettings(scene.context, { timeZone });
    const early = await firstAt(Date.parse(four) - 1);
    const late = await firstAt(Date.parse(four));
    expect(early[0]?.date).toBe(before);
    expect(late[0]?.date).toBe(change);
    for (const days of [early, late]) {
      const from = days[0]?.date ?? "";
      expect(days.map(({ date }) => date)).toEqual(Array.from({ length: 64 }, (_, i) => addDays(from, i)));
    }
  });
});

describe("a box to come", () => {
  const pace = { recalled: 6, missed: 12, fresh: 30 };

  // By hand: bundles as long as the period, so a card recalled on day 2 is asked in compartment 2 on day 4, where half are
  // missed. Two new cards a day at 30 seconds; 2 reviews at 6 seconds on days 2 and 3; 3 recalled and 1 missed on day 4.
  it("asks what its chart makes of its new cards, in the minutes of its pace", () => {
    const compartments = [
      { period: 1, bundles: 1, offset: 0 },
      { period: 2, bundles: 2, offset: 0 },
    ];
    const box = {
      chart: { compartments },
      start: "2026-03-14",
      restWeekdays: [],
      restDates: [],
      newPerDay: 2,
      recall: [1, 0.5],
      pace,
    };
    const days = practice(daysToCome(box, 4));
    expect(days.map(({ reviews }) => reviews)).toEqual([0, 2, 2, 4]);
    const minutes = [60 / 60, 72 / 60, 72 / 60, 90 / 60];
    days.forEach((day, i) => {
      expect(day.minutes).toBeCloseTo(minutes[i] as number, ROUNDING_DIGITS);
    });
  });

  it("begins on its first practice day", () => {
    const box = { chart: plainChart(7), restDates: [], newPerDay: 10, recall: Array(7).fill(0.9), pace };
    // 14 March 2026 is a Saturday.
    const days = daysToCome({ ...box, start: "2026-03-14", restWeekdays: [6, 7] }, 4);
    expect(days.slice(0, 2).every(({ rest }) => rest)).toBe(true);
    expect(practice(days)).toMatchObject([
      { date: "2026-03-16", day: 1, reviews: 0 },
      { date: "2026-03-17", day: 2, reviews: 10 },
    ]);
  });

  it("has on every date the visits that the chart names for its box day, whatever the chart and the rest days", () => {
    const rests = fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { maxLength: 6 });
    fc.assert(
      fc.property(anyChart, rests, fc.nat(4000), (chart, restWeekdays, later) => {
        const start = addDays("2024-01-01", later);
        const recall = chart.compartments.map(() => 0.9);
        const days = daysToCome({ chart, start, restWeekdays, restDates: [], newPerDay: 3, recall, pace }, 64);
        let boxDay = 0;
        days.forEach((day, i) => {
          expect(day.date).toBe(addDays(start, i));
          expect(day.rest).toBe(restWeekdays.includes(isoWeekday(day.date)));
          if (day.rest) return;
          boxDay++;
          expect(day).toMatchObject({ day: boxDay, chartDay: chartDay(chart, boxDay), late: [], newCards: 3 });
          expect(day.visits).toEqual(visitsOn(chart, boxDay));
        });
      }),
    );
  });
});
