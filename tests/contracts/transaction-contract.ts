// Opening, foreign keys, transactions.

import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Session, Store } from "../../src/app/ports.ts";
import { LEVELLED_CHART } from "../../src/core/chart/make-chart.ts";
import { EXACT_SPELLING } from "../../src/core/facts/fact.ts";
import { idAt } from "../support/any-log.ts";
import { storedPair } from "../support/night-sky.ts";
import { dump, type NewDatabase, type StoreDatabase } from "../support/store-database.ts";

const SKY = { id: "sky", name: "The night sky", demo: false, spelling: EXACT_SPELLING };
const BOX = {
  id: "box",
  chart: LEVELLED_CHART,
  calendar: {
    timeZone: "Europe/Lisbon",
    rollOverHour: 4,
    restWeekdays: [],
    restDates: [],
    policy: "chart-waits",
    anchor: { date: "2026-03-14", day: 1 },
  },
  newPerDay: 10,
  seed: "seed",
} as const;
const LOOK = {
  id: idAt(0, 1),
  box: "box",
  at: 0,
  kind: "look",
  card: "vega:forward",
  day: 1,
  sitting: idAt(0, 0),
} as const;
const PLACEMENT = {
  card: "vega:forward",
  fact: "vega",
  stockKey: 1,
  state: { place: { kind: "stock" }, looked: false, since: 0, askedIn: null, lastEntry: null },
} as const;
const CARD = { id: "vega:forward", number: 1, fact: "vega", subject: "sky", angle: "forward" } as const;

/** How long one write is held open while another is tried. */
const PAUSE_MS = 30;
const pause = () => new Promise((resolve) => setTimeout(resolve, PAUSE_MS));

export function transactionContract(newDatabase: NewDatabase): void {
  let database: StoreDatabase;
  let store: Store;

  beforeEach(async () => {
    database = await newDatabase();
    store = await database.open();
  });
  afterEach(async () => {
    await database.drop();
  });

  describe("opening", () => {
    it("brings the database up to date once; opened again, nothing is done and everything is there", async () => {
      await store.write(({ library }) => library.saveSubject(SKY));
      const steps = await database.run("select name from kysely_migration");
      const before = await dump(database);
      const again = await database.open();
      expect(await database.run("select name from kysely_migration")).toEqual(steps);
      expect(await dump(database)).toEqual(before);
      expect(await again.read(({ library }) => library.subject("sky"))).toEqual(SKY);
      expect(steps.length).toBeGreaterThan(0);
    });
  });

  describe("a reference to something that is not there", () => {
    const wrongs: readonly [what: string, work: (session: Session) => Promise<unknown>][] = [
      ["a fact of no subject", ({ library }) => library.addFacts([storedPair("vega", "nowhere")])],
      ["a fact with a lost picture", ({ library }) => library.addFacts([storedPair("vega", "sky", { picture: "0f" })])],
      ["a card of no fact", ({ library }) => library.addCards([CARD])],
      ["an entry of no box", ({ boxes }) => boxes.appendEntries([LOOK])],
      ["a placement of no card", ({ boxes }) => boxes.addPlacements("box", [PLACEMENT])],
      ["a subject in no box", ({ boxes }) => boxes.addSubjectToBox("box", "sky")],
    ];

    it.each(wrongs)("is refused, and the rest of the write with it: %s", async (_what, work) => {
      const before = await dump(database);
      const attempt = store.write(async (session) => {
        await session.library.saveSubject(SKY);
        await work(session);
      });
      await expect(attempt).rejects.toThrow(/foreign key/i);
      expect(await dump(database)).toEqual(before);
    });

    it("is refused too when a box is there and the card is not", async () => {
      await store.write(({ boxes }) => boxes.saveBox(BOX));
      await expect(store.write(({ boxes }) => boxes.appendEntries([LOOK]))).rejects.toThrow(/foreign key/i);
      await expect(store.write(({ boxes }) => boxes.addPlacements("box", [PLACEMENT]))).rejects.toThrow(/foreign key/i);
    });
  });

  describe("a write", () => {
    it("that throws at its end leaves nothing behind, in any table, and passes the reason on", async () => {
      const before = await dump(database);
      const attempt = store.write(async ({ library, boxes }) => {
        await library.saveSubject(SKY);
        await library.addFacts([storedPair("vega", "sky")]);
        await library.addCards([CARD]);
        await boxes.saveBox(BOX);
        await boxes.addPlacements("box", [PLACEMENT]);
        await boxes.appendEntries([LOOK]);
        throw new Error("the lamp went out");
      });
      await expect(attempt).rejects.toThrow("the lamp went out");
      expect(await dump(database)).toEqual(before);
    });

    it("sees what it has written before others do", async () => {
      await store.write(async ({ library }) => {
        await library.saveSubject(SKY);
        expect(await library.subject("sky")).toEqual(SKY);
        expect(await database.run("select id from subject")).toEqual([]);
      });
      expect(await database.run("select id from subject")).toEqual([{ id: "sky" }]);
    });

    it("gives back what its work gives back", async () => {
      expect(await store.write(async () => 42)).toBe(42);
      expect(await store.read(async () => "seen")).toBe("seen");
    });

    it("that fails does not stop the ones after it", async () => {
      await expect(store.write(({ library }) => library.addCards([CARD]))).rejects.toThrow();
      await store.write(({ library }) => library.saveSubject(SKY));
      expect(await store.read(({ library }) => library.subjects())).toHaveLength(1);
    });
  });

  describe("writes begun at the same moment", () => {
    it("come one after another: none of ten counts upwards is lost", async () => {
      await store.write(({ library }) => library.saveSubject({ ...SKY, name: "0" }));
      const countUp = () =>
        store.write(async ({ library }) => {
          const name = (await library.subject("sky"))?.name ?? "";
          await library.saveSubject({ ...SKY, name: `${Number(name) + 1}` });
        });
      await Promise.all(Array.from({ length: 10 }, countUp));
      expect((await store.read(({ library }) => library.subject("sky")))?.name).toBe("10");
    });

    it("see what the last one wrote, whichever program it came from", async () => {
      const other = await database.open();
      await store.write(({ library }) => library.saveSubject({ ...SKY, name: "from here" }));
      await other.write(async ({ library }) => {
        expect((await library.subject("sky"))?.name).toBe("from here");
        await library.saveSubject({ ...SKY, name: "from there" });
      });
      expect((await store.write(({ library }) => library.subject("sky")))?.name).toBe("from there");
    });
  });

  describe("a read", () => {
    it("sees one moment: what another program writes meanwhile comes into view afterwards", async () => {
      const other = await database.open();
      await store.read(async ({ library }) => {
        expect(await library.subjects()).toEqual([]);
        await other.write((session) => session.library.saveSubject(SKY));
        await pause();
        expect(await library.subjects()).toEqual([]);
      });
      expect(await store.read(({ library }) => library.subjects())).toHaveLength(1);
    });
  });
}
