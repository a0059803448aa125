// Editing at scale: every step can be undone, whatever it did, and the box follows.
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { applyBulk, type BulkChange, previewBulk } from "../../src/app/bulk-edit.ts";
import { bringBackNotes, createCritic, waveOff } from "../../src/app/critique.ts";
import { factHistory, recentEdits, undoEdit } from "../../src/app/edits.ts";
import { addFact, addSubject, deleteFact, editFact, listSubjects, restoreFact } from "../../src/app/facts.ts";
import { rebuild } from "../../src/app/rebuild.ts";
import { recordEntries } from "../../src/app/record.ts";
import { changeSubjectSpelling } from "../../src/app/subject-spelling.ts";
import { plainChart } from "../../src/core/chart/make-chart.ts";
import { critiqueFacts } from "../../src/core/critique/critique-facts.ts";
import { EXACT_SPELLING, type Fact } from "../../src/core/facts/fact.ts";
import { idAt } from "../support/any-log.ts";
import { type BoxScene, setUpScene, storedPlaces } from "../support/box-scene.ts";
import { BARE, PLEIADES, STARS } from "../support/night-sky.ts";
import type { NewDatabase, StoreDatabase } from "../support/store-database.ts";

export function editsContract(newDatabase: NewDatabase): void {
  let database: StoreDatabase;
  let scene: BoxScene;
  let subject: string;
  let all: readonly string[];

  beforeEach(async () => {
    database = await newDatabase();
    await database.open();
    scene = await setUpScene(database, { chart: plainChart(7), stars: STARS.length, evenings: 1 });
    subject = `sky ${scene.world}`;
    all = STARS.map((_, n) => `${scene.world} star ${n}`);
  });
  afterEach(() => database.drop());

  const read = async (id: string): Promise<Fact | undefined> =>
    (await scene.context.store.read(({ library }) => library.fact(id)))?.fact;
  /** Facts with their angles and deletion, and where every card of them lies. */
  const state = async () => {
    const records = await scene.context.store.read(({ library }) => library.facts(all));
    const cards = (
      await Promise.all(all.map((id) => scene.context.store.read((s) => s.library.cardsOfFact(id))))
    ).flat();
    const places = await storedPlaces({ ...scene, cards: cards.map((card) => card.id) });
    return {
      facts: records
        .map(({ fact, deleted, search }) => ({ fact, deleted, search }))
        .sort((a, b) => (a.fact.id < b.fact.id ? -1 : 1)),
      cards: cards.map((card) => ({ ...card, place: places.get(card.id)?.place })),
    };
  };
  const bulk = (change: BulkChange, facts = all) => applyBulk(scene.context, facts, change);
  const move = (card: string) =>
    recordEntries(scene.context, [
      { id: idAt(1, 5, scene.world), box: scene.box, at: 0, kind: "move", card, day: 1, to: 5 },
    ]);

  describe("a step of editing", () => {
    it.each<[string, () => Promise<unknown>]>([
      [
        "rewording",
        async () => editFact(scene.context, all[0] ?? "", { ...BARE, kind: "pair", prompt: "x", answer: "y" }),
      ],
      [
        "giving up an angle",
        async () => {
          const fact = await read(all[0] ?? "");
          if (fact) await editFact(scene.context, fact.id, fact, ["reverse"]);
        },
      ],
      [
        "turning a pair into a statement",
        () => editFact(scene.context, all[0] ?? "", { ...BARE, kind: "statement", statement: "[Vega] is in [Lyra]." }),
      ],
      ["deleting", () => deleteFact(scene.context, all[0] ?? "")],
      ["replacing", () => bulk({ kind: "replace", find: "a", by: "ä", matchCase: false, wholeWords: false })],
      ["tagging", () => bulk({ kind: "tags", add: ["summer", "winter"], remove: [] })],
      ["deleting many", () => bulk({ kind: "delete" }, all.slice(1))],
      ["merging", () => bulk({ kind: "merge", into: all[2] ?? "" }, all.slice(0, 4))],
      [
        "moving",
        async () => {
          await addSubject(scene.context, `other ${scene.world}`, "Winter sky");
          await bulk({ kind: "move", subject: `other ${scene.world}` });
        },
      ],
    ])("is undone as if it had not been, and done again: %s", async (_, act) => {
      await move(`${all[0]}:forward`);
      const before = await state();
      await act();
      const after = await state();
      expect(after).not.toEqual(before);
      const [last] = await recentEdits(scene.context);
      const undone = await undoEdit(scene.context, last?.id ?? "");
      expect(await withoutGivenUp(state)).toEqual(before);
      expect(undone.undoes).toBe(last?.id);
      expect((await recentEdits(scene.context))[1]).toMatchObject({ id: last?.id, undone: true });
      const again = await undoEdit(scene.context, undone.id);
      expect(again.title).toBe(`Did again: ${last?.title}`);
      expect(await state()).toEqual(after);
      expect((await rebuild(scene.context)).differences).toEqual([]);
    });

    /** Cards that the step made stay, withdrawn, with their history; what was there is as it was. */
    const withoutGivenUp = async (look: typeof state): ReturnType<typeof state> => {
      const { facts, cards } = await look();
      return { facts, cards: cards.filter((card) => !card.angle.startsWith("gap-")) };
    };

    it("takes a new fact away and brings it back", async () => {
      const pleiades = `pleiades ${scene.world}`;
      await addFact(scene.context, pleiades, subject, PLEIADES);
      const [made] = await recentEdits(scene.context);
      expect(made?.title).toMatch(/^New fact “/u);
      const undone = await undoEdit(scene.context, made?.id ?? "");
      expect((await scene.context.store.read(({ library }) => library.fact(pleiades)))?.deleted).toBe(true);
      await undoEdit(scene.context, undone.id);
      expect((await scene.context.store.read(({ library }) => library.fact(pleiades)))?.deleted).toBe(false);
    });

    it("is not undone over a later change, and says so; undone from the last on, it is", async () => {
      const [first = ""] = all;
      await editFact(scene.context, first, { ...BARE, kind: "pair", prompt: "one", answer: "y" });
      await bulk({ kind: "tags", add: ["summer"], remove: [] });
      const [tags, reworded] = await recentEdits(scene.context);
      await expect(undoEdit(scene.context, reworded?.id ?? "")).rejects.toMatchObject({
        failure: { kind: "conflict" },
      });
      await undoEdit(scene.context, tags?.id ?? "");
      await expect(undoEdit(scene.context, tags?.id ?? "")).rejects.toMatchObject({ failure: { kind: "conflict" } });
      expect(await read(first)).toMatchObject({ prompt: "one", tags: [] });
    });

    it("is not noted when nothing changed", async () => {
      const before = (await recentEdits(scene.context)).length;
      const fact = await read(all[0] ?? "");
      if (fact) await editFact(scene.context, fact.id, fact, fact.angles);
      expect(
        await bulk({ kind: "replace", find: "nowhere", by: "x", matchCase: true, wholeWords: false }),
      ).toMatchObject({
        edit: null,
        changed: 0,
      });
      expect(await recentEdits(scene.context)).toHaveLength(before);
    });

    it("leaves a fact's history, newest first, of what it was", async () => {
      const [first = ""] = all;
      const made = await read(first);
      await editFact(scene.context, first, { ...BARE, kind: "pair", prompt: "one", answer: "y" });
      await deleteFact(scene.context, first);
      await restoreFact(scene.context, first);
      const history = await factHistory(scene.context, first);
      expect(
        history.map(({ before }) => before && [before.deleted, "prompt" in before.fact && before.fact.prompt]),
      ).toEqual([[true, "one"], [false, "one"], [false, made && "prompt" in made && made.prompt], null]);
    });
  });

  describe("what counts in a subject's spellings", () => {
    const boötes = { ...BARE, kind: "spelling", clue: "The Herdsman", word: "Boötes" } as const;
    const LENIENT = { accents: "ignore", letterCase: "ignore" } as const;

    it("is followed by the facts that counted the same, and undone for them as one step", async () => {
      const ids = ["follows", "differs"].map((name) => `${scene.world} ${name}`);
      const [follows = "", differs = ""] = ids;
      await addFact(scene.context, follows, subject, { ...boötes, ...EXACT_SPELLING });
      await addFact(scene.context, differs, subject, { ...boötes, accents: "count", letterCase: "ignore" });
      const { changed, edit } = await changeSubjectSpelling(scene.context, subject, LENIENT);
      expect(changed).toBe(1);
      expect(await read(follows)).toMatchObject(LENIENT);
      expect(await read(differs)).toMatchObject({ accents: "count", letterCase: "ignore" });
      const spelling = async () => (await listSubjects(scene.context)).find(({ id }) => id === subject)?.spelling;
      expect(await spelling()).toEqual(LENIENT);
      await undoEdit(scene.context, edit ?? "");
      expect(await changeSubjectSpelling(scene.context, subject, EXACT_SPELLING, false)).toEqual({
        changed: 0,
        edit: null,
      });
      expect(await read(follows)).toMatchObject(EXACT_SPELLING);
      expect(await spelling()).toEqual(EXACT_SPELLING);
    });
  });

  describe("a change to many facts", () => {
    it("is shown before it is made, and is then what was shown", async () => {
      const change: BulkChange = { kind: "replace", find: "a", by: "ä", matchCase: false, wholeWords: false };
      const before = await state();
      const preview = await previewBulk(scene.context, all, change);
      expect(await state()).toEqual(before);
      const result = await bulk(change);
      expect(result.changed).toBe(preview.changed);
      for (const { after } of preview.shown) expect(await read(after.fact.id)).toEqual(after.fact);
    });

    it("leaves out what cannot take it, and says why", async () => {
      const [first = "", second = ""] = all;
      await editFact(scene.context, first, { ...BARE, kind: "statement", statement: "In [Lyra] lies Vega." });
      await editFact(scene.context, second, { ...BARE, kind: "pair", prompt: "Lyra", answer: "Vega" });
      const result = await bulk({ kind: "replace", find: "[Lyra]", by: "Lyra", matchCase: true, wholeWords: false });
      expect(result).toMatchObject({
        changed: 0,
        refused: [{ fact: first, reason: expect.stringMatching(/no gap/u) }],
      });
      const emptied = await bulk({ kind: "replace", find: "Lyra", by: " ", matchCase: true, wholeWords: false });
      expect(emptied.refused).toMatchObject([
        { fact: first, reason: expect.stringMatching(/empty/u) },
        { fact: second, reason: expect.stringMatching(/prompt is still empty/u) },
      ]);
    });

    it("keeps a gap's number, so that its card keeps its history", async () => {
      const [first = ""] = all;
      await editFact(scene.context, first, { ...BARE, kind: "statement", statement: "[Vega] is in [Lyra]." });
      await bulk({ kind: "replace", find: "Lyra", by: "the Lyre", matchCase: true, wholeWords: true }, [first]);
      expect(await read(first)).toMatchObject({ statement: "[Vega] is in [the Lyre].", gaps: [1, 2] });
    });

    it("moves facts with their cards, which stay where they lie", async () => {
      const other = `other ${scene.world}`;
      await addSubject(scene.context, other, "Winter sky");
      const before = await state();
      await bulk({ kind: "move", subject: other }, all.slice(0, 2));
      const after = await state();
      expect(after.cards.map((card) => card.place)).toEqual(before.cards.map((card) => card.place));
      const subjects = await listSubjects(scene.context);
      expect(subjects.map(({ id, facts, cards }) => [id, facts, cards])).toEqual(
        [
          [other, 2, 4],
          [subject, STARS.length - 2, 2 * STARS.length - 4],
        ].sort(),
      );
      expect((await rebuild(scene.context)).differences).toEqual([]);
    });

    it("refuses to merge facts of different kinds, and more facts than can be looked over", async () => {
      await editFact(scene.context, all[0] ?? "", { ...BARE, kind: "statement", statement: "[Vega] is blue." });
      await expect(bulk({ kind: "merge", into: all[0] ?? "" })).rejects.toMatchObject({
        failure: { kind: "invalid-input" },
      });
      await expect(
        bulk(
          { kind: "delete" },
          Array.from({ length: 10_001 }, (_, i) => `${i}`),
        ),
      ).rejects.toMatchObject({
        failure: { kind: "too-large" },
      });
    });
  });

  describe("notes of the critique", () => {
    const keys = ["yes-no|a|forward|1", "short-answer|b||2"];
    const waved = () => scene.context.store.read(({ edits }) => edits.wavedOff());

    it("stay waved off, however often, until they are brought back", async () => {
      await waveOff(scene.context, keys);
      await waveOff(scene.context, keys.slice(1));
      expect(await waved()).toEqual(new Set(keys));
      await bringBackNotes(scene.context, keys.slice(0, 1));
      expect(await waved()).toEqual(new Set(keys.slice(1)));
    });

    it("are about the facts as they are now, and leave out what was waved off", async () => {
      let looked = 0;
      const critic = createCritic(scene.context, (facts) => {
        looked++;
        return Promise.resolve(critiqueFacts(facts));
      });
      const [first = "", second = ""] = all;
      const asked = { ...BARE, kind: "pair" as const, prompt: "Is Vega in Lyra?", answer: "Yes" };
      await editFact(scene.context, first, asked);
      expect(await critic.factsWith(subject, "yes-no")).toEqual([first]);
      expect(await critic.factsWith(subject, "same-prompt")).toEqual([]);
      expect(looked).toBe(1);
      await editFact(scene.context, second, { ...asked, answer: "No" });
      expect(await critic.factsWith(subject, "same-prompt")).toEqual([first, second]);
      const { among } = await critic.notesOf(first);
      expect(among.map((note) => note.rule)).toEqual(["same-prompt"]);
      await waveOff(
        scene.context,
        among.map((note) => note.key),
      );
      expect(await critic.factsWith(subject, "same-prompt")).toEqual([second]);
      expect((await critic.notesOf(first)).wavedOff).toEqual(among.map((note) => note.key));
      expect(looked).toBe(2);
    });

    it("are mended together, and that is undone as one step", async () => {
      const list = { ...BARE, kind: "pair" as const, prompt: "Summer Triangle", answer: "Vega, Deneb, Altair" };
      const [first = ""] = all;
      await editFact(scene.context, first, list);
      const before = await read(first);
      const { edit, changed } = await bulk({ kind: "fix", rule: "whole-list" });
      expect(changed).toBe(1);
      expect(await read(first)).toMatchObject({ kind: "list", items: ["Vega", "Deneb", "Altair"] });
      await undoEdit(scene.context, edit ?? "");
      expect(await read(first)).toEqual(before);
    });
  });

  describe("looking for facts", () => {
    it("finds those of which a card lies in a part of the box, and those among some", async () => {
      await move(`${all[3]}:reverse`);
      const find = (query: object) =>
        scene.context.store.read(({ library }) => library.findFactIds({ words: [], limit: 50, ...query }));
      expect(await find({ place: "compartment", compartment: 5 })).toEqual([all[3]]);
      expect(await find({ place: "compartment", compartment: 4 })).toEqual([]);
      expect(await find({ place: "stock" })).toEqual([...all].sort().reverse());
      expect(await find({ among: [all[1], all[4], "nobody"] })).toEqual([all[4], all[1]]);
      expect(await find({ among: [all[1], all[3]], place: "compartment" })).toEqual([all[3]]);
      expect(await find({ among: Array.from({ length: 60_000 }, (_, i) => `${i}`) })).toEqual([]);
    });

    it("counts tags, most used first", async () => {
      await bulk({ kind: "tags", add: ["star"], remove: [] });
      await bulk({ kind: "tags", add: ["bright", "summer"], remove: [] }, all.slice(0, 2));
      const tags = await scene.context.store.read(({ library }) => library.tagsOf(subject));
      expect([...tags]).toEqual([
        ["star", STARS.length],
        ["bright", 2],
        ["summer", 2],
      ]);
    });
  });
}
