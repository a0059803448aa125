// Results from paper where the log is not in the order of the dates: late finishes, journeys west, a clock set back.
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { changeChart } from "../../src/app/change-chart.ts";
import { addFact, addSubject } from "../../src/app/facts.ts";
import type { PaperDay } from "../../src/app/paper-entry.ts";
import { enterPaper, paperDay } from "../../src/app/paper-results.ts";
import { takeBackPaper } from "../../src/app/paper-undo.ts";
import { rebuild } from "../../src/app/rebuild.ts";
import { recordEntries } from "../../src/app/record.ts";
import { changeSettings, setUpBox } from "../../src/app/set-up.ts";
import { beginSitting } from "../../src/app/sit.ts";
import { plainChart } from "../../src/core/chart/make-chart.ts";
import { DAY_MS, FIRST_EVENING, idAt } from "../support/any-log.ts";
import { starPair } from "../support/night-sky.ts";
import {
  addLearner,
  contextOn,
  type NewDatabase,
  type StoreDatabase,
  type TestContext,
} from "../support/store-database.ts";

const SATURDAY = "2026-03-14";
const SUNDAY = "2026-03-15";
const MONDAY = "2026-03-16";
const TUESDAY = "2026-03-17";
let worlds = 0;

export function paperOrderContract(newDatabase: NewDatabase): void {
  let database: StoreDatabase;
  let context: TestContext;
  let box: string;
  let world: number;

  beforeEach(async () => {
    database = await newDatabase();
    await database.open();
    world = ++worlds;
    await addLearner(database, `traveller ${world}`);
    context = contextOn(await database.open(`traveller ${world}`));
    context.now = FIRST_EVENING;
    await addSubject(context, `far sky ${world}`, "The night sky");
    for (let n = 0; n < 12; n++) await addFact(context, `${world} far ${n}`, `far sky ${world}`, starPair(n));
    ({ id: box } = await setUpBox(context, { timeZone: "Europe/Lisbon", chart: plainChart(7), newPerDay: 2 }));
  });
  afterEach(() => database.drop());

  const enter = async (...days: readonly string[]) => {
    const orders: PaperDay[] = [];
    for (const date of days)
      orders.push({ date, missed: [], introduced: (await paperDay(context, date, orders)).newCards });
    return enterPaper(context, orders);
  };
  const places = async () =>
    (await database.run(`select card_id, place, due from placement where box_id = '${box}' order by card_id`)).map(
      (row) => ({ ...row }),
    );

  describe("results from paper, where the log does not follow the calendar,", () => {
    it("find room between two days, though the earlier sitting was finished days late", async () => {
      const [first] = await enter(SATURDAY);
      context.now = FIRST_EVENING + 3 * DAY_MS;
      const late = {
        id: idAt(3, 0, world),
        box,
        at: context.now,
        kind: "finish",
        sitting: first?.sitting ?? "",
      } as const;
      await recordEntries(context, [late]);
      context.now += 3_600_000;
      for (const date of [TUESDAY, MONDAY, SUNDAY, SATURDAY]) {
        context.now += 60_000;
        expect(await enter(date)).toMatchObject([{ date, introduced: 2 }]);
      }
      expect((await rebuild(context)).differences).toEqual([]);
    });

    it("leave nothing due on their day, though the chart was changed soon after it", async () => {
      await enter(SATURDAY);
      // Early on Tuesday, an hour after Monday has ended.
      context.now = FIRST_EVENING + 2 * DAY_MS + 9 * 3_600_000;
      await changeChart(context, { chart: plainChart(3) });
      context.now += DAY_MS;
      expect(await enter(SUNDAY, MONDAY)).toMatchObject([{ day: 2 }, { day: 3, introduced: 2 }]);
      expect(await paperDay(context, MONDAY)).toMatchObject({ day: 3, piles: [] });
    });

    it("are entered on a date that comes again after a journey west", async () => {
      await changeSettings(context, { timeZone: "Pacific/Auckland" });
      expect(await enter(SUNDAY)).toMatchObject([{ date: SUNDAY, introduced: 2 }]);
      await changeSettings(context, { timeZone: "Pacific/Honolulu" });
      context.now += 3_600_000;
      const { plan } = await beginSitting(context, idAt(0, 3_600, world), 1);
      const [fresh] = plan.newCards;
      const look = { kind: "look", card: fresh?.card ?? "", day: plan.day, sitting: plan.sitting } as const;
      await recordEntries(context, [{ id: idAt(0, 3_601, world), box, at: context.now, ...look }]);
      context.now += 60_000;
      expect(await enter(SATURDAY)).toMatchObject([{ date: SATURDAY }]);
      expect((await rebuild(context)).differences).toEqual([]);
    });

    it("are entered today, though a later start of the day has made today the day before the box was set up", async () => {
      await changeSettings(context, { rollOverHour: 23 });
      expect(await paperDay(context)).toMatchObject({ date: "2026-03-13", dates: ["2026-03-13"] });
      expect(await enter("2026-03-13")).toMatchObject([{ day: 1, introduced: 2 }]);
      context.now += DAY_MS;
      expect(await enter(SATURDAY)).toMatchObject([{ day: 2, recalled: 2, introduced: 2 }]);
      expect((await rebuild(context)).differences).toEqual([]);
    });

    it("are the last thing that can be taken back, though the clock was set back before", async () => {
      context.now = FIRST_EVENING + 3 * DAY_MS;
      await enter(TUESDAY);
      context.now = FIRST_EVENING + 2 * DAY_MS;
      const before = await places();
      const sittings = (await enter(SUNDAY, MONDAY)).map(({ sitting }) => sitting);
      expect((await paperDay(context)).undo).toMatchObject({ dates: [SUNDAY, MONDAY] });
      await takeBackPaper(context, sittings);
      expect(await places()).toEqual(before);
      await enter(SUNDAY, MONDAY);
      const { plan } = await beginSitting(context, idAt(2, 60, world), 1);
      const own = { id: idAt(2, 120, world), box, at: context.now, day: plan.day, sitting: plan.sitting };
      await recordEntries(context, [{ ...own, kind: "look", card: plan.newCards[0]?.card ?? "" }]);
      expect((await paperDay(context)).undo).toBeNull();
    });

    it("can no longer be taken back once a sitting that was begun before them has gone on", async () => {
      context.now = FIRST_EVENING + DAY_MS;
      const { plan } = await beginSitting(context, idAt(1, 0, world), 2);
      context.now += 60_000;
      const [done] = await enter(SATURDAY);
      expect((await paperDay(context)).undo).not.toBeNull();
      context.now += 60_000;
      const own = { id: idAt(1, 200, world), box, at: context.now, day: plan.day, sitting: plan.sitting };
      const [fresh] = plan.newCards;
      await recordEntries(context, [{ ...own, kind: "look", card: fresh?.card ?? "" }]);
      expect((await paperDay(context)).undo).toBeNull();
      await expect(takeBackPaper(context, [done?.sitting ?? ""])).rejects.toThrow("Something else");
    });

    it("name the day on which something is wrong", async () => {
      const [first] = (await paperDay(context)).newCards;
      await enter(SATURDAY);
      context.now += DAY_MS;
      const day = { missed: [], introduced: [] };
      const entered = (...days: readonly Partial<PaperDay>[]) =>
        enterPaper(
          context,
          days.map((one) => ({ date: SUNDAY, ...day, ...one })),
        );
      await expect(entered({ introduced: [first ?? 0] })).rejects.toThrow(
        `on ${SUNDAY}: This card has been introduced`,
      );
      await expect(entered({}, { missed: [first ?? 0] })).rejects.toThrow(/was not due on 2026-03-15: .* in 1 day\./u);
      await expect(entered({ date: MONDAY })).rejects.toThrow(`${MONDAY} is still to come`);
      await expect(entered({ date: "2026-03-13" })).rejects.toThrow("There was no box on 2026-03-13 yet");
    });
  });
}
