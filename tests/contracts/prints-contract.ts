// Paper cards: what was printed is known, and what became of it since.
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { addFact, addSubject, deleteFact, editFact } from "../../src/app/facts.ts";
import { planKit } from "../../src/app/print-plan.ts";
import { recordMissing, recordPrinted, undoPrintStep } from "../../src/app/print-record.ts";
import { cardPaper, paperCards } from "../../src/app/print-versions.ts";
import { recordEntries } from "../../src/app/record.ts";
import { setUpBox } from "../../src/app/set-up.ts";
import { cardId } from "../../src/core/cards/cards.ts";
import type { Size } from "../../src/core/kit/paper.ts";
import { SHEETS } from "../../src/core/kit/paper.ts";
import { DAY_MS, FIRST_EVENING, idAt } from "../support/any-log.ts";
import { cardSize } from "../support/kit-plan.ts";
import { BARE, starPair } from "../support/night-sky.ts";
import {
  addLearner,
  contextOn,
  dump,
  type NewDatabase,
  type StoreDatabase,
  type TestContext,
} from "../support/store-database.ts";

const STARS = 4;
/** A pair is asked both ways. */
const CARDS = 2 * STARS;
let worlds = 0;

export function printsContract(newDatabase: NewDatabase): void {
  let database: StoreDatabase;
  let context: TestContext;
  let subject: string;
  let facts: readonly string[];
  let world: number;

  beforeEach(async () => {
    database = await newDatabase();
    await database.open();
    world = ++worlds;
    const learner = `printer ${world}`;
    await addLearner(database, learner);
    context = contextOn(await database.open(learner));
    context.now = FIRST_EVENING;
    subject = `printed sky ${world}`;
    await addSubject(context, subject, "The night sky");
    facts = Array.from({ length: STARS }, (_, n) => `${world} printed ${n}`);
    for (const [n, fact] of facts.entries()) await addFact(context, fact, subject, starPair(n));
  });
  afterEach(() => database.drop());

  const plan = (only: "all" | "changed") =>
    planKit(context, {
      subjects: [subject],
      only,
      parts: new Set(["cards"]),
      sheet: SHEETS.a4 as Size,
      card: cardSize("a7"),
      turn: "long",
      mark: "number",
      offset: [0, 0],
      bleed: 0,
      language: "en",
      timeZone: "Europe/Lisbon",
    });
  const counts = async () => (await paperCards(context, [subject])).counts;
  const NONE = { new: 0, current: 0, changed: 0, lost: 0, damaged: 0, withdrawn: 0 };
  const reword = (n: number) =>
    editFact(context, facts[n] ?? "", { ...BARE, ...starPair(n), prompt: `Reworded ${n}`, kind: "pair" });
  const toPrint = async () => (await plan("changed")).cards.map(({ card }) => card.number);

  describe("a paper card", () => {
    it("is new until the person says that it is printed", async () => {
      const { cards } = await plan("all");
      expect(cards).toHaveLength(CARDS);
      expect(await counts()).toEqual({ ...NONE, new: CARDS });
      await recordPrinted(context, cards.slice(0, 3));
      expect(await counts()).toEqual({ ...NONE, new: CARDS - 3, current: 3 });
      expect(await toPrint()).toEqual(cards.slice(3).map(({ card }) => card.number));
    });

    it("is out of date once its fact is reworded, with the old and the new wording, and in order again when reprinted", async () => {
      await recordPrinted(context, (await plan("all")).cards);
      await reword(1);
      const { outdated } = await paperCards(context, [subject]);
      const was = (starPair(1) as { prompt: string }).prompt;
      expect(outdated.map(({ state, fact }) => [state, fact])).toEqual([
        ["changed", facts[1]],
        ["changed", facts[1]],
      ]);
      expect(outdated[0]?.changes).toEqual([{ part: "prompt", before: was, after: "Reworded 1", picture: false }]);
      expect(outdated[1]?.changes).toEqual([{ part: "answer", before: was, after: "Reworded 1", picture: false }]);
      const card = cardId(facts[1] ?? "", "reverse");
      const { state, changes } = await cardPaper(context, card);
      expect({ state, changes }).toEqual({ state: "changed", changes: outdated[1]?.changes });
      const again = (await plan("changed")).cards;
      expect(again.map(({ fact }) => fact)).toEqual([facts[1], facts[1]]);
      context.now += DAY_MS;
      await recordPrinted(context, again);
      expect(await counts()).toEqual({ ...NONE, current: CARDS });
      expect(await cardPaper(context, cardId(facts[1] ?? "", "forward"))).toEqual({
        state: "current",
        printedAt: context.now,
        changes: [],
      });
    });

    it("is told of one card without the others, also when its fact is deleted before there is a box", async () => {
      await recordPrinted(context, (await plan("all")).cards);
      const card = cardId(facts[2] ?? "", "forward");
      const records = await context.store.read(({ prints }) => prints.onPaper(card));
      expect([...records.keys()]).toEqual([card]);
      await deleteFact(context, facts[2] ?? "");
      expect((await cardPaper(context, card)).state).toBe("withdrawn");
    });

    it("is recorded as it was when it was printed, though its fact changed before the person said so", async () => {
      const { cards } = await plan("all");
      await reword(0);
      await recordPrinted(context, cards);
      expect(await counts()).toEqual({ ...NONE, current: CARDS - 2, changed: 2 });
    });

    it("that is lost or damaged is printed anew, until that is taken back", async () => {
      const { cards } = await plan("all");
      await recordPrinted(context, cards);
      const [one = 0, two = 0, three = 0] = cards.map(({ card }) => card.number);
      await recordMissing(context, "lost", [one]);
      const damaged = await recordMissing(context, "damaged", [two, three]);
      expect(await counts()).toEqual({ ...NONE, current: CARDS - 3, lost: 1, damaged: 2 });
      expect(await toPrint()).toEqual([one, two, three]);
      await undoPrintStep(context, damaged.id);
      expect(await toPrint()).toEqual([one]);
      await expect(undoPrintStep(context, damaged.id)).rejects.toThrow("taken back already");
    });

    it("is what it was before a printing that is taken back, in whatever order steps are taken back", async () => {
      const { cards } = await plan("all");
      const first = await recordPrinted(context, cards.slice(0, 2));
      const second = await recordPrinted(context, cards.slice(0, 1));
      await undoPrintStep(context, first.id);
      expect(await counts()).toEqual({ ...NONE, new: CARDS - 1, current: 1 });
      await undoPrintStep(context, second.id);
      expect(await counts()).toEqual({ ...NONE, new: CARDS });
      expect((await paperCards(context, [subject])).steps).toEqual([]);
    });

    it("is to be taken out when its card is withdrawn, its angle given up or its fact deleted", async () => {
      const { id: box } = await setUpBox(context, { timeZone: "Europe/Lisbon" });
      await recordPrinted(context, (await plan("all")).cards);
      const hand = cardId(facts[0] ?? "", "forward");
      context.now += 3 * DAY_MS;
      const entry = { id: idAt(2, 1, world), box, at: context.now, kind: "withdraw", card: hand, day: 1 } as const;
      const [receipt] = await recordEntries(context, [{ ...entry, reason: "hand" }]);
      expect(receipt?.status).toBe("saved");
      await editFact(context, facts[1] ?? "", starPair(1), ["reverse"]);
      await deleteFact(context, facts[2] ?? "");
      const { counts: now, outdated } = await paperCards(context, [subject]);
      expect(now).toEqual({ ...NONE, current: CARDS - 4, withdrawn: 4 });
      expect(outdated.map(({ card }) => card).sort()).toEqual(
        [
          hand,
          cardId(facts[1] ?? "", "forward"),
          cardId(facts[2] ?? "", "forward"),
          cardId(facts[2] ?? "", "reverse"),
        ].sort(),
      );
      expect(await toPrint()).toEqual([]);
      const states = (await Promise.all(outdated.map(({ card }) => cardPaper(context, card)))).map(
        ({ state }) => state,
      );
      expect(states).toEqual(["withdrawn", "withdrawn", "withdrawn", "withdrawn"]);
    });

    it("cannot be lost if it is none: no card, or never printed; then nothing is recorded", async () => {
      const { cards } = await plan("all");
      await recordPrinted(context, cards.slice(0, 1));
      const [printed = 0, never = 0] = cards.map(({ card }) => card.number);
      const before = await dump(database);
      await expect(recordMissing(context, "lost", [printed, never])).rejects.toThrow("never recorded as printed");
      await expect(recordMissing(context, "lost", [printed, 999_999])).rejects.toThrow("No card has the number");
      await expect(recordMissing(context, "lost", [])).rejects.toThrow("No card is named");
      expect(await dump(database)).toEqual(before);
    });

    it("is forgotten with its subject, and a printing of nothing else with it", async () => {
      const other = `other sky ${world}`;
      await addSubject(context, other, "Moons");
      await addFact(context, `${world} moon`, other, starPair(9));
      const { cards } = await plan("all");
      await recordPrinted(context, cards);
      await context.store.write(({ library }) => library.removeSubject(other));
      expect(await counts()).toEqual({ ...NONE, current: CARDS });
      await context.store.write(({ library }) => library.removeSubject(subject));
      const { steps } = await paperCards(context, []);
      expect(steps).toEqual([]);
      await expect(recordPrinted(context, cards)).rejects.toThrow("None of these cards");
    });
  });
}
