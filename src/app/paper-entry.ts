// One day on paper as a sitting in the log.
import type { ChartTimeline } from "../core/box/chart-timeline.ts";
import { passedOver } from "../core/box/fold-log.ts";
import { applyEntry, type CardState } from "../core/box/placement.ts";
import type { LocalDate } from "../core/calendar/local-date.ts";
import { printedNumber } from "../core/cards/card-number.ts";
import type { CardId } from "../core/cards/cards.ts";
import { compartmentCount } from "../core/chart/chart.ts";
import { groupBy } from "../core/lists.ts";
import type { BeginEntry, CardLogEntry, FinishEntry, LookEntry, OutcomeEntry, Pass } from "../core/log/entry.ts";
import type { DueCard } from "../core/sitting/plan.ts";
import { tallySittings } from "../core/sitting/sitting-tally.ts";
import { type BoxThen, boxOn } from "./box-then.ts";
import { chartsOf } from "./charts.ts";
import { FailureError, found } from "./failure.ts";
import type { BoxRecord, CardEntries, CardRecord, Context, Session } from "./ports.ts";
import { REFUSALS } from "./record.ts";
import { replayPlacements } from "./replay.ts";
import type { PaperOutcome } from "./views.ts";

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

/** The cards of a day, told apart. */
interface Day {
  readonly visits: readonly CardId[];
  readonly fresh: readonly CardId[];
  readonly missed: ReadonlySet<CardId>;
}

/**
 * Records a day, at its date's place in the log; `at` is the moment of writing. Fails with `not-found` for a number that
 * no card has and `conflict` for a card that cannot have been asked, naming it; the caller's transaction is to be given
 * up then.
 */
export async function enterDay(
  context: Context,
  session: Session,
  box: BoxRecord,
  { at, ...paper }: PaperDay & { readonly at: number },
): Promise<PaperOutcome> {
  const then = await boxOn(context, session, box, paper.date);
  const due = new Map((await then.places.dueCards(box.id, then.day)).map((card) => [card.card, card]));
  const named = await cardsNumbered(session, box, [...(paper.asked ?? []), ...paper.missed, ...paper.introduced]);
  const day = tellApart(paper, due, named);
  const begin: BeginEntry = {
    id: then.begin,
    box: box.id,
    at,
    kind: "begin",
    date: paper.date,
    day: then.day,
    newCards: day.fresh.length,
    fresh: day.fresh,
  };
  const events = eventsOf(begin, then, due, day);
  await refuseImpossible(box, then, named, events, paper.date);
  const finish: FinishEntry = { id: then.nextId(), box: box.id, at, kind: "finish", sitting: begin.id };
  const overtaken = await append(session, box, [begin, ...events, finish]);
  const top = compartmentCount(then.box.chart);
  const recalled = day.visits.filter((card) => !day.missed.has(card));
  return {
    sitting: begin.id,
    date: paper.date,
    day: then.day,
    recalled: recalled.length,
    missed: day.visits.length - recalled.length,
    kept: recalled.filter((card) => due.get(card)?.compartment === top).length,
    introduced: day.fresh.length,
    left: due.size - day.visits.length,
    overtaken,
  };
}

function tellApart(paper: PaperDay, due: ReadonlyMap<CardId, DueCard>, named: ReadonlyMap<number, CardRecord>): Day {
  const cardOf = (number: number): CardId => found(named.get(number), `card ${printedNumber(number)}`).id;
  const fresh = new Set(paper.introduced.map(cardOf));
  const missed = new Set(paper.missed.map(cardOf));
  const asked = new Set([...(paper.asked ? paper.asked.map(cardOf) : due.keys()), ...missed]);
  return { visits: [...asked].filter((card) => !fresh.has(card)), fresh: [...fresh], missed };
}

function eventsOf(
  { id: sitting, box, at, day }: BeginEntry,
  { nextId }: BoxThen,
  due: ReadonlyMap<CardId, DueCard>,
  { visits, fresh, missed }: Day,
): readonly CardLogEntry[] {
  const outcome = (card: CardId, pass: Pass, answer: OutcomeEntry["answer"]): OutcomeEntry => {
    const { compartment = 0, bundle = 0 } = due.get(card) ?? {};
    const common = { id: nextId(), box, at, kind: "outcome", card, day, sitting, pass, answer, seconds: null } as const;
    return { ...common, compartment, bundle };
  };
  const look = (card: CardId): LookEntry => ({ id: nextId(), box, at, kind: "look", card, day, sitting });
  return [
    ...visits.map((card) => outcome(card, "visit", missed.has(card) ? "missed" : "recalled")),
    ...fresh.flatMap((card) => [
      look(card),
      ...(missed.has(card) ? [outcome(card, "introduction", "missed")] : []),
      outcome(card, "introduction", "recalled"),
    ]),
    // On paper too the missed cards are asked again until each is recalled (common practice).
    ...visits.filter((card) => missed.has(card)).map((card) => outcome(card, "second", "recalled")),
  ];
}

/** Appends a sitting, and lets its cards and its counts follow; resolves to how many later answers it puts out of force. */
async function append(
  session: Session,
  box: BoxRecord,
  entries: readonly [BeginEntry, ...(CardLogEntry | FinishEntry)[]],
): Promise<number> {
  const { boxes } = session;
  const charts = await chartsOf(session, box);
  const cards = [...new Set(entries.flatMap((entry) => ("card" in entry ? [entry.card] : [])))];
  const before = answersPassedOver(charts, await boxes.entriesOfCards(box.id, cards));
  await boxes.appendEntries(entries);
  const after = answersPassedOver(charts, await boxes.entriesOfCards(box.id, cards));
  const placements = await boxes.placements(box.id, cards);
  await boxes.savePlacements(box.id, await replayPlacements(session, box, charts, placements));
  for (const tally of tallySittings(entries)) await boxes.saveSitting(box.id, tally);
  return [...after].filter((answer) => !before.has(answer)).length;
}

/** Answers for the record, and introductions, that stand and yet count for nothing: one of a card and a sitting. */
function answersPassedOver(charts: ChartTimeline, { entries, takenBack }: CardEntries): ReadonlySet<string> {
  const answers = new Set<string>();
  for (const own of groupBy(entries, ({ card }) => card).values()) {
    const over = passedOver(charts, own, takenBack);
    for (const entry of own)
      if (over.has(entry.id) && entry.kind === "outcome" && entry.pass !== "second")
        answers.add(`${entry.card} ${entry.sitting}`);
  }
  return answers;
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

/** Cards that were not due cannot have been asked: names the first of them and where it lay. */
async function refuseImpossible(
  box: BoxRecord,
  then: BoxThen,
  named: ReadonlyMap<number, CardRecord>,
  events: readonly CardLogEntry[],
  date: LocalDate,
): Promise<void> {
  const numbers = new Map([...named].map(([number, { id }]) => [id, number]));
  for (const [card, own] of groupBy(events, (event) => event.card)) {
    const name = printedNumber(numbers.get(card) ?? 0);
    let state = (await then.places.placement(box.id, card))?.state;
    if (!state) throw new FailureError("conflict", `${name} was not in the box on ${date}.`);
    for (const event of own) {
      const { state: next, ignored } = applyEntry(then.box.chart, state, event);
      if (ignored === "not-due" || ignored === "not-in-box" || ignored === "withdrawn")
        throw new FailureError("conflict", `${name} was not due on ${date}: ${whereabouts(state, then)}.`);
      if (ignored !== null) throw new FailureError("conflict", `${name} on ${date}: ${REFUSALS[ignored]}`);
      state = next;
    }
  }
}

function whereabouts({ place }: CardState, { day }: BoxThen): string {
  switch (place.kind) {
    case "compartment":
      return `it lies in compartment ${place.compartment} and is due in ${inDays(place.due - day)}`;
    case "stock":
      return "it is still in the stock: enter it among the new cards";
    case "kept":
      return "it is kept already";
    case "withdrawn":
      return "it is withdrawn";
  }
}

const inDays = (n: number): string => (n === 1 ? "1 day" : `${n} days`);
