// Entries that arrive twice, late, early and in any order; and the cache that is worked out from them.
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { PlaceCount } from "../../src/app/ports.ts";
import { rebuild } from "../../src/app/rebuild.ts";
import { recordEntries } from "../../src/app/record.ts";
import { foldLog } from "../../src/core/box/fold-log.ts";
import { type CardState, FRESH_CARD } from "../../src/core/box/placement.ts";
import { plainChart } from "../../src/core/chart/make-chart.ts";
import { batches } from "../../src/core/lists.ts";
import { createEntryId, entryTime } from "../../src/core/log/entry-id.ts";
import { shortChart } from "../support/any-chart.ts";
import { type Act, anyAct, entriesOf, type Sendable } from "../support/any-log.ts";
import { type BoxScene, setUpScene, storedPlaces, wholeLog } from "../support/box-scene.ts";
import { dump, type NewDatabase, type StoreDatabase } from "../support/store-database.ts";

/** Each run sets a box up in a real database; a few dozen runs are what the time allows. */
const RUNS = 20;

const anyDelivery = fc.record({
  chart: shortChart,
  changes: fc.array(fc.option(shortChart), { maxLength: 4 }),
  acts: fc.array(anyAct, { minLength: 1, maxLength: 45 }),
  evenings: fc.integer({ min: 1, max: 5 }),
  order: fc.infiniteStream(fc.nat(999)),
  batch: fc.integer({ min: 1, max: 12 }),
  twice: fc.boolean(),
});

/** What a card's state is worth: everything except which entry was read last, which counts for nothing. */
const worth = ({ lastEntry: _, ...state }: CardState) => state;

function shuffled<T>(items: readonly T[], order: Iterator<number>): readonly T[] {
  return items
    .map((item) => ({ item, at: order.next().value as number }))
    .sort((a, b) => a.at - b.at)
    .map(({ item }) => item);
}

/** Sends entries in batches; those that were refused. */
async function send({ context }: BoxScene, entries: readonly Sendable[], size: number): Promise<readonly Sendable[]> {
  const refused = new Set<string>();
  for (const batch of batches(entries, size)) {
    for (const receipt of await recordEntries(context, batch)) {
      if (receipt.status === "refused") refused.add(receipt.id);
      else refused.delete(receipt.id);
    }
  }
  return entries.filter((entry) => refused.has(entry.id));
}

/** Sends again what was refused, as long as that changes anything. */
async function sendUntilSettled(scene: BoxScene, entries: readonly Sendable[], size: number): Promise<void> {
  let left = entries;
  for (;;) {
    const refused = await send(scene, left, size);
    if (refused.length === left.length) return;
    left = refused;
  }
}

const countAll = (counts: readonly PlaceCount[]): number => counts.reduce((sum, part) => sum + part.count, 0);

/** Introduces both cards of a star on the first evening and visits them on the second. */
const HABIT: readonly Act[] = [
  { what: "introduction", card: 0, recalled: true, to: 1, back: 0 },
  { what: "introduction", card: 1, recalled: true, to: 1, back: 0 },
  { what: "next-sitting", card: 0, recalled: true, to: 1, back: 0 },
  { what: "visit", card: 0, recalled: true, to: 1, back: 0 },
  { what: "visit", card: 1, recalled: false, to: 1, back: 0 },
];

/** Another identity of the same moment; the end stays, since it tells the worlds of a database apart. */
const beside = (id: string, digit: string): string => id.replace(/.(.{8})$/, `${digit}$1`);

export function deliveryContract(newDatabase: NewDatabase): void {
  let database: StoreDatabase;
  beforeAll(async () => {
    database = await newDatabase();
    await database.open();
  });
  afterAll(() => database.drop());

  describe("entries in any order of delivery", () => {
    it("leave the places, the sittings and the box exactly as a replay of the log has them", async () => {
      await fc.assert(
        fc.asyncProperty(anyDelivery, async ({ chart, changes, acts, evenings, order, batch, twice }) => {
          const scene = await setUpScene(database, { chart, changes, stars: 2, evenings });
          const entries = entriesOf(acts, scene);
          await send(scene, shuffled([...entries, ...(twice ? entries : [])], order), batch);
          expect((await rebuild(scene.context)).differences).toEqual([]);
          const replayed = foldLog(await wholeLog(scene));
          const stored = await storedPlaces(scene);
          for (const card of scene.cards) expect(stored.get(card)).toEqual(replayed.get(card) ?? FRESH_CARD);
          await scene.context.store.close();
        }),
        { numRuns: RUNS },
      );
    });

    it("come to one placement, that of the whole log in order, once those refused for coming early are sent again", async () => {
      await fc.assert(
        fc.asyncProperty(anyDelivery, async ({ chart, changes, acts, evenings, order, batch }) => {
          const scene = await setUpScene(database, { chart, changes, stars: 2, evenings });
          const entries = entriesOf(acts, scene);
          const beforehand = await wholeLog(scene);
          await sendUntilSettled(scene, shuffled(entries, order), batch);
          const inOrder = foldLog([...beforehand, ...entries]);
          const stored = await storedPlaces(scene);
          for (const card of scene.cards) {
            expect(worth(stored.get(card) ?? FRESH_CARD)).toEqual(worth(inOrder.get(card) ?? FRESH_CARD));
          }
          expect((await rebuild(scene.context)).differences).toEqual([]);
          await scene.context.store.close();
        }),
        { numRuns: RUNS },
      );
    });

    it("never lose a card: stock, compartments, kept and withdrawn always hold them all", async () => {
      await fc.assert(
        fc.asyncProperty(anyDelivery, async ({ chart, changes, acts, evenings, order }) => {
          const scene = await setUpScene(database, { chart, changes, stars: 2, evenings });
          for (const entry of shuffled(entriesOf(acts, scene), order)) {
            await send(scene, [entry], 1);
            const counts = await scene.context.store.read(({ boxes }) => boxes.countPlaces(scene.box));
            expect(countAll(counts)).toBe(scene.cards.length);
          }
          await scene.context.store.close();
        }),
        { numRuns: 6 },
      );
    });

    it("are kept as they were sent, each once, and stay so", async () => {
      await fc.assert(
        fc.asyncProperty(anyDelivery, async ({ chart, changes, acts, evenings, order, batch }) => {
          const scene = await setUpScene(database, { chart, changes, stars: 2, evenings });
          const entries = entriesOf(acts, scene);
          const refused = new Set(await send(scene, shuffled(entries, order), batch));
          const own = (await wholeLog(scene)).filter(
            ({ kind }) => !["set-up", "settings", "chart", "begin"].includes(kind),
          );
          expect(own).toEqual(entries.filter((entry) => !refused.has(entry)));
          await scene.context.store.close();
        }),
        { numRuns: RUNS },
      );
    });
  });

  describe("entries sent again", () => {
    it("are answered as known and change nothing at all", async () => {
      const scene = await setUpScene(database, { chart: plainChart(7), stars: 1, evenings: 2 });
      const entries = entriesOf(HABIT, scene);
      const first = await recordEntries(scene.context, entries);
      expect(first.map(({ status }) => status)).toEqual(["saved", "saved", "saved", "saved"]);
      const before = await dump(database);
      const again = await recordEntries(scene.context, [...entries, ...entries]);
      expect(again.map(({ status }) => status)).toEqual(Array(8).fill("known"));
      expect(await dump(database)).toEqual(before);
      await scene.context.store.close();
    });
  });

  describe("an entry that cannot be right", () => {
    it("is refused with a reason, and the others of its batch are saved", async () => {
      const scene = await setUpScene(database, { chart: plainChart(7), stars: 1, evenings: 2 });
      const [one, other, visit] = entriesOf(HABIT, scene) as [Sendable, Sendable, Sendable];
      const wrong: readonly Sendable[] = [
        { ...one, id: beside(one.id, "f"), box: "another box" },
        { ...visit, id: beside(visit.id, "e"), day: 77 } as Sendable,
        { ...visit, id: beside(visit.id, "d"), card: "no card" } as Sendable,
        { id: beside(visit.id, "c"), box: scene.box, at: 0, kind: "take-back", entry: "nothing" },
        { id: beside(visit.id, "b"), box: scene.box, at: 0, kind: "finish", sitting: "none" },
      ];
      const receipts = await recordEntries(scene.context, [one, ...wrong, other]);
      expect(receipts.map(({ status }) => status)).toEqual([
        "saved",
        "kept-back",
        ...wrong.slice(1).map(() => "refused"),
        "saved",
      ]);
      for (const { status, reason } of receipts) expect(reason === null).toBe(status === "saved");
      await scene.context.store.close();
    });

    it("is a taking back of what was taken back already, or of what is not about a card", async () => {
      const scene = await setUpScene(database, { chart: plainChart(7), stars: 1, evenings: 2 });
      const [one] = entriesOf(HABIT, scene) as [Sendable];
      const back = (n: number, entry: string): Sendable => ({
        id: beside(one.id, `${n}`),
        box: scene.box,
        at: 0,
        kind: "take-back",
        entry,
      });
      const first = back(5, one.id);
      const sent = [one, first, back(6, one.id), back(7, scene.sittings[0]?.id ?? "")];
      const receipts = await recordEntries(scene.context, sent);
      expect(receipts.map(({ status }) => status)).toEqual(["saved", "saved", "refused", "refused"]);
      expect((await wholeLog(scene)).filter(({ kind }) => kind === "take-back")).toEqual([first]);
      await scene.context.store.close();
    });

    it("is kept back from a device whose clock is more than a day ahead, unless the log itself is ahead", async () => {
      const scene = await setUpScene(database, { chart: plainChart(7), stars: 1, evenings: 2 });
      const entries = entriesOf(HABIT, scene);
      scene.context.now -= 7 * 86_400_000;
      const receipts = await recordEntries(scene.context, entries);
      expect(receipts.map(({ status }) => status)).toEqual(Array(4).fill("saved"));
      const last = entries.at(-1)?.id ?? "";
      const early = { id: createEntryId(entryTime(last) + 2 * 86_400_000, new Uint8Array(10)), box: scene.box, at: 0 };
      const card = scene.cards[0] ?? "";
      const [receipt] = await recordEntries(scene.context, [
        { ...early, kind: "withdraw", card, day: 1, reason: "hand" },
      ]);
      expect(receipt?.status).toBe("kept-back");
      await scene.context.store.close();
    });
  });

  describe("rebuilding", () => {
    const damages: readonly [
      what: string,
      statement: (scene: BoxScene) => string,
      reported: (scene: BoxScene) => object,
    ][] = [
      [
        "a card in the wrong place",
        ({ cards }) => `update placement set place = 'kept', compartment = 0 where card_id = '${cards[0]}'`,
        ({ cards }) => ({ what: "card", id: cards[0], cached: { state: { place: { kind: "kept" } } } }),
      ],
      [
        "a card with a wrong due day",
        ({ cards }) => `update placement set due = due + 1 where card_id = '${cards[1]}'`,
        ({ cards }) => ({ what: "card", id: cards[1] }),
      ],
      [
        "a card that has no place",
        ({ cards }) => `delete from placement where card_id = '${cards[0]}'`,
        ({ cards }) => ({ what: "card", id: cards[0], cached: null }),
      ],
      [
        "a sitting with wrong counts",
        ({ sittings }) => `update sitting set asked = asked + 1 where id = '${sittings[1]?.id}'`,
        ({ sittings }) => ({ what: "sitting", id: sittings[1]?.id }),
      ],
      [
        "a sitting on a wrong day",
        ({ sittings }) => `update sitting set day = 99, date = '2020-01-01' where id = '${sittings[0]?.id}'`,
        ({ sittings }) => ({ what: "sitting", id: sittings[0]?.id, replayed: { day: 1 } }),
      ],
      [
        "a box with wrong settings",
        ({ box }) => `update box set new_per_day = 77 where id = '${box}'`,
        ({ box }) => ({ what: "box", id: box, cached: { newPerDay: 77 }, replayed: { newPerDay: 10 } }),
      ],
    ];

    it.each(damages)("repairs %s, reports exactly that, and finds nothing more", async (_what, statement, reported) => {
      const scene = await setUpScene(database, { chart: plainChart(7), stars: 2, evenings: 2 });
      await recordEntries(scene.context, entriesOf(HABIT, scene));
      const before = await dump(database);
      await database.run(statement(scene));
      expect(await dump(database)).not.toEqual(before);
      const report = await rebuild(scene.context);
      expect(report.differences).toEqual([expect.objectContaining({ id: expect.any(String) })]);
      expect(report.differences[0]).toMatchObject(reported(scene));
      expect(report).toMatchObject({ entries: 2 + 2 + 4, cards: 4, sittings: 2 });
      expect((await rebuild(scene.context)).differences).toEqual([]);
      expect(await dump(database)).toEqual(before);
      await scene.context.store.close();
    });
  });
}
