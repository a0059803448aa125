import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { DAY_MS, FIRST_EVENING, idAt } from "../../tests/support/any-log.ts";
import { type BoxScene, setUpScene } from "../../tests/support/box-scene.ts";
import { sitEvening } from "../../tests/support/sit-evening.ts";
import { newSqliteDatabase } from "../../tests/support/sqlite-database.ts";
import type { StoreDatabase } from "../../tests/support/store-database.ts";
import { plainChart } from "../core/chart/make-chart.ts";
import { cardHistory, drawerView } from "./box-view.ts";
import { changeSettings } from "./set-up.ts";
import { beginSitting, lookAhead } from "./sit.ts";
import { todayView } from "./today.ts";

let database: StoreDatabase;
let scene: BoxScene;

// The first evening is that of Saturday 14 March 2026. The chart of the scene goes on.
beforeEach(async () => {
  database = await newSqliteDatabase();
  await database.open();
  scene = await setUpScene(database, { chart: plainChart(7), stars: 8, evenings: 0 });
  scene.context.now = FIRST_EVENING;
});
afterEach(() => database.drop());

const today = () => todayView(scene.context, "Europe/Lisbon");

const sit = (evening: number, newCards: number) => sitEvening(scene, evening, { newCards });

describe("today's new cards", () => {
  it("are those of the day's number that are left, whichever sitting introduced the others", async () => {
    expect(await today()).toMatchObject({ newCards: 10, introducedToday: 0, stock: 16 });
    await sit(0, 10);
    expect(await today()).toMatchObject({ newCards: 0, introducedToday: 10, stock: 6, sitting: { finished: true } });
  });

  it("are those that an unfinished sitting still has to introduce, even if more than the day's number", async () => {
    await sit(0, 10);
    const { context, world } = scene;
    await beginSitting(context, idAt(0, 60_000, world), 3);
    expect(await today()).toMatchObject({ newCards: 3, introducedToday: 10, sitting: { finished: false } });
  });

  it("are never more than the stock holds", async () => {
    await changeSettings(scene.context, { newPerDay: 500 });
    await sit(0, 10);
    expect(await today()).toMatchObject({ newCards: 6, stock: 6 });
  });
});

describe("what is due", () => {
  it("is on the next day what was introduced the day before, and the closing page says so beforehand", async () => {
    await sit(0, 4);
    expect(await today()).toMatchObject({ day: 1, due: 0 });
    expect(await lookAhead(scene.context)).toMatchObject({ date: "2026-03-15", reviews: 4, newCards: 10 });
    scene.context.now += DAY_MS;
    expect(await today()).toMatchObject({ day: 2, due: 4, missedDays: 0, piles: [{ compartment: 1, count: 4 }] });
  });
});

describe("on a rest day, with a chart that waits", () => {
  beforeEach(async () => {
    await sit(0, 4);
    await changeSettings(scene.context, { policy: "chart-waits", restWeekdays: [7] });
    scene.context.now = FIRST_EVENING + DAY_MS;
  });
  const dueDate = async () => {
    const card = (await scene.context.store.read(({ boxes }) => boxes.dueCards(scene.box, 2)))[0]?.card ?? "";
    return (await cardHistory(scene.context, card)).dueDate;
  };
  const nextOfFirst = async () => (await drawerView(scene.context)).compartments[0]?.bundles[0]?.nextVisit;
  const numbered = async () =>
    (await today()).ruler.filter(({ date }) => date >= "2026-03-15").map(({ date, day }) => `${date} ${day}`);

  it("the next practice day keeps the number that today would have had", async () => {
    expect(await today()).toMatchObject({ restDay: true, day: 2, due: 4 });
    expect((await numbered()).slice(0, 3)).toEqual(["2026-03-15 null", "2026-03-16 2", "2026-03-17 3"]);
    expect(await dueDate()).toBe("2026-03-16");
    expect(await nextOfFirst()).toBe("2026-03-16");
    scene.context.now += DAY_MS;
    expect(await today()).toMatchObject({ day: 2, due: 4 });
  });

  it("tomorrow has the number after today's if somebody sits down all the same", async () => {
    await sit(1, 0);
    expect((await numbered()).slice(0, 3)).toEqual(["2026-03-15 null", "2026-03-16 3", "2026-03-17 4"]);
    expect(await nextOfFirst()).toBe("2026-03-16");
    scene.context.now += DAY_MS;
    expect(await today()).toMatchObject({ day: 3 });
  });
});

describe("on a rest day, with a chart that goes on", () => {
  it("cards that fall due next have the date of the next practice day", async () => {
    await sit(0, 4);
    await changeSettings(scene.context, { restWeekdays: [7] });
    scene.context.now = FIRST_EVENING + DAY_MS;
    expect(await today()).toMatchObject({ restDay: true, day: 1, due: 0 });
    expect((await drawerView(scene.context)).compartments[0]?.bundles[0]).toMatchObject({ nextVisit: "2026-03-16" });
    scene.context.now += DAY_MS;
    expect(await today()).toMatchObject({ day: 2, due: 4 });
  });
});

describe("a holiday without end", () => {
  it("does not keep the box from being shown", async () => {
    await sit(0, 4);
    await changeSettings(scene.context, { restDates: [{ from: "2026-03-15", to: "9999-12-31" }] });
    scene.context.now += DAY_MS;
    expect((await drawerView(scene.context)).compartments).toHaveLength(7);
    expect((await today()).ruler.filter(({ day }) => day !== null)).toHaveLength(1);
  });
});

describe("what choosing a policy would mean", () => {
  it("is one more day if the chart waits, and all the days that went by if it goes on", async () => {
    await sit(0, 4);
    scene.context.now += 5 * DAY_MS;
    const { policies, missedDays, day } = await today();
    expect(missedDays).toBe(4);
    expect(day).toBe(6);
    expect(policies.map(({ policy, today: number }) => [policy, number])).toEqual([
      ["chart-waits", 2],
      ["chart-goes-on", 6],
    ]);
    expect(policies.map(({ dueToday }) => dueToday)).toEqual([4, 4]);
  });
});
