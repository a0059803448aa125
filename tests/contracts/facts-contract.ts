// Facts over their life: imported, reworded, put away and brought back, with nothing of their history lost;
// and a sitting that is cut off and resumed.
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { cardHistory } from "../../src/app/box-view.ts";
import { applyBulk } from "../../src/app/bulk-edit.ts";
import { undoEdit } from "../../src/app/edits.ts";
import { addFact, addSubject, deleteFact, editFact, removeSubject, restoreFact } from "../../src/app/facts.ts";
import { type FactImport, type ImportedRow, saveImport } from "../../src/app/import-facts.ts";
import { rebuild } from "../../src/app/rebuild.ts";
import { recordEntries } from "../../src/app/record.ts";
import { setUpBox } from "../../src/app/set-up.ts";
import { beginSitting } from "../../src/app/sit.ts";
import { plainChart } from "../../src/core/chart/make-chart.ts";
import type { Answer } from "../../src/core/log/entry.ts";
import { nextStep, replaySitting } from "../../src/core/sitting/sitting.ts";
import { DAY_MS, FIRST_EVENING, idAt } from "../support/any-log.ts";
import { eventFor } from "../support/any-sitting.ts";
import { type BoxScene, setUpScene, storedPlaces, wholeLog } from "../support/box-scene.ts";
import { BARE, PLEIADES, STARS, starPair } from "../support/night-sky.ts";
import { addLearner, contextOn, dump, type NewDatabase, type StoreDatabase } from "../support/store-database.ts";

/** Rows about numbered stars, as a list of any length has them. */
const rows = (count: number): readonly ImportedRow[] =>
  Array.from({ length: count }, (_, i) => ({
    kind: "fact",
    content: { ...BARE, kind: "pair", prompt: `HR ${i + 1}`, answer: `number ${i + 1} of the Bright Star Catalogue` },
  }));

export function factsContract(newDatabase: NewDatabase): void {
  let database: StoreDatabase;
  let scene: BoxScene;
  let subject: string;
  let star: string;

  beforeEach(async () => {
    database = await newDatabase();
    await database.open();
    scene = await setUpScene(database, { chart: plainChart(7), stars: STARS.length, evenings: 1 });
    subject = `sky ${scene.world}`;
    star = `${scene.world} star 0`;
  });
  afterEach(() => database.drop());

  const save = (order: Partial<FactImport>) =>
    saveImport(scene.context, {
      target: { id: subject },
      oneWay: false,
      rows: [],
      pictures: new Map(),
      sounds: new Map(),
      ...order,
    });
  const placeOf = async (card: string) => (await storedPlaces({ ...scene, cards: [card] })).get(card)?.place;
  const move = (card: string, n: number) =>
    recordEntries(scene.context, [
      { id: idAt(1, n, scene.world), box: scene.box, at: 0, kind: "move", card, day: 1, to: 5 },
    ]);

  describe("a box that is set up late", () => {
    it("leaves out what was deleted or given up before, and has it when it is brought back", async () => {
      const learner = `late ${scene.world}`;
      await addLearner(database, learner);
      const context = contextOn(await database.open(learner));
      const home = `late sky ${scene.world}`;
      await addSubject(context, home, "The night sky");
      const [gone, half] = [`${learner} gone`, `${learner} half`];
      for (const [n, id] of [gone, half].entries()) await addFact(context, id, home, starPair(n));
      await deleteFact(context, gone);
      await editFact(context, half, starPair(1), ["forward"]);
      const { id: box } = await setUpBox(context, { timeZone: "Europe/Lisbon" });
      const stock = () =>
        context.store.read(async ({ boxes }) => (await boxes.stock(box, 9)).map((ref) => ref.card).sort());
      expect(await stock()).toEqual([`${half}:forward`]);
      await restoreFact(context, gone);
      await editFact(context, half, starPair(1), ["forward", "reverse"]);
      expect(await stock()).toEqual([gone, half].flatMap((id) => [`${id}:forward`, `${id}:reverse`]).sort());
      expect((await rebuild(context)).differences).toEqual([]);
    });
  });

  describe("a subject", () => {
    it("can be removed while it is empty, out of the box too", async () => {
      const before = await dump(database);
      const id = `empty ${scene.world}`;
      await addSubject(scene.context, id, "Comets");
      await removeSubject(scene.context, id);
      expect(await dump(database)).toEqual(before);
    });

    it("takes no picture or sound with it that was not its own", async () => {
      const { context } = scene;
      const sound = { hash: "5".repeat(64), mime: "audio/wav", bytes: new Uint8Array(4) };
      await context.store.write(({ library }) => library.addSound(sound));
      const id = `empty ${scene.world}`;
      await addSubject(context, id, "Comets");
      await removeSubject(context, id);
      expect(await context.store.read(({ library }) => library.hasSound(sound.hash))).toBe(true);
    });

    it("that is removed once its facts were moved elsewhere is not undone into", async () => {
      const { context } = scene;
      const [from, fact] = [`comets ${scene.world}`, `comets ${scene.world} 1`];
      await addSubject(context, from, "Comets");
      await addFact(context, fact, from, starPair(1));
      const { edit } = await applyBulk(context, [fact], { kind: "move", subject });
      await removeSubject(context, from);
      await expect(undoEdit(context, edit ?? "")).rejects.toMatchObject({ failure: { kind: "conflict" } });
    });

    it("that has facts, or had some that can come back, stays", async () => {
      const id = `comets ${scene.world}`;
      await addSubject(scene.context, id, "Comets");
      await addFact(scene.context, `${id} 1`, id, starPair(1));
      await expect(removeSubject(scene.context, id)).rejects.toMatchObject({ failure: { kind: "conflict" } });
      await deleteFact(scene.context, `${id} 1`);
      await expect(removeSubject(scene.context, id)).rejects.toThrow("can be brought back");
    });
  });

  describe("an import", () => {
    it("saves its rows, makes their cards and puts these into the stock", async () => {
      const outcome = await save({ rows: [...rows(1_203), { kind: "problems" }, { kind: "duplicate" }] });
      expect(outcome).toMatchObject({ rows: 1_205, saved: 1_203, duplicates: 1, problems: 1, cards: 2_406 });
      const stock = await scene.context.store.read(({ boxes }) => boxes.countStock(scene.box));
      expect(stock).toBe(2_406 + 2 * STARS.length);
      expect((await rebuild(scene.context)).differences).toEqual([]);
    });

    it("finds everything there already when it is done again", async () => {
      await save({ rows: rows(30) });
      const before = await dump(database);
      expect(await save({ rows: rows(30) })).toMatchObject({ saved: 0, duplicates: 30 });
      expect(await dump(database)).toEqual(before);
    });

    it("is undone as one step, with what was answered meanwhile kept, and done again", async () => {
      const { edit, cards } = await save({ rows: rows(620) });
      const ids = await scene.context.store.read(({ edits }) => edits.factsOfEdit(edit ?? ""));
      expect(ids).toHaveLength(620);
      const first = `${ids[0]?.fact}:forward`;
      await move(first, 1);
      const place = await placeOf(first);
      const undone = await undoEdit(scene.context, edit ?? "");
      expect(undone).toMatchObject({ title: "Undid: Brought 620 facts from a list", facts: 620 });
      expect(await scene.context.store.read(({ boxes }) => boxes.countStock(scene.box))).toBe(2 * STARS.length);
      expect(await placeOf(first)).toEqual({ kind: "withdrawn", from: place });
      expect((await rebuild(scene.context)).differences).toEqual([]);
      await undoEdit(scene.context, undone.id);
      const stock = await scene.context.store.read(({ boxes }) => boxes.countStock(scene.box));
      expect(stock).toBe(2 * STARS.length + cards - 1);
      expect(await placeOf(first)).toEqual(place);
      expect((await rebuild(scene.context)).differences).toEqual([]);
    });

    it("that brings nothing is no step", async () => {
      await save({ rows: rows(2) });
      expect(await save({ rows: rows(2) })).toMatchObject({ saved: 0, edit: null });
    });

    it("leaves nothing at all if it is stopped, however late", async () => {
      const before = await dump(database);
      let asked = 0;
      const stopped = save({ target: { name: "Bright stars" }, rows: rows(1_100), shouldStop: () => ++asked > 1_050 });
      await expect(stopped).rejects.toMatchObject({ failure: { kind: "stopped" } });
      expect(asked).toBe(1_051);
      expect(await dump(database)).toEqual(before);
    });

    it("leaves nothing at all if its list breaks off", async () => {
      const before = await dump(database);
      const broken = function* (): Generator<ImportedRow> {
        yield* rows(700);
        throw new Error("the list cannot be read any further");
      };
      await expect(save({ rows: broken() })).rejects.toThrow("cannot be read any further");
      expect(await dump(database)).toEqual(before);
    });

    it("leaves nothing at all if the database refuses a row", async () => {
      const before = await dump(database);
      const lost: ImportedRow = {
        kind: "fact",
        content: { ...BARE, kind: "picture", name: "M 31", picture: "f".repeat(64) },
      };
      await expect(save({ rows: [...rows(600), lost] })).rejects.toThrow(/foreign key/i);
      expect(await dump(database)).toEqual(before);
    });
  });

  describe("a fact that is reworded", () => {
    it("keeps its cards, their places and their history", async () => {
      await move(`${star}:forward`, 1);
      const before = await placeOf(`${star}:forward`);
      await editFact(scene.context, star, { ...BARE, kind: "pair", prompt: "α Lyrae", answer: "Lyra, the lyre" });
      const history = await cardHistory(scene.context, `${star}:forward`);
      expect(history.card.prompt.text).toEqual([{ text: "α Lyrae", role: "plain" }]);
      expect(history.entries.map(({ kind }) => kind)).toEqual(["move"]);
      expect(await placeOf(`${star}:forward`)).toEqual(before);
    });

    it("takes the card of an angle that is given up out of the box, and brings it back where it was", async () => {
      await move(`${star}:reverse`, 1);
      const before = await placeOf(`${star}:reverse`);
      const draft = { ...BARE, kind: "pair", prompt: "Vega", answer: "Lyra" } as const;
      await editFact(scene.context, star, draft, ["forward"]);
      expect(await placeOf(`${star}:reverse`)).toEqual({ kind: "withdrawn", from: before });
      await editFact(scene.context, star, draft, ["forward", "reverse"]);
      expect(await placeOf(`${star}:reverse`)).toEqual(before);
      const kinds = (await cardHistory(scene.context, `${star}:reverse`)).entries.map(({ kind }) => kind);
      expect(kinds).toEqual(["move", "withdraw", "bring-back"]);
    });

    it("gives a new gap a number of its own, and never that of a gap that was given up", async () => {
      const fact = `${scene.world} pleiades`;
      await addFact(scene.context, fact, subject, PLEIADES);
      const one = await editFact(scene.context, fact, { ...PLEIADES, statement: "The [Pleiades] lie in Taurus" });
      expect(one).toMatchObject({ gaps: [1], angles: ["gap-1"] });
      const two = await editFact(scene.context, fact, { ...PLEIADES, statement: "The [Pleiades] lie in [Taurus]" });
      expect(two).toMatchObject({ gaps: [1, 3], angles: ["gap-1", "gap-3"] });
      expect(await placeOf(`${fact}:gap-2`)).toMatchObject({ kind: "withdrawn" });
      expect(await placeOf(`${fact}:gap-3`)).toEqual({ kind: "stock" });
    });
  });

  describe("a fact that is put away", () => {
    it("takes its cards out of the box, and brought back has them where they were, with all their entries", async () => {
      await move(`${star}:forward`, 1);
      const cards = [`${star}:forward`, `${star}:reverse`];
      const before = await Promise.all(cards.map(placeOf));
      await deleteFact(scene.context, star);
      expect(await Promise.all(cards.map(placeOf))).toEqual(before.map((from) => ({ kind: "withdrawn", from })));
      await deleteFact(scene.context, star);
      await restoreFact(scene.context, star);
      await restoreFact(scene.context, star);
      expect(await Promise.all(cards.map(placeOf))).toEqual(before);
      const kinds = (await wholeLog(scene)).flatMap((entry) => ("card" in entry ? [entry.kind] : []));
      expect(kinds).toEqual(["move", "withdraw", "withdraw", "bring-back", "bring-back"]);
      expect((await rebuild(scene.context)).differences).toEqual([]);
    });

    it("cannot be changed until it is brought back, so no new card of it comes into the box", async () => {
      await deleteFact(scene.context, star);
      const before = await dump(database);
      const edited = editFact(scene.context, star, { ...PLEIADES });
      await expect(edited).rejects.toMatchObject({ failure: { kind: "conflict" } });
      expect(await dump(database)).toEqual(before);
    });

    it("does not bring back a card that was taken out by hand before", async () => {
      const withdraw = { id: idAt(1, 1, scene.world), box: scene.box, at: 0, kind: "withdraw", day: 1 } as const;
      await recordEntries(scene.context, [{ ...withdraw, card: `${star}:forward`, reason: "hand" }]);
      await deleteFact(scene.context, star);
      await restoreFact(scene.context, star);
      expect(await placeOf(`${star}:forward`)).toMatchObject({ kind: "withdrawn" });
      expect(await placeOf(`${star}:reverse`)).toEqual({ kind: "stock" });
    });
  });

  describe("a sitting that is cut off after every single event", () => {
    it("resumes with the same plan, asks no card twice and comes to the same end", async () => {
      const { context, box, world } = scene;
      const id = scene.sittings[0]?.id ?? "";
      context.now = FIRST_EVENING;
      const asked: string[] = [];
      for (let evening = 0; evening < 4; evening++) {
        context.now = FIRST_EVENING + evening * DAY_MS;
        const sitting = evening === 0 ? id : idAt(evening, 0, world);
        const first = await beginSitting(context, sitting, 5);
        for (let n = 1; ; n++) {
          const view = await beginSitting(context, idAt(evening, 10_000 + n, world), 5);
          expect(view.plan).toEqual(first.plan);
          const step = nextStep(replaySitting(view.plan, view.events));
          if (step.kind === "done") break;
          const answer: Answer = n % 3 === 0 ? "missed" : "recalled";
          const event = { ...eventFor(view.plan, step, answer, n), box, id: idAt(evening, n, world) };
          expect(await recordEntries(context, [event])).toMatchObject([{ status: "saved" }]);
          if (step.kind === "visit") asked.push(`${evening} ${step.card.card}`);
        }
        const finish = { id: idAt(evening, 20_000, world), box, at: 0, kind: "finish", sitting } as const;
        await recordEntries(context, [finish]);
      }
      expect(new Set(asked).size).toBe(asked.length);
      expect(asked.length).toBeGreaterThan(10);
      expect((await rebuild(context)).differences).toEqual([]);
    });
  });
}
