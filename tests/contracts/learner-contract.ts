// Two learners on one database never see or touch what is the other's.

import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { changeChart } from "../../src/app/change-chart.ts";
import type { Session } from "../../src/app/ports.ts";
import { recordEntries } from "../../src/app/record.ts";
import { plainChart } from "../../src/core/chart/make-chart.ts";
import { EXACT_SPELLING } from "../../src/core/facts/fact.ts";
import { type Act, entriesOf, idAt } from "../support/any-log.ts";
import { type BoxScene, setUpScene } from "../support/box-scene.ts";
import { storedPair } from "../support/night-sky.ts";
import { dump, type NewDatabase, type StoreDatabase } from "../support/store-database.ts";

const PHOTO = { hash: "a".repeat(64), mime: "image/webp", width: 2, height: 2, bytes: Uint8Array.of(1, 2, 3) };

const act = (what: Act["what"], card: number): Act => ({ what, card, recalled: true, to: 1, back: 0 });
/** Something of every kind: an introduction, a visit, a take-back, a finish. */
const ACTS = [
  act("look", 0),
  act("introduction", 0),
  act("introduction", 1),
  act("take-back", 0),
  act("next-sitting", 0),
  act("visit", 0),
  act("finish", 0),
];

/** Every question that a session can be asked about somebody's subject, fact, card, picture, box and log. */
function questions(of: BoxScene): readonly (readonly [name: string, ask: (session: Session) => Promise<unknown>])[] {
  const { box, cards, sittings, world } = of;
  const [subject, fact, card] = [`sky ${world}`, `${world} star 0`, cards[0] as string];
  const [sitting, entry] = [sittings[1]?.id ?? "", idAt(0, 2, world)];
  const taken = idAt(0, 3, world);
  return [
    ["subject", ({ library }) => library.subject(subject)],
    ["fact", ({ library }) => library.fact(fact)],
    ["facts", ({ library }) => library.facts([fact])],
    ["findFacts", async ({ library }) => (await library.findFacts({ subject, words: [], limit: 9 })).items],
    ["factsByContent", ({ library }) => library.factsByContent(subject, storedPair(fact, subject).contentHash)],
    ["contentHashes", ({ library }) => library.contentHashes(subject)],
    ["cards", ({ library }) => library.cards([card])],
    ["cardsOfFact", ({ library }) => library.cardsOfFact(fact)],
    ["cardsOfFacts", ({ library }) => library.cardsOfFacts([fact])],
    ["cardsOfSubject", ({ library }) => library.cardsOfSubject(subject)],
    ["picture", ({ library }) => library.picture(PHOTO.hash)],
    ["pictureHashes", ({ library }) => library.pictureHashes()],
    ["subjectsInBox", ({ boxes }) => boxes.subjectsInBox(box)],
    ["entry", ({ boxes }) => boxes.entry(entry)],
    ["entriesOfCards", async ({ boxes }) => (await boxes.entriesOfCards(box, [card])).entries],
    ["entriesOfSitting", ({ boxes }) => boxes.entriesOfSitting(sitting)],
    ["entriesOfKind", ({ boxes }) => boxes.entriesOfKind(box, ["begin"])],
    ["eventsOfSitting", ({ boxes }) => boxes.eventsOfSitting(sitting)],
    ["takenBack", ({ boxes }) => boxes.takenBack([taken])],
    ["chartChangedSince", async ({ boxes }) => ((await boxes.chartChangedSince(box, entry)) ? [true] : [])],
    ["cardsTouchedSince", async ({ boxes }) => ((await boxes.cardsTouchedSince(box, idAt(0, 0, world))) ? [true] : [])],
    ["lastEntryId", ({ boxes }) => boxes.lastEntryId(box)],
    ["countEntries", ({ boxes }) => boxes.countEntries(box)],
    ["recentVisits", ({ boxes }) => boxes.recentVisits(box, 9)],
    ["sitting", ({ boxes }) => boxes.sitting(sitting)],
    ["sittings", ({ boxes }) => boxes.sittings(box)],
    ["sittingsBetween", ({ boxes }) => boxes.sittingsBetween(box, "2026-01-01", "2026-12-31")],
    ["lastSitting", ({ boxes }) => boxes.lastSitting(box, "2026-12-31")],
    ["placement", ({ boxes }) => boxes.placement(box, card)],
    ["placements", ({ boxes }) => boxes.placements(box, cards)],
    ["duePiles", ({ boxes }) => boxes.duePiles(box, 99)],
    ["dueCards", ({ boxes }) => boxes.dueCards(box, 99)],
    ["stock", ({ boxes }) => boxes.stock(box, 9)],
    ["countStock", ({ boxes }) => boxes.countStock(box)],
    ["countPlaces", ({ boxes }) => boxes.countPlaces(box)],
    ["waiting", ({ boxes }) => boxes.waiting(box)],
    ["printStep", ({ prints }) => prints.printStep(idAt(0, 1, world))],
    ["lastPrintStepId", ({ prints }) => prints.lastPrintStepId()],
    ["recentPrintSteps", ({ prints }) => prints.recentPrintSteps(9)],
    ["onPaper", ({ prints }) => prints.onPaper()],
    ["placed", ({ boxes }) => boxes.placed(box, { place: "stock", limit: 9 })],
  ];
}

const nothing = (answer: unknown): boolean =>
  answer === null || answer === 0 || (Array.isArray(answer) ? answer.length === 0 : (answer as Set<string>).size === 0);

export function learnerContract(newDatabase: NewDatabase): void {
  let database: StoreDatabase;
  let mine: BoxScene;
  let theirs: BoxScene;

  beforeEach(async () => {
    database = await newDatabase();
    await database.open();
    mine = await setUpScene(database, { chart: plainChart(7), stars: 2, evenings: 2 });
    theirs = await setUpScene(database, { chart: plainChart(7), stars: 2, evenings: 2 });
    await theirs.context.store.write(({ library }) => library.addPicture(PHOTO));
    const receipts = await recordEntries(theirs.context, entriesOf(ACTS, theirs));
    expect(receipts.every(({ status }) => status === "saved")).toBe(true);
    await changeChart(theirs.context, { chart: plainChart(5) });
    const step = { id: idAt(0, 1, theirs.world), at: 0, kind: "lost" } as const;
    await theirs.context.store.write(({ prints }) =>
      prints.addPrintStep(step, [{ card: theirs.cards[0] as string, face: null }]),
    );
  });
  afterEach(() => database.drop());

  describe("a learner", () => {
    it("is told nothing about what is another's, asked for by name; the other is told everything", async () => {
      for (const [name, ask] of questions(theirs)) {
        expect([name, nothing(await mine.context.store.read(ask))]).toEqual([name, true]);
        expect([name, nothing(await theirs.context.store.read(ask))]).toEqual([name, false]);
      }
    });

    it("has lists and counts of one's own", async () => {
      await mine.context.store.read(async ({ library, boxes }) => {
        expect((await library.subjects()).map(({ id }) => id)).toEqual([`sky ${mine.world}`]);
        expect([...(await library.countBySubject("card"))]).toEqual([[`sky ${mine.world}`, 4]]);
        expect((await boxes.box())?.id).toBe(mine.box);
        expect(await library.lastCardNumber()).toBe(4);
        const walked: string[] = [];
        for await (const fact of library.eachFact(`sky ${theirs.world}`)) walked.push(fact.id);
        for await (const { card } of boxes.eachPlacement(theirs.box)) walked.push(card);
        for await (const { id } of boxes.eachEntry(theirs.box)) walked.push(id);
        expect(walked).toEqual([]);
      });
    });

    it("may have the same picture as another", async () => {
      await mine.context.store.write(({ library }) => library.addPicture({ ...PHOTO, mime: "image/png" }));
      expect((await mine.context.store.read(({ library }) => library.picture(PHOTO.hash)))?.mime).toBe("image/png");
      expect((await theirs.context.store.read(({ library }) => library.picture(PHOTO.hash)))?.mime).toBe("image/webp");
    });

    it("cannot change what is another's, whatever is written under its name", async () => {
      const before = await dump(database);
      const record = await theirs.context.store.read(async ({ library, boxes }) => ({
        fact: await library.fact(`${theirs.world} star 0`),
        box: await boxes.box(),
        sitting: (await boxes.sittings(theirs.box))[0],
        placement: await boxes.placement(theirs.box, theirs.cards[0] as string),
      }));
      const { fact, box, sitting, placement } = record;
      if (!fact || !box || !sitting || !placement) throw new Error("the other learner's records are there");
      await mine.context.store.write(async ({ library, boxes, prints }) => {
        await prints.markPrintStepUndone(idAt(0, 1, theirs.world));
        await library.saveSubject({
          id: `sky ${theirs.world}`,
          name: "taken over",
          demo: true,
          spelling: EXACT_SPELLING,
        });
        await library.updateFacts([{ ...fact, deleted: true }]);
        await library.removeSubject(`sky ${theirs.world}`);
        await boxes.saveBox({ ...box, newPerDay: 99 });
        await boxes.saveSitting(theirs.box, { ...sitting, asked: 99, day: 99 });
        const stolen = { ...placement, state: { ...placement.state, place: { kind: "kept" } as const } };
        await boxes.savePlacement(theirs.box, stolen);
        await boxes.savePlacements(theirs.box, [stolen]);
        await boxes.removeSittings(theirs.box);
        await boxes.removeBox(theirs.box);
      });
      expect(await dump(database)).toEqual(before);
    });

    it("has entries about another's box kept back, and about another's cards refused", async () => {
      const before = await dump(database);
      const sent = entriesOf([act("visit", 0), act("finish", 0)], { ...theirs, world: 60_000 });
      const asMine = entriesOf([act("visit", 0), act("finish", 0)], { ...theirs, world: 60_001, box: mine.box });
      const receipts = await recordEntries(mine.context, [...sent, ...asMine]);
      expect(receipts.map(({ status }) => status)).toEqual(["kept-back", "kept-back", "refused", "refused"]);
      expect(await dump(database)).toEqual(before);
    });
  });
}
