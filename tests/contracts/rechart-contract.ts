// A chart that is changed while entries are still on their way, and taken back.
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { changeChart } from "../../src/app/change-chart.ts";
import { rebuild } from "../../src/app/rebuild.ts";
import { recordEntries } from "../../src/app/record.ts";
import { foldLog } from "../../src/core/box/fold-log.ts";
import { FRESH_CARD } from "../../src/core/box/placement.ts";
import type { Chart } from "../../src/core/chart/chart.ts";
import { plainChart, spreadChart } from "../../src/core/chart/make-chart.ts";
import { createEntryId } from "../../src/core/log/entry-id.ts";
import { shortChart } from "../support/any-chart.ts";
import { type Act, anyAct, entriesOf, type Sendable } from "../support/any-log.ts";
import { type BoxScene, setUpScene, storedPlaces, wholeLog } from "../support/box-scene.ts";
import { dump, type NewDatabase, type StoreDatabase } from "../support/store-database.ts";

/** Each run sets a box up in a real database; a few dozen runs are what the time allows. */
const RUNS = 20;

const anyChanges = fc.record({
  chart: shortChart,
  changes: fc.array(fc.option(shortChart), { maxLength: 3 }),
  next: shortChart,
  acts: fc.array(anyAct, { minLength: 1, maxLength: 45 }),
  evenings: fc.integer({ min: 1, max: 4 }),
  /** Of three entries, how many arrive before the change. */
  before: fc.nat(3),
  takenBack: fc.boolean(),
});

let made = 0;

/** A later identity than any in the log. */
const laterId = ({ context }: BoxScene, log: string | null): string =>
  createEntryId(context.now, new Uint8Array(10).fill(++made & 255), log ?? undefined);

const newest = ({ context, box }: BoxScene) => context.store.read(({ boxes }) => boxes.lastEntryId(box));

/** Takes a change of chart back; what became of that. */
async function takeBack(scene: BoxScene, entry: string) {
  const id = laterId(scene, await newest(scene));
  const [receipt] = await recordEntries(scene.context, [
    { id, box: scene.box, at: scene.context.now, kind: "take-back", entry },
  ]);
  return receipt;
}

const chartOf = async ({ context }: BoxScene): Promise<Chart | undefined> =>
  (await context.store.read(({ boxes }) => boxes.box()))?.chart;

/** Introduces a card on the first evening and visits it on the second. */
const HABIT: readonly Act[] = [
  { what: "introduction", card: 0, recalled: true, to: 1, back: 0 },
  { what: "introduction", card: 1, recalled: true, to: 1, back: 0 },
  { what: "next-sitting", card: 0, recalled: true, to: 1, back: 0 },
  { what: "visit", card: 0, recalled: true, to: 1, back: 0 },
];

export function rechartContract(newDatabase: NewDatabase): void {
  let database: StoreDatabase;
  beforeAll(async () => {
    database = await newDatabase();
    await database.open();
  });
  afterAll(() => database.drop());

  const expectReplayed = async (scene: BoxScene): Promise<void> => {
    const replayed = foldLog(await wholeLog(scene));
    const stored = await storedPlaces(scene);
    for (const card of scene.cards) expect(stored.get(card)).toEqual(replayed.get(card) ?? FRESH_CARD);
    expect((await rebuild(scene.context)).differences).toEqual([]);
  };

  describe("a chart changed while entries are on their way", () => {
    it("keeps every card where the replay of the log has it, before and after it is taken back", async () => {
      await fc.assert(
        fc.asyncProperty(anyChanges, async ({ chart, changes, next, acts, evenings, before, takenBack }) => {
          const scene = await setUpScene(database, { chart, changes, stars: 2, evenings });
          const entries = entriesOf(acts, scene);
          const early = entries.filter((_, i) => i % 3 < before);
          await recordEntries(scene.context, early);
          const { entry } = await changeChart(scene.context, { chart: next });
          await recordEntries(scene.context, entries.filter((one) => !early.includes(one)).reverse());
          await expectReplayed(scene);
          expect(await chartOf(scene)).toEqual(next);
          if (takenBack && entry !== null) {
            // What was late belongs before the change and does not stand in the way.
            expect(await takeBack(scene, entry)).toMatchObject({ status: "saved" });
            await expectReplayed(scene);
          }
          const counts = await scene.context.store.read(({ boxes }) => boxes.countPlaces(scene.box));
          expect(counts.reduce((sum, part) => sum + part.count, 0)).toBe(scene.cards.length);
          await scene.context.store.close();
        }),
        { numRuns: RUNS },
      );
    });

    it("goes on counting answers of a sitting that was begun before, by the chart of that sitting", async () => {
      const scene = await setUpScene(database, { chart: plainChart(7), stars: 1, evenings: 2 });
      const entries = entriesOf(HABIT, scene);
      const visit = entries.at(-1) as Sendable;
      await recordEntries(scene.context, entries.slice(0, -1));
      await changeChart(scene.context, { chart: spreadChart([1, 9]) });
      const card = "card" in visit ? visit.card : "";
      // Due on day 6 of the box by now, the card would be refused on day 2 by its cached place.
      expect((await storedPlaces(scene)).get(card)?.place).toMatchObject({ compartment: 1, due: 6 });
      const late = { ...visit, id: laterId(scene, await newest(scene)) };
      expect(await recordEntries(scene.context, [late])).toMatchObject([{ status: "saved" }]);
      // Compartment 2 of the plain chart has a period of 2 days, nearer to 1 than to 9.
      expect((await storedPlaces(scene)).get(card)?.place).toMatchObject({ compartment: 1 });
      await expectReplayed(scene);
      await scene.context.store.close();
    });
  });

  describe("a change of chart that is taken back", () => {
    it("leaves box, places and sittings exactly as they had been", async () => {
      await fc.assert(
        fc.asyncProperty(anyChanges, async ({ chart, changes, next, acts, evenings }) => {
          const scene = await setUpScene(database, { chart, changes, stars: 2, evenings });
          await recordEntries(scene.context, entriesOf(acts, scene));
          const { log: _log, ...before } = await dump(database);
          const { entry } = await changeChart(scene.context, { chart: next });
          if (entry !== null) {
            expect(await takeBack(scene, entry)).toMatchObject({ status: "saved" });
            // Only once.
            expect(await takeBack(scene, entry)).toMatchObject({ status: "refused" });
          }
          const { log: _same, ...after } = await dump(database);
          expect(after).toEqual(before);
          await scene.context.store.close();
        }),
        { numRuns: RUNS },
      );
    });
  });
}
