import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { DAY_MS, FIRST_EVENING, idAt } from "../../tests/support/any-log.ts";
import { type BoxScene, setUpScene } from "../../tests/support/box-scene.ts";
import { sitEvening } from "../../tests/support/sit-evening.ts";
import { newSqliteDatabase } from "../../tests/support/sqlite-database.ts";
import { addLearner, contextOn, type StoreDatabase } from "../../tests/support/store-database.ts";
import { localDateAt } from "../core/calendar/local-date.ts";
import { plainChart, spreadChart } from "../core/chart/make-chart.ts";
import { changeChart } from "./change-chart.ts";
import { planView } from "./plan-view.ts";
import { recordEntries } from "./record.ts";
import { todayView } from "./today.ts";

const ZONE = "Europe/Lisbon";
let database: StoreDatabase;
let scene: BoxScene;

beforeEach(async () => {
  database = await newSqliteDatabase();
  await database.open();
  scene = await setUpScene(database, { chart: plainChart(5), stars: 6, evenings: 0 });
  goTo(0);
});
afterEach(() => database.drop());

const goTo = (evening: number): void => {
  scene.context.now = FIRST_EVENING + evening * DAY_MS + 3_600_000;
};
const plan = () => planView(scene.context, ZONE);
const dateOf = (evening: number): string => localDateAt(FIRST_EVENING + evening * DAY_MS, ZONE, 4);

describe("what a plan starts from", () => {
  it("is an empty box that begins today, before one is set up", async () => {
    await addLearner(database, "a new guide");
    const context = contextOn(await database.open("a new guide"));
    context.now = FIRST_EVENING;
    const view = await planView(context, ZONE);
    expect(view).toMatchObject({ box: null, date: dateOf(0), from: dateOf(0), last: null, waiting: [], stock: 0 });
    expect(view.calendar.anchor).toEqual({ date: dateOf(0), day: 1 });
  });

  it("is the box as it is: today still ahead until it was sat", async () => {
    expect(await plan()).toMatchObject({ date: dateOf(0), from: dateOf(0), last: null, stock: 12 });
    await sitEvening(scene, 0, { newCards: 4 });
    const view = await plan();
    expect(view).toMatchObject({ date: dateOf(0), from: dateOf(1), last: { date: dateOf(0), day: 1 }, stock: 8 });
    expect(view.waiting).toEqual([{ compartment: 1, due: 2, count: 4 }]);
    goTo(1);
    expect(await plan()).toMatchObject({ from: dateOf(1), last: { date: dateOf(0), day: 1 } });
  });

  it("counts first answers by compartment, as Today's recall does", async () => {
    await sitEvening(scene, 0, { newCards: 4 });
    goTo(1);
    await sitEvening(scene, 1, { newCards: 0 });
    const { visits } = await plan();
    expect(visits.map(({ compartment, recalled, missed }) => [compartment, recalled, missed])).toEqual([[1, 4, 0]]);
    // The prior of nine recalled and one missed, and four recalled.
    expect((await todayView(scene.context, ZONE)).recall[0]).toBeCloseTo(13 / 14, 12);
  });

  it("names a change of chart as long as it can be taken back", async () => {
    await sitEvening(scene, 0, { newCards: 4 });
    expect((await plan()).chartChange).toBeNull();
    const { entry } = await changeChart(scene.context, { chart: spreadChart([1, 3, 9]) });
    expect((await plan()).chartChange).toBe(entry);
    const back = {
      id: idAt(0, 900, scene.world),
      box: scene.box,
      at: 0,
      kind: "take-back" as const,
      entry: entry ?? "",
    };
    expect(await recordEntries(scene.context, [back])).toMatchObject([{ status: "saved" }]);
    expect((await plan()).chartChange).toBeNull();
    await changeChart(scene.context, { chart: spreadChart([1, 3, 9]) });
    goTo(1);
    await sitEvening(scene, 1, { newCards: 0 });
    expect((await plan()).chartChange).toBeNull();
  });
});
