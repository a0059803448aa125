// The cached places of cards, and what is counted from them.

import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { BoxRecord, PlacementRecord, PlaceQuery, Store } from "../../src/app/ports.ts";
import type { Place } from "../../src/core/box/placement.ts";
import { LEVELLED_CHART } from "../../src/core/chart/make-chart.ts";
import { EXACT_SPELLING } from "../../src/core/facts/fact.ts";
import { idAt } from "../support/any-log.ts";
import { storedPair } from "../support/night-sky.ts";
import type { NewDatabase, StoreDatabase } from "../support/store-database.ts";

const BOX: BoxRecord = {
  id: "box",
  chart: LEVELLED_CHART,
  calendar: {
    timeZone: "Asia/Kathmandu",
    rollOverHour: 0,
    restWeekdays: [6],
    restDates: [],
    policy: "chart-waits",
    anchor: { date: "2026-03-14", day: 1 },
  },
  newPerDay: 10,
  seed: '{"a": "📦"}',
};

const inside = (compartment: number, bundle: number, due: number): Place => ({
  kind: "compartment",
  compartment,
  bundle,
  due,
});

/** Places of the cards c0, c1, ... and their positions in the stock, past what 32 bits hold with a sign. */
const PLACES: readonly (readonly [place: Place, stockKey: number])[] = [
  [{ kind: "stock" }, 4_294_967_295],
  [{ kind: "stock" }, 3_000_000_000],
  [{ kind: "stock" }, 0],
  [inside(1, 1, 5), 7],
  [inside(1, 1, 5), 7],
  [inside(7, 8, 5), 7],
  [inside(7, 2, 4), 7],
  [inside(7, 2, 6), 7],
  [inside(5, 1, 90), 7],
  [{ kind: "kept" }, 7],
  [{ kind: "withdrawn", from: { kind: "stock" } }, 7],
  [{ kind: "withdrawn", from: { kind: "kept" } }, 7],
  [{ kind: "withdrawn", from: { kind: "compartment", compartment: 1, bundle: 1, due: 3 } }, 7],
];

const PLACEMENTS: readonly PlacementRecord[] = PLACES.map(([place, stockKey], i) => ({
  card: `vega:gap-${String(i).padStart(4, "0")}`,
  fact: "vega",
  stockKey,
  state: {
    place,
    looked: i % 2 === 0,
    since: i,
    askedIn: i % 3 === 0 ? idAt(0, i) : null,
    lastEntry: i % 5 === 0 ? null : idAt(1, i),
  },
}));
const cardsOf = (placements: readonly PlacementRecord[]) => placements.map(({ card }) => card);
const cardsAt = (...at: readonly number[]) => at.map((i) => PLACEMENTS[i]?.card);

export function placementContract(newDatabase: NewDatabase): void {
  let database: StoreDatabase;
  let store: Store;

  const addCards = (placements: readonly PlacementRecord[], first: number) =>
    store.write(async ({ library, boxes }) => {
      await library.addCards(
        placements.map(({ card, fact }, i) => ({
          id: card,
          number: first + i,
          fact,
          subject: "sky",
          angle: "forward",
        })),
      );
      await boxes.addPlacements("box", placements);
    });

  beforeAll(async () => {
    database = await newDatabase();
    store = await database.open();
    await store.write(async ({ library, boxes }) => {
      await library.saveSubject({ id: "sky", name: "The night sky", demo: false, spelling: EXACT_SPELLING });
      await library.saveSubject({ id: "moons", name: "Moons", demo: false, spelling: EXACT_SPELLING });
      await library.addFacts([storedPair("vega", "sky")]);
      await boxes.saveBox(BOX);
    });
    await addCards([...PLACEMENTS].reverse(), 1);
  });
  afterAll(() => database.drop());

  describe("a box", () => {
    it("comes back as it was, and changed when it is saved again", async () => {
      expect(await store.read(({ boxes }) => boxes.box())).toEqual(BOX);
      const changed = { ...BOX, newPerDay: 3, calendar: { ...BOX.calendar, restWeekdays: [] } };
      await store.write(({ boxes }) => boxes.saveBox(changed));
      expect(await store.read(({ boxes }) => boxes.box())).toEqual(changed);
    });

    it("holds each subject once, however often it is put in", async () => {
      await store.write(async ({ boxes }) => {
        for (const subject of ["sky", "moons", "sky"]) await boxes.addSubjectToBox("box", subject);
      });
      expect([...(await store.read(({ boxes }) => boxes.subjectsInBox("box")))].sort()).toEqual(["moons", "sky"]);
    });
  });

  describe("placements", () => {
    it("come back as they were, in every kind of place", async () => {
      for (const placement of PLACEMENTS) {
        expect(await store.read(({ boxes }) => boxes.placement("box", placement.card))).toEqual(placement);
      }
      expect(await store.read(({ boxes }) => boxes.placement("box", "nobody:forward"))).toBeNull();
      const some = await store.read(({ boxes }) => boxes.placements("box", [...cardsAt(3, 9), "nobody"] as string[]));
      expect(some.map(({ card }) => card).sort()).toEqual(cardsAt(3, 9));
    });

    it("stay as they are when the same card is added again", async () => {
      const [first] = PLACEMENTS as [PlacementRecord];
      await store.write(({ boxes }) => boxes.addPlacements("box", [{ ...first, stockKey: 5 }]));
      expect(await store.read(({ boxes }) => boxes.placement("box", first.card))).toEqual(first);
    });

    it("change when they are saved, that card only", async () => {
      const [first] = PLACEMENTS as [PlacementRecord];
      const moved = { ...first, state: { ...first.state, place: inside(2, 1, 8), looked: false, askedIn: idAt(3, 3) } };
      await store.write(({ boxes }) => boxes.savePlacement("box", moved));
      const all: PlacementRecord[] = [];
      await store.read(async ({ boxes }) => {
        for await (const one of boxes.eachPlacement("box")) all.push(one);
      });
      expect(all).toEqual([moved, ...PLACEMENTS.slice(1)]);
      await store.write(({ boxes }) => boxes.savePlacement("box", first));
    });
  });

  describe("placements saved together", () => {
    it("change every one of them and no other", async () => {
      const all = async () => {
        const read = await store.read(({ boxes }) => boxes.placements("box", cardsOf(PLACEMENTS)));
        return [...read].sort((a, b) => (a.card < b.card ? -1 : 1));
      };
      const some = PLACEMENTS.slice(2, 9);
      const moved = some.map((one, i) => ({
        ...one,
        state: { ...one.state, place: inside(1 + (i % 3), 1, 100 + i), looked: !one.state.looked, since: 50 + i },
      }));
      await store.write(({ boxes }) => boxes.savePlacements("box", moved));
      expect(await all()).toEqual([...PLACEMENTS.slice(0, 2), ...moved, ...PLACEMENTS.slice(9)]);
      await store.write(({ boxes }) => boxes.savePlacements("box", some));
      await store.write(({ boxes }) => boxes.savePlacements("box", []));
      expect(await all()).toEqual(PLACEMENTS);
    });
  });

  describe("what is due", () => {
    it("is counted by pile from the highest compartment down, today's and overdue cards", async () => {
      expect(await store.read(({ boxes }) => boxes.duePiles("box", 5))).toEqual([
        { place: "compartment", compartment: 7, bundle: 2, count: 1 },
        { place: "compartment", compartment: 7, bundle: 8, count: 1 },
        { place: "compartment", compartment: 1, bundle: 1, count: 2 },
      ]);
      expect(await store.read(({ boxes }) => boxes.duePiles("box", 3))).toEqual([]);
    });

    it("is listed card by card, withdrawn cards left out", async () => {
      const due = await store.read(({ boxes }) => boxes.dueCards("box", 5));
      expect(due.map(({ card }) => card).sort()).toEqual(cardsAt(3, 4, 5, 6));
      expect(due).toContainEqual({ card: cardsAt(5)[0], fact: "vega", compartment: 7, bundle: 8 });
    });

    it("is counted ahead by compartment and day", async () => {
      const waiting = await store.read(({ boxes }) => boxes.waiting("box"));
      const sorted = [...waiting].sort((a, b) => a.compartment - b.compartment || a.due - b.due);
      expect(sorted).toEqual([
        { compartment: 1, due: 5, count: 2 },
        { compartment: 5, due: 90, count: 1 },
        { compartment: 7, due: 4, count: 1 },
        { compartment: 7, due: 5, count: 1 },
        { compartment: 7, due: 6, count: 1 },
      ]);
    });
  });

  describe("the stock", () => {
    it("comes in its shuffled order, as many as asked for", async () => {
      const stock = async (limit: number) =>
        (await store.read(({ boxes }) => boxes.stock("box", limit))).map(({ card }) => card);
      expect(await stock(9)).toEqual(cardsAt(2, 1, 0));
      expect(await stock(2)).toEqual(cardsAt(2, 1));
      expect(await store.read(({ boxes }) => boxes.countStock("box"))).toBe(3);
    });
  });

  describe("the whole box", () => {
    it("is counted by place, compartment and bundle, every card once", async () => {
      const counts = await store.read(({ boxes }) => boxes.countPlaces("box"));
      const of = (place: string) =>
        counts.filter((part) => part.place === place).reduce((sum, part) => sum + part.count, 0);
      expect(["stock", "compartment", "kept", "withdrawn"].map(of)).toEqual([3, 6, 1, 3]);
      const bundle = counts.filter(({ place, compartment }) => place === "compartment" && compartment === 7);
      expect(bundle.map(({ bundle: b, count }) => [b, count]).sort()).toEqual([
        [2, 2],
        [8, 1],
      ]);
    });

    it("is listed part by part", async () => {
      const listed = async (query: Omit<PlaceQuery, "limit">) =>
        (await store.read(({ boxes }) => boxes.placed("box", { ...query, limit: 50 }))).map(({ card }) => card);
      expect(await listed({ place: "withdrawn" })).toEqual(cardsAt(10, 11, 12));
      expect(await listed({ place: "compartment", compartment: 7 })).toEqual(cardsAt(5, 6, 7));
      expect(await listed({ place: "compartment", compartment: 7, bundle: 2 })).toEqual(cardsAt(6, 7));
      expect(await listed({ place: "stock", after: PLACEMENTS[0]?.card })).toEqual(cardsAt(1, 2));
    });

    it("is read in pages without gaps or repeats where it is long", async () => {
      const many = Array.from({ length: 1_203 }, (_, i) => ({
        ...(PLACEMENTS[9] as PlacementRecord),
        card: `vega:kept-${String(i).padStart(5, "0")}`,
      }));
      await addCards(many, 5_000);
      const seen: string[] = [];
      for (let after: string | undefined; ; after = seen.at(-1)) {
        const query = { place: "kept", after, limit: 200 } as const;
        const page = await store.read(({ boxes }) => boxes.placed("box", query));
        seen.push(...page.map(({ card }) => card));
        if (page.length < 200) break;
      }
      expect(seen).toEqual([...cardsAt(9), ...many.map(({ card }) => card)]);
      const cards = seen.concat("nobody:forward");
      expect(await store.read(({ boxes }) => boxes.placements("box", cards))).toHaveLength(seen.length);
      // As long, they are saved together without gaps.
      const stocked = many.map((one) => ({ ...one, state: { ...one.state, place: { kind: "stock" } as const } }));
      await store.write(({ boxes }) => boxes.savePlacements("box", stocked));
      const kept = await store.read(({ boxes }) => boxes.placed("box", { place: "kept", limit: 200 }));
      expect(cardsOf(kept)).toEqual(cardsAt(9));
    });
  });
}
