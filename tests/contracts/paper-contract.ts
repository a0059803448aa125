// Results from paper: a box that is practised on paper only is the box that a person keeps by hand.
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { changeChart } from "../../src/app/change-chart.ts";
import { addFact, addSubject } from "../../src/app/facts.ts";
import type { PaperDay } from "../../src/app/paper-entry.ts";
import { enterPaper, paperDay, previewPaper } from "../../src/app/paper-results.ts";
import { takeBackPaper } from "../../src/app/paper-undo.ts";
import { placesBefore } from "../../src/app/places-before.ts";
import { rebuild } from "../../src/app/rebuild.ts";
import { recordEntries } from "../../src/app/record.ts";
import { changeSettings, setUpBox } from "../../src/app/set-up.ts";
import { addDays, type LocalDate, localDateAt } from "../../src/core/calendar/local-date.ts";
import { LEVELLED_CHART, plainChart } from "../../src/core/chart/make-chart.ts";
import { uniform } from "../../src/core/random.ts";
import { DAY_MS, FIRST_EVENING, idAt } from "../support/any-log.ts";
import { starPair } from "../support/night-sky.ts";
import { PaperPiles } from "../support/paper-piles.ts";
import {
  addLearner,
  contextOn,
  dump,
  type NewDatabase,
  type StoreDatabase,
  type TestContext,
} from "../support/store-database.ts";

const STARS = 12;
/** A box day by which every card of these tests has fallen due. */
const END = 100;
let worlds = 0;

export function paperContract(newDatabase: NewDatabase): void {
  let database: StoreDatabase;
  let context: TestContext;
  let box: string;
  let world: number;
  const start = localDateAt(FIRST_EVENING, "Europe/Lisbon", 4);

  beforeEach(async () => {
    database = await newDatabase();
    await database.open();
    world = ++worlds;
    const learner = `reader ${world}`;
    await addLearner(database, learner);
    context = contextOn(await database.open(learner));
    context.now = FIRST_EVENING;
    await addSubject(context, `paper sky ${world}`, "The night sky");
    for (let n = 0; n < STARS; n++) await addFact(context, `${world} paper ${n}`, `paper sky ${world}`, starPair(n));
    ({ id: box } = await setUpBox(context, { timeZone: "Europe/Lisbon", chart: LEVELLED_CHART, newPerDay: 3 }));
  });
  afterEach(() => database.drop());

  const numbers = async (): Promise<ReadonlyMap<number, string>> =>
    new Map(
      (await context.store.read(({ library }) => library.cardsOfSubject(`paper sky ${world}`))).map((card) => [
        card.number,
        card.id,
      ]),
    );
  const places = async () => {
    const rows = await database.run(
      `select card_id as card, place, compartment, bundle from placement where box_id = '${box}' and place <> 'stock' order by card_id`,
    );
    return rows.map((row) => ({ ...row }));
  };
  const date = (day: number): LocalDate => addDays(start, day);

  /** The same days by hand, in the order of their dates; answers at cards that are not due by then move nothing. */
  const byHand = (
    cardOf: ReadonlyMap<number, string>,
    days: readonly (PaperDay & { readonly asked: readonly number[]; readonly day: number })[],
  ) => {
    const hand = new PaperPiles(LEVELLED_CHART);
    const overtaken: string[] = [];
    for (const { date, day, asked, missed, introduced } of [...days].sort((a, b) => (a.date < b.date ? -1 : 1))) {
      const due = hand.due(day);
      for (const number of asked) {
        const card = cardOf.get(number) ?? "";
        const answer = missed.includes(number) ? "missed" : "recalled";
        if (due.includes(card)) hand.answer({ card, pass: "visit", answer }, day);
        else overtaken.push(`${card} ${date}`);
      }
      for (const card of introduced.map((number) => cardOf.get(number) ?? ""))
        if (hand.has(card)) overtaken.push(`${card} ${date}`);
        else hand.answer({ card, pass: "introduction", answer: "recalled" }, day);
    }
    return { hand, places: hand.places(), overtaken };
  };
  /** What lay in the box before a sitting is what a hand had put there on the days before it. */
  const expectAsThen = async (
    cardOf: ReadonlyMap<number, string>,
    days: Parameters<typeof byHand>[1],
    evening: LocalDate,
    sitting: string,
  ) => {
    const { hand } = byHand(
      cardOf,
      days.filter((day) => day.date < evening),
    );
    const [due, firstDue] = await context.store.read(async (session) => {
      const record = await session.boxes.box();
      if (!record) throw new Error("no box");
      const places = await placesBefore(session, record, sitting);
      return [await places.dueCards(box, END), await places.firstDue(box)] as const;
    });
    expect(due.map(({ card }) => card).sort()).toEqual([...hand.due(END)].sort());
    const [first = null] = Array.from({ length: END }, (_, day) => day).filter((day) => hand.due(day).length > 0);
    expect(firstDue).toBe(first);
  };

  describe("results from paper", () => {
    it.each(["chart-goes-on", "chart-waits"] as const)(
      "put every card where a hand would, week after week: %s",
      async (policy) => {
        await changeSettings(context, { policy });
        const hand = new PaperPiles(LEVELLED_CHART);
        const cardOf = await numbers();
        for (let evening = 0; evening < 24; evening++) {
          context.now = FIRST_EVENING + evening * DAY_MS;
          const view = await paperDay(context);
          const asked = view.piles.flatMap((pile) => pile.numbers);
          expect(asked.map((number) => cardOf.get(number)).sort()).toEqual([...hand.due(view.day)].sort());
          const missed = asked.filter((number) => uniform("paper", `${evening} ${number}`) < 0.2);
          const introduced = view.newCards;
          if (asked.length + introduced.length === 0) continue;
          const order: PaperDay = { date: view.date, missed, introduced };
          const [preview] = await previewPaper(context, [order]);
          const [done] = await enterPaper(context, [order]);
          expect({ ...done, sitting: null }).toEqual({ ...preview, sitting: null });
          expect(done).toMatchObject({ missed: missed.length, recalled: asked.length - missed.length, left: 0 });
          for (const number of asked)
            hand.answer(
              {
                card: cardOf.get(number) ?? "",
                pass: "visit",
                answer: missed.includes(number) ? "missed" : "recalled",
              },
              view.day,
            );
          for (const number of introduced)
            hand.answer({ card: cardOf.get(number) ?? "", pass: "introduction", answer: "recalled" }, view.day);
        }
        expect(await places()).toEqual(hand.places());
        expect((await rebuild(context)).differences).toEqual([]);
      },
    );

    it("of several days are placed as if each had been entered on its evening", async () => {
      const view = await paperDay(context);
      await enterPaper(context, [{ date: view.date, missed: [], introduced: view.newCards }]);
      // Three evenings on paper, then all of them at once.
      context.now = FIRST_EVENING + 3 * DAY_MS;
      await changeSettings(context, { policy: "chart-goes-on" });
      const [one = 0] = view.newCards;
      const outcomes = await enterPaper(
        context,
        [3, 1, 2].map((day) => ({ date: date(day), missed: day === 2 ? [one] : [], introduced: [] })),
      );
      expect(outcomes.map((outcome) => [outcome.date, outcome.day])).toEqual(
        [1, 2, 3].map((day) => [date(day), day + 1]),
      );
      const hand = new PaperPiles(LEVELLED_CHART);
      const cardOf = await numbers();
      for (const number of view.newCards)
        hand.answer({ card: cardOf.get(number) ?? "", pass: "introduction", answer: "recalled" }, 1);
      for (const day of [2, 3, 4])
        for (const card of hand.due(day))
          hand.answer(
            { card, pass: "visit", answer: day === 3 && card === cardOf.get(one) ? "missed" : "recalled" },
            day,
          );
      expect(await places()).toEqual(hand.places());
      expect((await rebuild(context)).differences).toEqual([]);
    });

    it("are taken back as one step, and everything is as it was", async () => {
      const first = await paperDay(context);
      await enterPaper(context, [{ date: first.date, missed: [], introduced: first.newCards }]);
      context.now = FIRST_EVENING + DAY_MS;
      const before = await places();
      const view = await paperDay(context);
      const [one = 0] = view.piles.flatMap((pile) => pile.numbers);
      await enterPaper(context, [{ date: view.date, missed: [one], introduced: view.newCards }]);
      const { undo } = await paperDay(context);
      expect(undo).toMatchObject({
        dates: [view.date],
        asked: first.newCards.length,
        introduced: view.newCards.length,
      });
      await takeBackPaper(context, undo?.sittings ?? []);
      expect(await places()).toEqual(before);
      const again = await paperDay(context);
      expect({ ...again, undo: null }).toEqual({ ...view, undo: null });
      expect((await rebuild(context)).differences).toEqual([]);
    });

    it("of several days are entered together and taken back together", async () => {
      const first = await paperDay(context);
      const before = await places();
      const dates = [0, 1, 2].map((n) => addDays(first.date, n));
      context.now = FIRST_EVENING + 2 * DAY_MS;
      const days = dates.map((date, n): PaperDay => ({ date, missed: [], introduced: n === 0 ? first.newCards : [] }));
      const outcomes = await enterPaper(context, days);
      expect(outcomes.map(({ date }) => date)).toEqual(dates);
      expect(outcomes[1]?.recalled).toBe(first.newCards.length);
      const sittings = outcomes.map(({ sitting }) => sitting);
      const [, middle = ""] = sittings;
      await expect(takeBackPaper(context, [middle])).rejects.toMatchObject({ failure: { kind: "conflict" } });
      await takeBackPaper(context, sittings);
      expect(await places()).toEqual(before);
      await expect(takeBackPaper(context, sittings)).rejects.toThrow("nothing left");
      expect((await rebuild(context)).differences).toEqual([]);
    });

    it.each(["chart-goes-on", "chart-waits"] as const)(
      "are placed as if entered then, in whatever order the days come, and taken back as entered: %s",
      async (policy) => {
        await changeSettings(context, { policy });
        context.now = FIRST_EVENING + 9 * DAY_MS;
        const cardOf = await numbers();
        const entered: (PaperDay & { asked: readonly number[]; day: number; sitting: string })[] = [];
        const steps: { sitting: string; before: unknown }[] = [];
        for (const evening of [0, 3, 1, 9, 7, 2, 8, 5, 4, 6]) {
          context.now += 60_000;
          const view = await paperDay(context, date(evening));
          const asked = view.piles.flatMap((pile) => pile.numbers);
          const missed = asked.filter((number) => uniform("late", `${evening} ${number}`) < 0.25);
          const order = { date: view.date, missed, introduced: view.newCards };
          const before = await places();
          const [preview] = await previewPaper(context, [order]);
          const [done] = await enterPaper(context, [order]);
          expect({ ...done, sitting: null }).toEqual({ ...preview, sitting: null });
          const { day = 0, sitting = "" } = done ?? {};
          const over = byHand(cardOf, entered).overtaken;
          entered.push({ ...order, asked, day, sitting });
          const hand = byHand(cardOf, entered);
          expect(await places(), `evening ${evening}`).toEqual(hand.places);
          expect(hand.overtaken.filter((one) => !over.includes(one))).toHaveLength(done?.overtaken ?? -1);
          if (asked.length + view.newCards.length > 0) steps.push({ sitting, before });
          expect((await paperDay(context, date(evening))).piles).toEqual([]);
        }
        expect(byHand(cardOf, entered).overtaken.length).toBeGreaterThan(0);
        for (const { date: evening, sitting } of entered) await expectAsThen(cardOf, entered, evening, sitting);
        expect((await rebuild(context)).differences).toEqual([]);
        for (const { sitting, before } of steps.toReversed()) {
          expect((await paperDay(context)).undo?.sittings).toEqual([sitting]);
          await takeBackPaper(context, [sitting]);
          expect(await places()).toEqual(before);
        }
        expect((await rebuild(context)).differences).toEqual([]);
      },
    );

    it("of a day before a change of chart and of settings go by those of then, and by the new chart from then on", async () => {
      await changeSettings(context, { policy: "chart-goes-on" });
      const all = [...(await numbers()).keys()].sort((a, b) => a - b);
      await enterPaper(context, [{ date: date(0), missed: [], introduced: all.slice(0, 9) }]);
      context.now += DAY_MS;
      const second: PaperDay = { date: date(1), missed: all.slice(0, 2), introduced: all.slice(9, 11) };
      const [inTime] = await enterPaper(context, [second]);
      context.now += DAY_MS;
      await changeSettings(context, { policy: "chart-waits", newPerDay: 1 });
      await changeChart(context, { chart: plainChart(4) });
      const before = await places();
      await takeBackPaper(context, [inTime?.sitting ?? ""]);
      expect(await places()).not.toEqual(before);

      expect(await paperDay(context, date(1))).toMatchObject({ day: 2, newCards: { length: 3 } });
      expect((await paperDay(context)).newCards).toHaveLength(1);
      const [late] = await enterPaper(context, [second]);
      expect(late).toEqual({ ...inTime, sitting: late?.sitting });
      expect(await places()).toEqual(before);
      expect((await rebuild(context)).differences).toEqual([]);
    });

    it("of an earlier day name the new cards of then, though facts came since", async () => {
      const { newCards, date: first } = await paperDay(context);
      context.now += DAY_MS;
      for (let n = STARS; n < 2 * STARS; n++)
        await addFact(context, idAt(1, n, world), `paper sky ${world}`, starPair(n));
      expect((await paperDay(context)).newCards).not.toEqual(newCards);
      const [late = 0] = (await paperDay(context)).newCards.filter((one) => !newCards.includes(one));
      await enterPaper(context, [{ date: date(1), missed: [], introduced: [late] }]);
      expect((await paperDay(context, first)).newCards).toEqual(newCards);
    });

    it("can no longer be taken back once a card of the box was touched since", async () => {
      const first = await paperDay(context);
      const [done] = await enterPaper(context, [{ date: first.date, missed: [], introduced: first.newCards }]);
      context.now = FIRST_EVENING + DAY_MS;
      const card = (await numbers()).get(first.newCards[0] ?? 0) ?? "";
      const [receipt] = await recordEntries(context, [
        { id: idAt(1, 9, world), box, at: context.now, kind: "move", card, day: first.day, to: 5 },
      ]);
      expect(receipt?.status).toBe("saved");
      expect((await paperDay(context)).undo).toBeNull();
      await expect(takeBackPaper(context, [done?.sitting ?? ""])).rejects.toMatchObject({
        failure: { kind: "conflict" },
      });
    });

    it("are refused whole where one number is wrong, and say where that card is", async () => {
      const first = await paperDay(context);
      await enterPaper(context, [{ date: first.date, missed: [], introduced: first.newCards }]);
      context.now = FIRST_EVENING + DAY_MS;
      const view = await paperDay(context);
      const stranger = [...(await numbers()).keys()].find(
        (number) => !view.piles.some((pile) => pile.numbers.includes(number)) && !view.newCards.includes(number),
      );
      const enter = (day: Partial<PaperDay>) =>
        enterPaper(context, [{ date: view.date, missed: [], introduced: [], ...day }]);
      const before = await dump(database);
      await expect(enter({ missed: [stranger ?? 0] })).rejects.toMatchObject({
        failure: { kind: "conflict", message: expect.stringMatching(/was not due .* it is still in the stock/u) },
      });
      await expect(enter({ missed: [999_999] })).rejects.toMatchObject({ failure: { kind: "not-found" } });
      await expect(enter({ introduced: first.newCards })).rejects.toMatchObject({ failure: { kind: "conflict" } });
      await expect(enter({ date: addDays(view.date, 1) })).rejects.toMatchObject({
        failure: { kind: "invalid-input" },
      });
      expect(await dump(database)).toEqual(before);
      await expect(enter({ date: addDays(first.date, -1) })).rejects.toMatchObject({
        failure: { kind: "invalid-input", message: expect.stringContaining("no box") },
      });
      expect(await dump(database)).toEqual(before);
    });

    it("leave what was not asked where it is, still due", async () => {
      const first = await paperDay(context);
      await enterPaper(context, [{ date: first.date, missed: [], introduced: first.newCards }]);
      context.now = FIRST_EVENING + DAY_MS;
      const view = await paperDay(context);
      const [one = 0, ...rest] = view.piles.flatMap((pile) => pile.numbers);
      const [outcome] = await enterPaper(context, [{ date: view.date, asked: [one], missed: [], introduced: [] }]);
      expect(outcome).toMatchObject({ recalled: 1, left: rest.length });
      const later = await paperDay(context);
      expect(later.piles.flatMap((pile) => pile.numbers)).toEqual(rest);
    });
  });
}
