// Results from paper: the piles of a day are known, so the numbers of the missed cards say everything else.
import { boxDayOn, passIdleDays } from "../core/calendar/calendar.ts";
import { addDays, type LocalDate, localDateAt } from "../core/calendar/local-date.ts";
import { printedNumber } from "../core/cards/card-number.ts";
import type { CardId } from "../core/cards/cards.ts";
import { type BoxDay, compartmentCount } from "../core/chart/chart.ts";
import type { BeginEntry, OutcomeEntry, Pass } from "../core/log/entry.ts";
import type { EntryId } from "../core/log/entry-id.ts";
import { chooseNewCards } from "../core/sitting/plan.ts";
import { firstWork } from "./days.ts";
import { entryIds } from "./entry-ids.ts";
import { FailureError, found } from "./failure.ts";
import type { BoxRecord, CardRecord, Context, Session } from "./ports.ts";
import { recordInside, type SentEntry } from "./record.ts";
import type { PaperDayView, PaperOutcome, PaperUndo } from "./views.ts";

/** What happened on paper on one day. Cards are named by their numbers. */
export interface PaperDay {
  readonly date: LocalDate;
  /** Cards that were asked and due; left out means every card that was due. */
  readonly asked?: readonly number[] | undefined;
  /** Those of them that were missed at the first asking. */
  readonly missed: readonly number[];
  /** New cards that were introduced, and recalled at last. */
  readonly introduced: readonly number[];
}

/** The latest days that can be entered at once. */
const MOST_DAYS = 31;

/** What can be entered for a date: its piles, and the new cards that a sheet of that day names. Fails with `conflict` for a date that is past. */
export const paperDay = (context: Context, date?: LocalDate): Promise<PaperDayView> =>
  context.store.read(async (session) => {
    const box = found(await session.boxes.box(), "box");
    const dates = await openDates(context, session, box);
    const chosen = date ?? dates.at(-1) ?? localToday(context, box);
    const day = await dayOn(context, session, box, chosen);
    const due = await session.boxes.dueCards(box.id, day);
    const numbers = await numbersOf(
      session,
      due.map((card) => card.card),
    );
    const piles = new Map<string, { compartment: number; bundle: number; numbers: number[] }>();
    for (const { card, compartment, bundle } of due) {
      const key = `${compartment}/${bundle}`;
      const pile = piles.get(key) ?? { compartment, bundle, numbers: [] };
      pile.numbers.push(numbers.get(card) ?? 0);
      piles.set(key, pile);
    }
    const stock = await session.boxes.stock(box.id, 4 * box.newPerDay + 50);
    const fresh = chooseNewCards(stock, box.newPerDay, new Set()).map((ref) => ref.card);
    return {
      dates,
      date: chosen,
      day,
      piles: [...piles.values()]
        .map((pile) => ({ ...pile, numbers: pile.numbers.sort((a, b) => a - b) }))
        .sort((a, b) => b.compartment - a.compartment || a.bundle - b.bundle),
      newCards: [...(await numbersOf(session, fresh)).values()].sort((a, b) => a - b),
      undo: await undoable(session, box),
    };
  });

/** What entering these days would do; nothing is recorded. */
export async function previewPaper(context: Context, days: readonly PaperDay[]): Promise<readonly PaperOutcome[]> {
  // Everything is done as it would be, and then given up.
  let outcomes: readonly PaperOutcome[] = [];
  const given = Symbol("given up");
  await context.store
    .write(async (session) => {
      outcomes = await enter(context, session, days);
      throw given;
    })
    .catch((error: unknown) => {
      if (error !== given) throw error;
    });
  return outcomes;
}

/** Records these days, the earliest first, as sittings of their dates: all of them or, if one cannot be right, none. */
export const enterPaper = (context: Context, days: readonly PaperDay[]): Promise<readonly PaperOutcome[]> =>
  context.store.write((session) => enter(context, session, days));

async function enter(context: Context, session: Session, days: readonly PaperDay[]): Promise<readonly PaperOutcome[]> {
  if (days.length > MOST_DAYS) throw new FailureError("too-large", `At most ${MOST_DAYS} days can be entered at once.`);
  const box = found(await session.boxes.box(), "box");
  const outcomes: PaperOutcome[] = [];
  for (const day of [...days].sort((a, b) => (a.date < b.date ? -1 : 1)))
    outcomes.push(await enterDay(context, session, box, day));
  return outcomes;
}

async function enterDay(context: Context, session: Session, box: BoxRecord, paper: PaperDay): Promise<PaperOutcome> {
  const day = await dayOn(context, session, box, paper.date);
  const due = new Map((await session.boxes.dueCards(box.id, day)).map((card) => [card.card, card]));
  const named = await cardsNumbered(session, box, [...(paper.asked ?? []), ...paper.missed, ...paper.introduced]);
  const cardOf = (number: number): CardId => found(named.get(number), `card ${printedNumber(number)}`).id;
  const fresh = [...new Set(paper.introduced.map(cardOf))];
  const isFresh = new Set(fresh);
  const missed = new Set(paper.missed.map(cardOf));
  const asked = new Set(paper.asked ? paper.asked.map(cardOf).filter((card) => !isFresh.has(card)) : due.keys());
  for (const card of missed) if (!isFresh.has(card)) asked.add(card);
  await refuseStrangers(
    session,
    box,
    named,
    [...asked].filter((card) => !due.has(card)),
    paper.date,
    day,
  );

  const nextId = await entryIds(context, session, box.id);
  const at = context.clock();
  const begin: BeginEntry = {
    id: nextId(),
    box: box.id,
    at,
    kind: "begin",
    date: paper.date,
    day,
    newCards: fresh.length,
    fresh,
  };
  await session.boxes.appendEntries([begin]);
  await session.boxes.saveSitting(box.id, { ...begin, finished: false, asked: 0, touched: 0 });
  const outcome = (card: CardId, pass: Pass, answer: OutcomeEntry["answer"]): SentEntry => {
    const { compartment = 0, bundle = 0 } = due.get(card) ?? {};
    const place = pass === "introduction" ? { compartment: 0, bundle: 0 } : { compartment, bundle };
    return {
      id: nextId(),
      box: box.id,
      at,
      kind: "outcome",
      card,
      day,
      sitting: begin.id,
      pass,
      answer,
      ...place,
      seconds: null,
    };
  };
  const visits = [...asked];
  const entries: SentEntry[] = [
    ...visits.map((card) => outcome(card, "visit", missed.has(card) ? "missed" : "recalled")),
    ...fresh.flatMap((card): SentEntry[] => [
      { id: nextId(), box: box.id, at, kind: "look", card, day, sitting: begin.id },
      ...(missed.has(card) ? [outcome(card, "introduction", "missed")] : []),
      outcome(card, "introduction", "recalled"),
    ]),
    // On paper too the missed cards are asked again until each is recalled (common practice).
    ...visits.filter((card) => missed.has(card)).map((card) => outcome(card, "second", "recalled")),
    { id: nextId(), box: box.id, at, kind: "finish", sitting: begin.id },
  ];
  for (const receipt of await recordInside(context, session, box, entries))
    if (receipt.status !== "saved") throw new FailureError("conflict", receipt.reason ?? "The box did not take this.");
  const top = compartmentCount(box.chart);
  const recalled = visits.filter((card) => !missed.has(card));
  return {
    sitting: begin.id,
    date: paper.date,
    day,
    recalled: recalled.length,
    missed: visits.length - recalled.length,
    kept: recalled.filter((card) => due.get(card)?.compartment === top).length,
    introduced: fresh.length,
    left: due.size - visits.length,
  };
}

/** Takes back everything that these sittings on paper recorded, as one step. Fails with `conflict` once anything was built on it. */
export const takeBackPaper = (context: Context, sittings: readonly EntryId[]): Promise<void> =>
  context.store.write(async (session) => {
    const box = found(await session.boxes.box(), "box");
    const left = new Set<EntryId>();
    // A day on which nothing was due has nothing to take back.
    for (const id of sittings) if ((await session.boxes.eventsOfSitting(id)).length > 0) left.add(id);
    if (left.size === 0) throw new FailureError("conflict", "There is nothing left to take back.");
    // The last thing first, as a person would undo it.
    while (left.size > 0) {
      const undo = await undoable(session, box);
      if (!undo || !left.delete(undo.sitting))
        throw new FailureError("conflict", "Something else has been recorded since. Take that back first.");
      await takeBackSitting(context, session, box, undo.sitting);
    }
  });

async function takeBackSitting(context: Context, session: Session, box: BoxRecord, sitting: EntryId): Promise<void> {
  const events = await session.boxes.eventsOfSitting(sitting);
  const nextId = await entryIds(context, session, box.id);
  const at = context.clock();
  const entries = events
    .toReversed()
    .map(({ id }): SentEntry => ({ id: nextId(), box: box.id, at, kind: "take-back", entry: id }));
  for (const receipt of await recordInside(context, session, box, entries))
    if (receipt.status !== "saved") throw new FailureError("conflict", receipt.reason ?? "It cannot be taken back.");
}

/** The newest sitting, if it was entered from paper: no answer of it was timed. */
async function undoable(session: Session, box: BoxRecord): Promise<PaperUndo | null> {
  const newest = (await session.boxes.sittings(box.id)).filter((one) => one.asked + one.touched > 0).at(-1);
  if (!newest?.finished) return null;
  const events = await session.boxes.eventsOfSitting(newest.id);
  const outcomes = events.filter((event): event is OutcomeEntry => event.kind === "outcome");
  const last = events.at(-1);
  if (outcomes.length === 0 || !last || outcomes.some((event) => event.seconds !== null)) return null;
  if (await session.boxes.cardsTouchedSince(box.id, last.id)) return null;
  return { sitting: newest.id, date: newest.date, asked: outcomes.filter((event) => event.pass === "visit").length };
}

const localToday = ({ clock }: Pick<Context, "clock">, { calendar }: BoxRecord): LocalDate =>
  localDateAt(clock(), calendar.timeZone, calendar.rollOverHour);

/** Dates that can be entered: from the last sitting on until today, the latest month of them. */
async function openDates(context: Context, session: Session, box: BoxRecord): Promise<readonly LocalDate[]> {
  const today = localToday(context, box);
  const last = await session.boxes.lastSitting(box.id, today);
  const first = last?.date ?? box.calendar.anchor.date;
  const dates: LocalDate[] = [];
  for (let date = today; date >= first && dates.length < MOST_DAYS; date = addDays(date, -1)) dates.unshift(date);
  return dates;
}

/** The box day of a date, as it was counted then. Fails with `conflict` where later days are recorded already, or with `invalid-input` for the future. */
async function dayOn(context: Context, session: Session, box: BoxRecord, date: LocalDate): Promise<BoxDay> {
  const { calendar } = box;
  const today = localToday(context, box);
  if (date > today) throw new FailureError("invalid-input", "This day is still to come.");
  if (date < calendar.anchor.date) throw new FailureError("invalid-input", "There was no box on this day yet.");
  const last = await session.boxes.lastSitting(box.id, today);
  if (!last) return boxDayOn(calendar, date, null);
  if (last.date > date) {
    throw new FailureError(
      "conflict",
      `Answers of ${last.date} are recorded already, so an earlier day can no longer be entered. Enter days in their order.`,
    );
  }
  const done = passIdleDays(calendar, date, { date: last.date, day: last.day }, await firstWork(session, box));
  return boxDayOn(calendar, date, done);
}

async function numbersOf(session: Session, cards: readonly CardId[]): Promise<ReadonlyMap<CardId, number>> {
  return new Map((await session.library.cards(cards)).map((card) => [card.id, card.number]));
}

/** Cards of the box by their numbers. Fails with `not-found` naming a number that no card has. */
async function cardsNumbered(
  { library, boxes }: Session,
  box: BoxRecord,
  numbers: readonly number[],
): Promise<ReadonlyMap<number, CardRecord>> {
  const wanted = new Set(numbers);
  const byNumber = new Map<number, CardRecord>();
  for (const subject of await boxes.subjectsInBox(box.id))
    for (const card of await library.cardsOfSubject(subject))
      if (wanted.has(card.number)) byNumber.set(card.number, card);
  const unknown = [...wanted].find((number) => !byNumber.has(number));
  if (unknown !== undefined)
    throw new FailureError("not-found", `No card of the box has the number ${printedNumber(unknown)}.`);
  return byNumber;
}

/** Cards that were not due cannot have been asked: says where the first of them lies. */
async function refuseStrangers(
  { boxes }: Session,
  box: BoxRecord,
  named: ReadonlyMap<number, CardRecord>,
  strangers: readonly CardId[],
  date: LocalDate,
  day: BoxDay,
): Promise<void> {
  const [first] = strangers;
  if (first === undefined) return;
  const number = [...named].find(([, card]) => card.id === first)?.[0] ?? 0;
  const place = (await boxes.placement(box.id, first))?.state.place;
  const where =
    place?.kind === "compartment"
      ? `it lies in compartment ${place.compartment} and is due in ${place.due - day} days`
      : place?.kind === "stock"
        ? "it is still in the stock: enter it among the new cards"
        : place?.kind === "kept"
          ? "it is kept already"
          : "it is withdrawn";
  throw new FailureError("conflict", `${printedNumber(number)} was not due on ${date}: ${where}.`);
}
