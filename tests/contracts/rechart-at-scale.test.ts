// A box that has been practised for months and changes its chart: every card is kept and none waits much longer.
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { makeLargeBox } from "../../bench/large-box.ts";
import { changeChart } from "../../src/app/change-chart.ts";
import type { PlacementRecord, Store } from "../../src/app/ports.ts";
import { rebuild } from "../../src/app/rebuild.ts";
import { recordEntries } from "../../src/app/record.ts";
import { todayView } from "../../src/app/today.ts";
import { rechartWaiting } from "../../src/core/box/rechart.ts";
import { bundleVisited, type Chart, step } from "../../src/core/chart/chart.ts";
import { LEVELLED_CHART, plainChart, spreadChart } from "../../src/core/chart/make-chart.ts";
import type { Waiting } from "../../src/core/load/expected.ts";
import { createEntryId } from "../../src/core/log/entry-id.ts";
import { FIRST_EVENING } from "../support/any-log.ts";
import { newSqliteDatabase } from "../support/sqlite-database.ts";
import { contextOn, dump, type StoreDatabase, type TestContext } from "../support/store-database.ts";

/** Enough that more than 5,000 cards lie in compartments after three months, hardly any of them kept yet. */
const SIZE = { facts: 2_700, days: 90, newPerDay: 60 } as const;
const PLACED = 5_000;

let database: StoreDatabase;
let store: Store;
let context: TestContext;

beforeAll(async () => {
  database = await newSqliteDatabase();
  store = await database.open();
  await makeLargeBox(store, FIRST_EVENING, SIZE);
  context = contextOn(store);
  context.now = FIRST_EVENING;
});
afterAll(() => database.drop());

const boxId = () => store.read(async ({ boxes }) => (await boxes.box())?.id ?? "");
const waiting = async () => {
  const id = await boxId();
  return store.read(({ boxes }) => boxes.waiting(id));
};

/** Every card of the box by its identity. */
async function allCards(): Promise<ReadonlyMap<string, PlacementRecord>> {
  const id = await boxId();
  const cards = new Map<string, PlacementRecord>();
  await store.read(async ({ boxes }) => {
    for await (const one of boxes.eachPlacement(id)) cards.set(one.card, one);
  });
  return cards;
}

const inOrder = (piles: readonly Waiting[]) =>
  [...piles].sort((a, b) => a.compartment - b.compartment || a.due - b.due);

const CHARTS: readonly (readonly [name: string, chart: Chart])[] = [
  ["plain chart of seven compartments", plainChart(7)],
  ["chart of five compartments with tripling periods", spreadChart([1, 3, 9, 27, 81], [1, 1, 3, 3, 9])],
  ["chart of four compartments with one tab each", spreadChart([1, 7, 28, 84])],
  ["chart of ten compartments", plainChart(10)],
];

describe("a box with 5,000 placed cards", () => {
  it.each(CHARTS)(
    "changed to a %s keeps them all, and none waits more than before and one step",
    async (_name, chart) => {
      const before = await allCards();
      const { log: _log, ...tables } = await dump(database);
      const piles = await waiting();
      const { day } = await todayView(context, "UTC");
      expect(day).toBe(SIZE.days + 1);

      const { entry, moved } = await changeChart(context, { chart });
      const after = await allCards();
      expect([...after.keys()]).toEqual([...before.keys()]);
      let placed = 0;
      let different = 0;
      for (const [card, { state: old }] of before) {
        const state = after.get(card)?.state;
        if (old.place.kind !== "compartment") {
          expect(state).toEqual(old);
          continue;
        }
        placed++;
        const place = state?.place;
        if (place?.kind !== "compartment") throw new Error(`${card} is in no compartment any more`);
        expect(state).toEqual({ ...old, place });
        const own = chart.compartments[place.compartment - 1];
        expect(own && place.due - day).toBeLessThanOrEqual(Math.max(0, old.place.due - day) + (own ? step(own) : 0));
        expect(place.due).toBeGreaterThanOrEqual(day);
        expect(bundleVisited(chart, place.compartment, place.due)).toBe(place.bundle);
        if (JSON.stringify(place) !== JSON.stringify(old.place)) different++;
      }
      expect(placed).toBeGreaterThan(PLACED);
      expect(moved).toBe(different);
      expect(inOrder(await waiting())).toEqual(inOrder(rechartWaiting(LEVELLED_CHART, chart, day, piles)));
      expect((await rebuild(context)).differences).toEqual([]);

      const id = createEntryId(context.now, new Uint8Array(10), entry ?? undefined);
      const back = { id, box: await boxId(), at: context.now, kind: "take-back", entry: entry ?? "" } as const;
      expect(await recordEntries(context, [back])).toMatchObject([{ status: "saved" }]);
      const { log: _same, ...again } = await dump(database);
      expect(again).toEqual(tables);
      expect((await rebuild(context)).differences).toEqual([]);
    },
  );
});
