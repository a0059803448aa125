// The outcome log and the sittings worked out from it.

import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { SittingRecord, Store } from "../../src/app/ports.ts";
import { LEVELLED_CHART, plainChart } from "../../src/core/chart/make-chart.ts";
import { EXACT_SPELLING } from "../../src/core/facts/fact.ts";
import type { LogEntry, OutcomeEntry } from "../../src/core/log/entry.ts";
import { FIRST_EVENING, idAt } from "../support/any-log.ts";
import { storedPair } from "../support/night-sky.ts";
import type { NewDatabase, StoreDatabase } from "../support/store-database.ts";

const CALENDAR = {
  timeZone: "America/St_Johns",
  rollOverHour: 3,
  restWeekdays: [6, 7],
  restDates: [{ from: "2026-12-24", to: "2027-01-01" }],
  policy: "chart-goes-on",
  anchor: { date: "2026-03-14", day: 1 },
} as const;
const [FORWARD, REVERSE] = ["vega:forward", "vega:reverse"];
const SITTING = idAt(0, 1);
const base = (n: number) => ({ id: idAt(0, n), box: "box", at: FIRST_EVENING + n });

const outcome = (n: number, change: Partial<OutcomeEntry> = {}): OutcomeEntry => ({
  ...base(n),
  kind: "outcome",
  card: FORWARD,
  day: 1,
  sitting: SITTING,
  pass: "visit",
  answer: "recalled",
  compartment: 3,
  bundle: 2,
  seconds: 4.25,
  ...change,
});

/** One entry of every kind, and of every kind of place that a card can be moved to. */
const ENTRIES: readonly LogEntry[] = [
  { ...base(0), kind: "set-up", chart: LEVELLED_CHART, calendar: CALENDAR, newPerDay: 10, seed: '"seed"' },
  { ...base(1), kind: "begin", date: "2026-03-14", day: 1, newCards: 7, fresh: ["vega:forward"] },
  { ...base(2), kind: "look", card: FORWARD, day: 1, sitting: SITTING },
  outcome(3, { pass: "introduction", answer: "missed", compartment: 0, bundle: 0, seconds: null }),
  outcome(4, { pass: "introduction", answer: "recalled", compartment: 0, bundle: 0, seconds: 0 }),
  outcome(5),
  outcome(6, { card: REVERSE, answer: "missed", seconds: 86_399.5 }),
  outcome(7, { card: REVERSE, pass: "second", seconds: 1 }),
  { ...base(8), kind: "take-back", entry: idAt(0, 5) },
  { ...base(9), kind: "move", card: FORWARD, day: 1, to: 4 },
  { ...base(10), kind: "move", card: FORWARD, day: 1, to: "kept" },
  { ...base(11), kind: "move", card: FORWARD, day: 1, to: "stock" },
  { ...base(12), kind: "withdraw", card: FORWARD, day: 1, reason: "angle" },
  { ...base(13), kind: "bring-back", card: FORWARD, day: 1 },
  { ...base(14), kind: "finish", sitting: SITTING },
  { ...base(15), kind: "settings", calendar: { ...CALENDAR, policy: "chart-waits" }, newPerDay: 0 },
  { ...base(16), kind: "chart", chart: plainChart(5), day: 2 },
];
const ofSitting = ENTRIES.filter((entry) => "sitting" in entry || entry.id === SITTING || entry.kind === "take-back");

export function logContract(newDatabase: NewDatabase): void {
  let database: StoreDatabase;
  let store: Store;

  beforeAll(async () => {
    database = await newDatabase();
    store = await database.open();
    await store.write(async ({ library, boxes }) => {
      await library.saveSubject({ id: "sky", name: "The night sky", demo: false, spelling: EXACT_SPELLING });
      await library.addFacts([storedPair("vega", "sky")]);
      await library.addCards([
        { id: "vega:forward", number: 1, fact: "vega", subject: "sky", angle: "forward" },
        { id: "vega:reverse", number: 2, fact: "vega", subject: "sky", angle: "reverse" },
      ]);
      await boxes.saveBox({ id: "box", chart: LEVELLED_CHART, calendar: CALENDAR, newPerDay: 10, seed: "s" });
      await boxes.saveBox({ id: "other", chart: LEVELLED_CHART, calendar: CALENDAR, newPerDay: 1, seed: "t" });
      // Written out of order, as entries of several devices arrive.
      await boxes.appendEntries([...ENTRIES].reverse());
    });
  });
  afterAll(() => database.drop());

  describe("the log", () => {
    it("gives back entries of every kind as they were", async () => {
      for (const entry of ENTRIES) {
        expect(await store.read(({ boxes }) => boxes.entry(entry.id))).toEqual(entry);
      }
      expect(await store.read(({ boxes }) => boxes.entry(idAt(9, 9)))).toBeNull();
    });

    it("is read in the order of its identities, whatever order it was written in", async () => {
      const read: LogEntry[] = [];
      await store.read(async ({ boxes }) => {
        for await (const entry of boxes.eachEntry("box")) read.push(entry);
        expect(await boxes.countEntries("box")).toBe(ENTRIES.length);
        expect(await boxes.lastEntryId("box")).toBe(ENTRIES.at(-1)?.id);
      });
      expect(read).toEqual(ENTRIES);
    });

    it("is empty for a box in which nothing has happened", async () => {
      await store.read(async ({ boxes }) => {
        expect(await boxes.countEntries("other")).toBe(0);
        expect(await boxes.lastEntryId("other")).toBeNull();
        expect(await boxes.recentVisits("other", 10)).toEqual([]);
      });
    });

    it("takes no second entry with an identity that it has; the first stays as it was", async () => {
      const again = { ...(ENTRIES[5] as OutcomeEntry), answer: "missed" as const };
      await expect(store.write(({ boxes }) => boxes.appendEntries([again]))).rejects.toThrow(/unique/i);
      const twice = [outcome(50), outcome(50)];
      await expect(store.write(({ boxes }) => boxes.appendEntries(twice))).rejects.toThrow(/unique/i);
      await store.read(async ({ boxes }) => {
        expect(await boxes.entry(again.id)).toEqual(ENTRIES[5]);
        expect(await boxes.countEntries("box")).toBe(ENTRIES.length);
      });
    });

    it("is found by card, in order, with what was taken back", async () => {
      const { entries, takenBack } = await store.read(({ boxes }) => boxes.entriesOfCards("box", ["vega:forward"]));
      expect(entries).toEqual(ENTRIES.filter((entry) => "card" in entry && entry.card === FORWARD));
      expect(takenBack).toEqual(new Set([idAt(0, 5)]));
      const both = await store.read(({ boxes }) => boxes.entriesOfCards("box", ["vega:reverse", "vega:forward"]));
      expect(both.entries).toHaveLength(ENTRIES.filter((entry) => "card" in entry).length);
      expect((await store.read(({ boxes }) => boxes.entriesOfCards("other", ["vega:forward"]))).entries).toEqual([]);
    });

    it("is found by sitting, its begin and its take-backs included", async () => {
      expect(await store.read(({ boxes }) => boxes.entriesOfSitting(SITTING))).toEqual(ofSitting);
    });

    it("gives the events of a sitting without what was taken back", async () => {
      const events = await store.read(({ boxes }) => boxes.eventsOfSitting(SITTING));
      expect(events.map(({ id }) => id)).toEqual([2, 3, 4, 6, 7].map((n) => idAt(0, n)));
    });

    it("is found by kind and by what was taken back", async () => {
      await store.read(async ({ boxes }) => {
        const kinds = ["settings", "set-up"] as const;
        expect((await boxes.entriesOfKind("box", kinds)).map(({ kind }) => kind)).toEqual(["set-up", "settings"]);
        expect(await boxes.takenBack([idAt(0, 5), idAt(0, 6)])).toEqual(new Set([idAt(0, 5)]));
        expect(await boxes.takenBack([])).toEqual(new Set());
      });
    });

    it("counts the newest visits by sitting, compartment and answer, those taken back left out", async () => {
      const counts = (limit: number) => store.read(({ boxes }) => boxes.recentVisits("box", limit));
      // Entry 6 is a miss; entry 5 before it, a recall, was taken back.
      expect(await counts(1)).toEqual([{ sitting: SITTING, compartment: 3, recalled: 0, missed: 1 }]);
      expect(await counts(10)).toEqual([{ sitting: SITTING, compartment: 3, recalled: 0, missed: 1 }]);
    });

    it("gives measured seconds by what was asked: no second pass, nothing unmeasured or taken back", async () => {
      expect(await store.read(({ boxes }) => boxes.recentSeconds("box", 10))).toEqual([
        { sort: "missed", seconds: 86_399.5 },
        { sort: "fresh", seconds: 0 },
      ]);
      expect(await store.read(({ boxes }) => boxes.recentSeconds("box", 1))).toEqual([]);
    });
  });

  describe("what came after an entry", () => {
    const later = (n: number, change: Partial<OutcomeEntry> = {}) => outcome(n, { box: "third", ...change });
    const back = (n: number, target: number): LogEntry => ({
      ...base(n),
      box: "third",
      kind: "take-back",
      entry: idAt(0, target),
    });
    const move = (n: number): LogEntry => ({ ...base(n), box: "third", kind: "move", card: FORWARD, day: 1, to: 4 });
    const change = (n: number): LogEntry => ({ ...base(n), box: "third", kind: "chart", chart: plainChart(5), day: 2 });
    const since = (n: number) =>
      store.read(async ({ boxes }) => ({
        chart: await boxes.chartChangedSince("third", idAt(0, n)),
        cards: await boxes.cardsTouchedSince("third", idAt(0, n)),
      }));
    const append = (...entries: LogEntry[]) => store.write(({ boxes }) => boxes.appendEntries(entries));

    beforeAll(() =>
      store.write(({ boxes }) =>
        boxes.saveBox({ id: "third", chart: LEVELLED_CHART, calendar: CALENDAR, newPerDay: 1, seed: "u" }),
      ),
    );

    it("is a change of chart, unless it was taken back", async () => {
      await append(change(102), change(104), back(106, 104));
      expect(await since(101)).toEqual({ chart: true, cards: false });
      expect(await since(102)).toEqual({ chart: false, cards: false });
      expect(await since(103)).toEqual({ chart: false, cards: false });
    });

    it("is something that happened to a card, unless it was taken back or belongs to a sitting begun before", async () => {
      await append(later(110, { sitting: idAt(0, 101) }), later(111, { sitting: idAt(0, 109) }), back(112, 111));
      expect(await since(101)).toMatchObject({ cards: false });
      expect(await since(100)).toMatchObject({ cards: true });
      await append(move(113));
      expect(await since(112)).toMatchObject({ cards: true });
      expect(await since(113)).toMatchObject({ cards: false });
    });

    it("is an answer of a sitting begun before too, where those that do not count are named", async () => {
      await append(later(115, { sitting: idAt(0, 101) }));
      const apartFrom = (...sittings: readonly number[]) =>
        store.read(({ boxes }) =>
          boxes.cardsTouchedSince(
            "third",
            idAt(0, 114),
            sittings.map((n) => idAt(0, n)),
          ),
        );
      expect(await since(114)).toMatchObject({ cards: false });
      expect(await apartFrom(109)).toBe(true);
      expect(await apartFrom(109, 101)).toBe(false);
    });

    it("is nothing in another box", async () => {
      await store.read(async ({ boxes }) => {
        expect(await boxes.chartChangedSince("other", idAt(0, 0))).toBe(false);
        expect(await boxes.cardsTouchedSince("other", idAt(0, 0))).toBe(false);
      });
    });
  });

  describe("a log longer than is fetched at once", () => {
    it("is walked through without gaps or repeats", async () => {
      const many = Array.from({ length: 1_203 }, (_, i) => ({ ...outcome(i, { box: "other" }), id: idAt(2, i) }));
      await store.write(({ boxes }) => boxes.appendEntries(many));
      const read: string[] = [];
      await store.read(async ({ boxes }) => {
        for await (const { id } of boxes.eachEntry("other")) read.push(id);
        const ids = many.map(({ id }) => id);
        expect(await boxes.takenBack([...ids, idAt(0, 5)])).toEqual(new Set([idAt(0, 5)]));
      });
      expect(read).toEqual(many.map(({ id }) => id));
    });
  });

  describe("sittings", () => {
    const sat = (n: number, change: Partial<SittingRecord>): SittingRecord => ({
      id: idAt(n, 0),
      date: `2026-03-${14 + n}`,
      day: n + 1,
      newCards: 10,
      fresh: ["vega:forward", "vega:reverse"],
      finished: true,
      asked: 3,
      touched: 2,
      ...change,
    });
    const all = [
      sat(0, {}),
      sat(1, { asked: 0, touched: 1 }),
      sat(2, { finished: false, asked: 0, touched: 0 }),
      { ...sat(3, { asked: 1, touched: 0 }), date: "2026-03-15" },
    ];
    beforeAll(() =>
      store.write(async ({ boxes }) => {
        for (const one of [...all].reverse()) await boxes.saveSitting("box", one);
      }),
    );

    it("come back as they were, in the order in which they were begun", async () => {
      expect(await store.read(({ boxes }) => boxes.sittings("box"))).toEqual(all);
      expect(await store.read(({ boxes }) => boxes.sitting(idAt(1, 0)))).toEqual(all[1]);
      expect(await store.read(({ boxes }) => boxes.sitting(idAt(8, 0)))).toBeNull();
      expect(await store.read(({ boxes }) => boxes.sittings("other"))).toEqual([]);
    });

    it("are found between dates, both included", async () => {
      const between = await store.read(({ boxes }) => boxes.sittingsBetween("box", "2026-03-15", "2026-03-16"));
      expect(between).toEqual([all[1], all[2], all[3]]);
    });

    it("have a last one in which anything happened: the latest date, then the latest begun", async () => {
      await store.read(async ({ boxes }) => {
        expect(await boxes.lastSitting("box", "2026-03-31")).toEqual(all[3]);
        expect(await boxes.lastSitting("box", "2026-03-14")).toEqual(all[0]);
        expect(await boxes.lastSitting("box", "2026-03-13")).toBeNull();
      });
    });

    it("are changed by being saved again", async () => {
      const changed = { ...sat(2, { asked: 5, touched: 6, finished: true }), newCards: 11, day: 4, fresh: [] };
      await store.write(({ boxes }) => boxes.saveSitting("box", changed));
      expect(await store.read(({ boxes }) => boxes.sitting(changed.id))).toEqual(changed);
    });
  });
}
