// The demo box: a subject to play with and forty days of history, made by sitting every sitting through
// the real rules with a simulated learner. Pure: equal options give equal boxes.
import { applyEntry, type CardState, FRESH_CARD, type InCompartment } from "../core/box/placement.ts";
import { boxDayOn, type Calendar, type DayMark } from "../core/calendar/calendar.ts";
import { type LocalDate, localDateAt } from "../core/calendar/local-date.ts";
import { type Card, type CardId, cardsOf } from "../core/cards/cards.ts";
import type { BoxDay } from "../core/chart/chart.ts";
import { LEVELLED_CHART } from "../core/chart/make-chart.ts";
import type { Fact } from "../core/facts/fact.ts";
import { isCardEntry, type LogEntry } from "../core/log/entry.ts";
import { shuffleByKey, uniform } from "../core/random.ts";
import { type CardRef, chooseNewCards, type DueCard, planSitting } from "../core/sitting/plan.ts";
import {
  applyEvent,
  askedAs,
  nextStep,
  type SittingEvent,
  type SittingState,
  type Step,
  startSitting,
  withoutEvent,
} from "../core/sitting/sitting.ts";
import { HISTORY_DAYS, instantAt, practisedDates, restWeekdayFor } from "./demo-dates.ts";
import type { DemoFact, DemoHashes } from "./demo-fact.ts";
import { type IdMaker, seededIds } from "./demo-ids.ts";
import { createLearner, type Learner } from "./demo-learner.ts";
import { SKY_SUBJECT, skyFacts } from "./sky-facts.ts";

/** For whom and when the demo box is made. */
export interface DemoBoxOptions {
  /** Milliseconds since 1970; the history ends on the day before this one. */
  readonly now: number;
  readonly timeZone: string;
  /** The stored hash of every drawing of `demoDrawings` and sound of `demoSounds`. */
  readonly hashes: DemoHashes;
  /** Another seed makes another history. */
  readonly seed?: string;
}

/** A subject and a box with its log, ready to be stored. */
export interface DemoBox {
  readonly boxId: string;
  readonly subjectId: string;
  readonly subjectName: string;
  readonly facts: readonly Fact[];
  readonly entries: readonly LogEntry[];
}

const NEW_PER_DAY = 8;
const ROLL_OVER_HOUR = 4;
const DAY_MS = 86_400_000;
/** Sittings begin between seven and nine in the evening. */
const EVENING = { setUp: 18.8, from: 19, hours: 2 } as const;
/** Pauses in milliseconds: to turn a card over for the first time, to go on, to notice a slip of the finger. */
const PAUSE = { look: 6500, next: 1200, slip: 3000 } as const;
/** Sittings in which the learner's finger slipped, counted from 0, and at which visit. */
const SLIPS = { sittings: new Set([6, 20]), visit: 2 } as const;

type Kind = LogEntry["kind"];
type Entry<K extends Kind> = Extract<LogEntry, { kind: K }>;
/** An entry before it gets its identity and its time. */
type Draft<K extends Kind> = Omit<Entry<K>, "id" | "box" | "at">;

/** The history as it grows. */
interface History {
  readonly boxId: string;
  readonly calendar: Calendar;
  readonly seed: string;
  readonly stock: readonly Card[];
  readonly learner: Learner;
  readonly nextId: IdMaker;
  readonly entries: LogEntry[];
  readonly states: Map<CardId, CardState>;
  clock: number;
  last: DayMark | null;
}

/** Makes the demo box. Throws if a picture or sound is missing. Cost: some tens of milliseconds. */
export function buildDemoBox({ now, timeZone, hashes, seed = "night sky" }: DemoBoxOptions): DemoBox {
  const nextId = seededIds(seed);
  const made = now - (HISTORY_DAYS + 2) * DAY_MS;
  const subjectId = nextId(made);
  const asFact = ({ content, angles }: DemoFact): Fact => ({
    ...content,
    id: nextId(made),
    subject: subjectId,
    angles,
  });
  const facts = skyFacts(hashes).map(asFact);
  const today = localDateAt(now, timeZone, ROLL_OVER_HOUR);
  const history = beginHistory({
    cards: facts.flatMap(cardsOf),
    boxId: nextId(made),
    nextId,
    seed,
    timeZone,
    today,
  });
  practisedDates(history.calendar, today).forEach((date, i) => {
    sit(history, date, SLIPS.sittings.has(i));
  });
  return { boxId: history.boxId, subjectId, subjectName: SKY_SUBJECT, facts, entries: history.entries };
}

function beginHistory(options: {
  readonly cards: readonly Card[];
  readonly boxId: string;
  readonly nextId: IdMaker;
  readonly seed: string;
  readonly timeZone: string;
  readonly today: LocalDate;
}): History {
  const { cards, boxId, nextId, seed, timeZone, today } = options;
  const calendar = calendarFor(timeZone, today);
  const stock = shuffleByKey(cards, seed, (card) => card.id);
  const history: History = {
    boxId,
    calendar,
    seed,
    stock,
    learner: createLearner(stock, seed),
    nextId,
    entries: [],
    states: new Map(),
    clock: instantAt(calendar.anchor.date, EVENING.setUp, timeZone),
    last: null,
  };
  write(history, { kind: "set-up", chart: LEVELLED_CHART, calendar, newPerDay: NEW_PER_DAY, seed });
  return history;
}

function calendarFor(timeZone: string, today: LocalDate): Calendar {
  const calendar: Calendar = {
    timeZone,
    rollOverHour: ROLL_OVER_HOUR,
    restWeekdays: [restWeekdayFor(today)],
    restDates: [],
    policy: "chart-waits",
    anchor: { date: today, day: 1 },
  };
  return { ...calendar, anchor: { date: practisedDates(calendar, today)[0] ?? today, day: 1 } };
}

/** One evening from begin to finish. */
function sit(history: History, date: LocalDate, slips: boolean): void {
  const { calendar, seed } = history;
  const day = boxDayOn(calendar, date, history.last);
  history.clock = instantAt(date, EVENING.from + EVENING.hours * uniform(seed, `evening/${date}`), calendar.timeZone);
  const fresh = chooseNewCards(
    refs(history.stock.filter((card) => isInStock(history, card.id))),
    NEW_PER_DAY,
    new Set(),
  );
  const sitting = write(history, {
    kind: "begin",
    date,
    day,
    newCards: NEW_PER_DAY,
    fresh: fresh.map((ref) => ref.card),
  }).id;
  let state = startSitting(planSitting({ sitting, day, due: dueCards(history, day), fresh }));
  let slipAhead = slips;
  for (let step = nextStep(state); step.kind !== "done"; step = nextStep(state)) {
    if (slipAhead && step.kind === "visit" && state.visited.size === SLIPS.visit) {
      state = slip(history, state, step);
      slipAhead = false;
    }
    state = happen(state, step.kind === "look" ? look(history, state, step.card.card) : ask(history, state, step));
    history.clock += PAUSE.next;
  }
  write(history, { kind: "finish", sitting });
  history.last = { date, day };
}

/** The wrong key, noticed at once and taken back. */
function slip(history: History, state: SittingState, step: Extract<Step, { kind: "visit" }>): SittingState {
  const { card } = step.card;
  const { day, sitting } = state.plan;
  const { compartment, bundle } = step;
  const before = stateOf(history, card);
  history.clock += PAUSE.slip;
  const wrong = write(history, {
    kind: "outcome",
    card,
    day,
    sitting,
    pass: "visit",
    answer: "missed",
    compartment,
    bundle,
    seconds: PAUSE.slip / 1000,
  });
  history.clock += PAUSE.slip;
  write(history, { kind: "take-back", entry: wrong.id });
  history.states.set(card, before);
  return withoutEvent(happen(state, wrong), wrong.id);
}

function look(history: History, state: SittingState, card: CardId): SittingEvent {
  history.clock += PAUSE.look;
  return write(history, { kind: "look", card, day: state.plan.day, sitting: state.plan.sitting });
}

function ask(history: History, state: SittingState, step: Exclude<Step, { kind: "done" | "look" }>): SittingEvent {
  const { card } = step.card;
  const { day, sitting } = state.plan;
  const { place, since } = stateOf(history, card);
  const asked = askedAs(state, step);
  // The learner answers by where the card lies by now: a missed one in compartment 1.
  const compartment = place.kind === "compartment" ? place.compartment : 0;
  const key = `${sitting}/${card}/${state.events.length}`;
  const { answer, seconds } = history.learner({
    card,
    pass: asked.pass,
    key,
    day,
    compartment,
    wait: Math.max(1, day - since),
  });
  history.clock += Math.round(seconds * 1000);
  return write(history, { kind: "outcome", card, day, sitting, answer, ...asked, seconds });
}

/** Adds an entry to the log and, if it is about a card, to that card's state. */
function write<K extends Kind>(history: History, draft: Draft<K> & { readonly kind: K }): Entry<K> {
  const at = history.clock;
  // The compiler cannot see that a draft of one kind becomes an entry of that kind.
  const entry = { ...draft, id: history.nextId(at), box: history.boxId, at } as unknown as Entry<K>;
  history.entries.push(entry);
  if (isCardEntry(entry)) {
    history.states.set(entry.card, applyEntry(LEVELLED_CHART, stateOf(history, entry.card), entry).state);
  }
  return entry;
}

function happen(state: SittingState, event: SittingEvent): SittingState {
  const next = applyEvent(state, event);
  if (!next.ok) throw new Error(`the demo's own sitting went wrong: ${next.error}`);
  return next.value;
}

function dueCards(history: History, day: BoxDay): readonly DueCard[] {
  return refs(history.stock).flatMap((ref) => {
    const { place } = stateOf(history, ref.card);
    return isDue(place, day) ? [{ ...ref, compartment: place.compartment, bundle: place.bundle }] : [];
  });
}

const isDue = (place: CardState["place"], day: BoxDay): place is InCompartment =>
  place.kind === "compartment" && place.due <= day;
const isInStock = (history: History, card: CardId): boolean => stateOf(history, card).place.kind === "stock";
const stateOf = (history: History, card: CardId): CardState => history.states.get(card) ?? FRESH_CARD;
const refs = (cards: readonly Card[]): readonly CardRef[] => cards.map(({ id, fact }) => ({ card: id, fact }));
