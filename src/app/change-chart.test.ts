// Another chart for a box that is in use: when it may be changed, what goes on as before, and taking it back.
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { DAY_MS, FIRST_EVENING, idAt } from "../../tests/support/any-log.ts";
import { eventFor } from "../../tests/support/any-sitting.ts";
import { type BoxScene, setUpScene, storedPlaces, wholeLog } from "../../tests/support/box-scene.ts";
import { newSqliteDatabase } from "../../tests/support/sqlite-database.ts";
import { dump, type StoreDatabase } from "../../tests/support/store-database.ts";
import { LEVELLED_CHART, plainChart, spreadChart } from "../core/chart/make-chart.ts";
import type { Answer, OutcomeEntry } from "../core/log/entry.ts";
import { nextStep, replaySitting, type SittingEvent, type Step, summarise } from "../core/sitting/sitting.ts";
import { cardHistory, drawerView } from "./box-view.ts";
import { changeChart } from "./change-chart.ts";
import { recallOf } from "./measures.ts";
import { rebuild } from "./rebuild.ts";
import { recordEntries, type SentEntry } from "./record.ts";
import { changeSettings } from "./set-up.ts";
import { beginSitting, lookAhead } from "./sit.ts";
import { todayView } from "./today.ts";
import type { SittingView } from "./views.ts";

const SHORT = spreadChart([1, 4]);
let database: StoreDatabase;
let scene: BoxScene;
let evening: number;
let sent: number;

beforeEach(async () => {
  database = await newSqliteDatabase();
  await database.open();
  scene = await setUpScene(database, { chart: plainChart(7), stars: 8, evenings: 0 });
  sent = 0;
  goTo(0);
});
afterEach(async () => {
  // Whatever was done, the cache is what the log says.
  expect((await rebuild(scene.context)).differences).toEqual([]);
  await database.drop();
});

function goTo(n: number): void {
  evening = n;
  scene.context.now = FIRST_EVENING + n * DAY_MS;
}

/** The next identity, by the clock. */
const id = () => {
  sent++;
  scene.context.now = FIRST_EVENING + evening * DAY_MS + sent * 1000;
  return idAt(evening, sent, scene.world);
};
const base = () => ({ id: id(), box: scene.box, at: scene.context.now });
const send = async (...entries: readonly SentEntry[]) => recordEntries(scene.context, entries);
const today = () => todayView(scene.context, "Europe/Lisbon");
const begin = (newCards: number) => beginSitting(scene.context, id(), newCards);
const change = (chart = SHORT) => changeChart(scene.context, { chart });
const places = () => storedPlaces(scene);
const tables = async () => {
  const { log: _log, ...rest } = await dump(database);
  return rest;
};

const eventAt = (view: SittingView, step: Exclude<Step, { kind: "done" }>, answer: Answer): SittingEvent => {
  const own = base();
  return { ...eventFor(view.plan, step, answer, 0), ...own };
};

/** Answers the steps of a sitting as far as `steps` go; finishes it if it comes to its end. */
async function answer(view: SittingView, steps = Number.POSITIVE_INFINITY, given: Answer = "recalled") {
  let state = replaySitting(view.plan, view.events);
  for (let n = 0; n < steps; n++) {
    const step = nextStep(state);
    if (step.kind === "done") {
      expect(await send({ ...base(), kind: "finish", sitting: view.plan.sitting })).toMatchObject([
        { status: "saved" },
      ]);
      break;
    }
    const event = eventAt(view, step, given);
    expect(await send(event)).toMatchObject([{ status: "saved" }]);
    state = replaySitting(view.plan, [...state.events, event]);
  }
  return state;
}

/** Takes an entry back; what became of that. */
const takeBack = async (entry: string | null) => {
  const [receipt] = await send({ ...base(), kind: "take-back", entry: entry ?? "" });
  return receipt;
};

const chartEntries = async () => (await wholeLog(scene)).filter((entry) => entry.kind === "chart");

describe("the day from which a chart counts", () => {
  it("is today before anything was asked, and the day after today's sitting", async () => {
    await answer(await begin(4));
    await change();
    goTo(1);
    await change(plainChart(7));
    expect((await chartEntries()).map(({ day }) => day)).toEqual([2, 2]);
  });

  it("is the next practice day on a rest day, with a chart that goes on", async () => {
    await answer(await begin(4));
    await changeSettings(scene.context, { restWeekdays: [7] });
    goTo(1);
    expect(await today()).toMatchObject({ restDay: true, day: 1 });
    await change();
    expect((await chartEntries()).map(({ day }) => day)).toEqual([2]);
  });
});

describe("a chart that is chosen", () => {
  it("moves the cards and says how many, and the pages go by it", async () => {
    await answer(await begin(4));
    goTo(1);
    await answer(await begin(4));
    // Four cards in compartment 1 for day 3, four in compartment 2 for day 3.
    const { box, moved } = await change();
    expect(box.chart).toEqual(SHORT);
    // Period 2 is as near to 1 as to 4: they go to compartment 1, due on day 3 as before.
    expect(moved).toBe(4);
    expect((await drawerView(scene.context)).compartments.map(({ bundles }) => bundles[0]?.count)).toEqual([8, 0]);
    goTo(2);
    expect(await today()).toMatchObject({ day: 3, due: 8, cycle: 4, recall: [expect.any(Number), expect.any(Number)] });
    expect(await lookAhead(scene.context)).toMatchObject({ reviews: 8 });
    const state = await answer(await begin(0));
    expect(summarise(state, 2)).toMatchObject({ movedUp: 8, kept: 0 });
  });

  it("changes nothing if it is in force already", async () => {
    const before = await dump(database);
    expect(await change(plainChart(7))).toMatchObject({ entry: null, moved: 0, box: { chart: plainChart(7) } });
    expect(await dump(database)).toEqual(before);
  });

  it("stays when other settings are changed", async () => {
    await change();
    await changeSettings(scene.context, { newPerDay: 3 });
    expect(await today()).toMatchObject({ box: { chart: SHORT, newPerDay: 3 } });
  });

  it("moves no card out of the stock, and withdrawn cards come back to where they would have been", async () => {
    await answer(await begin(1));
    goTo(1);
    await answer(await begin(0));
    const [card] = [...(await places())].find(([, { place }]) => place.kind === "compartment") ?? [""];
    await send({ ...base(), kind: "withdraw", card, day: 2, reason: "hand" });
    await change();
    await send({ ...base(), kind: "bring-back", card, day: 2 });
    const after = await places();
    expect(after.get(card)?.place).toEqual({ kind: "compartment", compartment: 1, bundle: 1, due: 3 });
    expect([...after.values()].filter(({ place }) => place.kind === "stock")).toHaveLength(15);
  });

  it("is part of the history of a card that was there, until it is taken back", async () => {
    await answer(await begin(1));
    const card = [...(await places())].find(([, { place }]) => place.kind === "compartment")?.[0] ?? "";
    const fresh = [...(await places())].find(([, { place }]) => place.kind === "stock")?.[0] ?? "";
    const kinds = async (of: string) => (await cardHistory(scene.context, of)).entries.map(({ kind }) => kind);
    const { entry } = await change();
    expect(await kinds(card)).toEqual(["look", "outcome", "chart"]);
    expect(await kinds(fresh)).toEqual([]);
    await takeBack(entry);
    expect(await kinds(card)).toEqual(["look", "outcome"]);
  });
});

describe("the ruler after a change of chart", () => {
  it("keeps the numbers of the days that were sat, with compartments as high as the present chart has them", async () => {
    for (let n = 0; n < 6; n++) {
      goTo(n);
      await answer(await begin(1));
    }
    await change();
    goTo(6);
    const past = (await today()).ruler.filter(({ day }) => day !== null && day < 7);
    // The ruler sequence: compartments 2, 3, 2, 4, 2, 3 of the plain chart, of periods 2, 4, 2, 8, 2, 4.
    expect(past.map(({ chartDay, top }) => [chartDay, top])).toEqual([
      [1, 1],
      [2, 2],
      [3, 1],
      [4, 2],
      [5, 1],
      [6, 2],
    ]);
    expect((await today()).ruler.find(({ day }) => day === 7)).toMatchObject({ chartDay: 3 });
  });
});

describe("the chance of recall after a change of chart", () => {
  it("counts earlier answers for the compartments to which their cards would have been moved", async () => {
    await answer(await begin(10));
    goTo(1);
    await answer(await begin(0));
    goTo(2);
    await answer(await begin(0), 10, "missed");
    await answer(await begin(0));
    const recall = () =>
      scene.context.store.read(async (session) => {
        const box = await session.boxes.box();
        return box ? recallOf(session, box) : [];
      });
    // Ten recalled in compartment 1, ten missed in compartment 2: (9 + 10) / (10 + 10) and 9 / (10 + 10).
    expect((await recall()).slice(0, 3)).toEqual([0.95, 0.45, 0.9]);
    // Both come to compartment 1: (9 + 10) / (10 + 20).
    await change();
    expect(await recall()).toEqual([19 / 30, 0.9]);
    // Answers of a sitting keep the compartment of its own chart, whatever came between.
    await change(plainChart(7));
    expect((await recall()).slice(0, 3)).toEqual([0.95, 0.45, 0.9]);
  });
});

describe("a sitting of today", () => {
  it("must be finished first, once it has begun", async () => {
    const view = await begin(2);
    await answer(view, 1);
    await expect(change()).rejects.toThrow("Finish today's sitting first.");
    expect(await chartEntries()).toEqual([]);
    await answer(await begin(2));
    await expect(change()).resolves.toMatchObject({ box: { chart: SHORT } });
  });

  it("in which nothing has happened gives way to one by the new chart", async () => {
    await answer(await begin(4));
    goTo(1);
    const stale = await begin(0);
    await change(spreadChart([1, 9]));
    expect(await today()).toMatchObject({ day: 2, due: 4, sitting: null });
    const view = await begin(0);
    expect(view.plan.sitting).not.toBe(stale.plan.sitting);
    // A page that still lies open on the old one is heard all the same: recalled into compartment 2 of the plain chart,
    // due on day 3, and moved from there.
    const state = await answer(stale, 1);
    expect((await places()).get(state.events[0]?.card ?? "")).toMatchObject({
      place: { compartment: 1, due: 3 },
      since: 2,
    });
  });

  describe("that is opened again by taking an answer back", () => {
    /** A finished sitting of four visits, the last of which was a slip, and the chart changed after it. */
    async function slipped(): Promise<{ view: SittingView; slip: OutcomeEntry; entry: string | null }> {
      await answer(await begin(4));
      goTo(1);
      const view = await begin(0);
      await answer(view, 3);
      const resumed = await begin(0);
      const state = await answer(resumed, 1, "missed");
      const slip = state.events.at(-1) as OutcomeEntry;
      await answer(await begin(0));
      expect((await today()).sitting).toMatchObject({ finished: true, asked: 4 });
      return { view, slip, entry: (await change(spreadChart([1, 9]))).entry };
    }

    it("asks that card again, by the chart of the sitting, and takes the new answer", async () => {
      const { view, slip } = await slipped();
      expect(await takeBack(slip.id)).toMatchObject({ status: "saved" });
      expect((await today()).sitting).toMatchObject({ finished: false, asked: 3 });
      const resumed = await begin(0);
      expect(resumed.plan.sitting).toBe(view.plan.sitting);
      expect(resumed.compartments).toBe(7);
      const cards = resumed.plan.piles.flatMap((pile) => pile.cards.map(({ card }) => card));
      expect([...cards].sort()).toEqual(view.plan.piles.flatMap((pile) => pile.cards.map(({ card }) => card)).sort());
      const state = replaySitting(resumed.plan, resumed.events);
      expect(nextStep(state)).toMatchObject({ kind: "visit", compartment: 1, card: { card: slip.card } });
      await answer(resumed);
      expect((await today()).sitting).toMatchObject({ finished: true, asked: 4 });
      // As if it had been recalled on day 2 by the plain chart, and then moved from compartment 2 to 1 of the new one.
      expect((await places()).get(slip.card)).toMatchObject({ place: { compartment: 1, due: 3 }, since: 2 });
    });

    it("has to be finished again before the chart is changed again, and does not hinder taking the change back", async () => {
      const { slip, entry } = await slipped();
      await takeBack(slip.id);
      await expect(change(LEVELLED_CHART)).rejects.toThrow("Finish today's sitting first.");
      expect(await takeBack(entry)).toMatchObject({ status: "saved" });
      expect((await places()).get(slip.card)?.place).toMatchObject({ compartment: 1, due: 2 });
      await answer(await begin(0));
      expect((await places()).get(slip.card)?.place).toMatchObject({ compartment: 2, due: 3 });
    });
  });
});

describe("taking a change of chart back", () => {
  beforeEach(async () => {
    await answer(await begin(4));
    goTo(1);
    await answer(await begin(4));
  });

  it("leaves everything but the log as it was", async () => {
    const before = await tables();
    const { entry } = await change();
    expect(await tables()).not.toEqual(before);
    expect(await takeBack(entry)).toMatchObject({ status: "saved", reason: null });
    expect(await tables()).toEqual(before);
    expect(await takeBack(entry)).toMatchObject({ status: "refused", reason: "This has been taken back already." });
  });

  it("is refused once cards have been asked or moved, until that is taken back too", async () => {
    const { entry } = await change();
    goTo(2);
    const view = await begin(0);
    expect(await takeBack(entry)).toMatchObject({ status: "saved" });
    const again = (await change()).entry;
    const state = await answer(await begin(0), 1);
    const reason = "Cards have been asked or moved since. Change the chart again instead.";
    expect(await takeBack(again)).toMatchObject({ status: "refused", reason });
    expect(await takeBack(state.events.at(-1)?.id ?? "")).toMatchObject({ status: "saved" });
    expect(await takeBack(again)).toMatchObject({ status: "saved" });
    expect((await drawerView(scene.context)).box.chart).toEqual(plainChart(7));
    expect(view.plan.day).toBe(3);
  });

  it("goes back one change after the other", async () => {
    const before = await tables();
    const first = (await change()).entry;
    const between = await tables();
    const second = (await change(LEVELLED_CHART)).entry;
    const reason = "The chart has been changed again since. Take that back first.";
    expect(await takeBack(first)).toMatchObject({ status: "refused", reason });
    expect(await takeBack(second)).toMatchObject({ status: "saved" });
    expect(await tables()).toEqual(between);
    expect(await takeBack(first)).toMatchObject({ status: "saved" });
    expect(await tables()).toEqual(before);
  });

  it("counts at once for what is sent along with it", async () => {
    const { entry } = await change();
    const card = [...(await places())].find(([, { place }]) => place.kind === "compartment")?.[0] ?? "";
    // The short chart has no compartment 7.
    const move = () => ({ ...base(), kind: "move", card, day: 2, to: 7 }) as const;
    expect(await send(move())).toMatchObject([{ status: "refused", reason: "The box has no such place." }]);
    const receipts = await send({ ...base(), kind: "take-back", entry: entry ?? "" }, move());
    expect(receipts).toMatchObject([{ status: "saved" }, { status: "saved" }]);
  });
});
