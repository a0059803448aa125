// A sitting as a state machine. Its state is the plan and what has happened so far; the next step
// follows from both, so a sitting that was cut off goes on from its log entries alone.
import type { CardId } from "../cards/cards.ts";
import type { Answer, LookEntry, OutcomeEntry } from "../log/entry.ts";
import type { EntryId } from "../log/entry-id.ts";
import { fail, ok, type Result } from "../result.ts";
import type { CardRef, SittingPlan } from "./plan.ts";

/** What moves a sitting on. */
export type SittingEvent = LookEntry | OutcomeEntry;

/** How far a sitting has come. */
export interface SittingState {
  readonly plan: SittingPlan;
  readonly events: readonly SittingEvent[];
  /** First answers of visited cards. */
  readonly visited: ReadonlyMap<CardId, Answer>;
  readonly looked: ReadonlySet<CardId>;
  /** New cards still to be recalled, in the order in which they are asked. */
  readonly newPile: readonly CardRef[];
  /** Missed cards still to be recalled, in the order in which they are asked. */
  readonly secondPile: readonly CardRef[];
  /** The fact that was asked last; its other cards wait their turn where they can. */
  readonly lastFact: string | null;
}

/** The one thing to do next. `left` counts the cards of this pile that remain, this one included. */
export type Step =
  | {
      readonly kind: "visit";
      readonly card: CardRef;
      readonly compartment: number;
      readonly bundle: number;
      readonly left: number;
    }
  | { readonly kind: "look"; readonly card: CardRef; readonly left: number }
  | { readonly kind: "introduce"; readonly card: CardRef; readonly left: number }
  | { readonly kind: "second"; readonly card: CardRef; readonly left: number }
  | { readonly kind: "done" };

/** A sitting in which nothing has happened yet. */
export const startSitting = (plan: SittingPlan): SittingState => ({
  plan,
  events: [],
  visited: new Map(),
  looked: new Set(),
  newPile: plan.newCards,
  secondPile: [],
  lastFact: null,
});

/**
 * What comes next: the piles from the highest compartment down; then every new card is looked at, then
 * asked in turn until each is recalled; then the second pass over the missed cards; then the end.
 */
export function nextStep(state: SittingState): Step {
  for (const pile of state.plan.piles) {
    const waiting = pile.cards.filter((ref) => !state.visited.has(ref.card));
    const card = waiting[0];
    if (card) return { kind: "visit", card, compartment: pile.compartment, bundle: pile.bundle, left: waiting.length };
  }
  const unseen = state.plan.newCards.filter((ref) => !state.looked.has(ref.card) && isNew(state, ref.card));
  if (unseen[0]) return { kind: "look", card: unseen[0], left: unseen.length };
  const fresh = firstApart(state.newPile, state.lastFact);
  if (fresh) return { kind: "introduce", card: fresh, left: state.newPile.length };
  const again = firstApart(state.secondPile, state.lastFact);
  if (again) return { kind: "second", card: again, left: state.secondPile.length };
  return { kind: "done" };
}

/** The first card of another fact than the one just asked, which would give it away; else the first. */
const firstApart = (pile: readonly CardRef[], lastFact: string | null): CardRef | undefined =>
  pile.find((ref) => ref.fact !== lastFact) ?? pile[0];

/**
 * The state after one event. The card need not be the very next one (a second window may be ahead),
 * but it must belong to the plan, and a visit is accepted only once.
 */
export function applyEvent(state: SittingState, event: SittingEvent): Result<SittingState, string> {
  const events = [...state.events, event];
  if (event.kind === "look") {
    if (!isNew(state, event.card)) return fail("this card is not among the new cards");
    return ok({ ...state, events, looked: new Set(state.looked).add(event.card) });
  }
  switch (event.pass) {
    case "visit": {
      const ref = findVisit(state.plan, event.card);
      if (!ref) return fail("this card is not in today's piles");
      if (state.visited.has(event.card)) return fail("this card has been asked already");
      const visited = new Map(state.visited).set(event.card, event.answer);
      const again = event.answer === "missed" && !ref.out;
      const secondPile = again ? [...state.secondPile, ref] : state.secondPile;
      return ok({ ...state, events, visited, secondPile, lastFact: ref.fact });
    }
    case "introduction": {
      const ref = state.newPile.find((one) => one.card === event.card);
      if (!ref) return fail("this card is not among the new cards");
      const looked = new Set(state.looked).add(event.card);
      return ok({ ...state, events, looked, newPile: askedInTurn(state.newPile, event), lastFact: ref.fact });
    }
    case "second": {
      const ref = state.secondPile.find((one) => one.card === event.card);
      if (!ref) return fail("this card is not in the second pass");
      return ok({ ...state, events, secondPile: askedInTurn(state.secondPile, event), lastFact: ref.fact });
    }
  }
}

/** The state after all of a sitting's events that were not taken back; those that do not fit are passed over. */
export function replaySitting(plan: SittingPlan, events: readonly SittingEvent[]): SittingState {
  return events.reduce((state, event) => {
    const next = applyEvent(state, event);
    return next.ok ? next.value : state;
  }, startSitting(plan));
}

/** As what a card is asked at a step, and where it lay: new cards nowhere (0), missed ones where they were visited. */
export function askedAs(
  state: SittingState,
  step: Exclude<Step, { kind: "done" | "look" }>,
): Pick<OutcomeEntry, "pass" | "compartment" | "bundle"> {
  if (step.kind === "introduce") return { pass: "introduction", compartment: 0, bundle: 0 };
  const pile = state.plan.piles.find((one) => one.cards.some((ref) => ref.card === step.card.card));
  return { pass: step.kind, compartment: pile?.compartment ?? 0, bundle: pile?.bundle ?? 0 };
}

/** The last event, which can be taken back; null at the beginning. */
export const lastEvent = (state: SittingState): SittingEvent | null => state.events.at(-1) ?? null;

/** The state as if an event had not happened. */
export const withoutEvent = (state: SittingState, id: EntryId): SittingState =>
  replaySitting(
    state.plan,
    state.events.filter((event) => event.id !== id),
  );

/** What a sitting came to. */
export interface SittingSummary {
  readonly movedUp: number;
  readonly sentBack: number;
  readonly kept: number;
  readonly introduced: number;
  /** Measured seconds of all answers; looks are not timed. */
  readonly seconds: number;
}

/** The figures of the closing page; `compartments` is the number of compartments of the chart. */
export function summarise(state: SittingState, compartments: number): SittingSummary {
  const outcomes = state.events.filter((event): event is OutcomeEntry => event.kind === "outcome");
  const visits = outcomes.filter((event) => event.pass === "visit");
  const recalled = visits.filter((event) => event.answer === "recalled");
  const kept = recalled.filter((event) => event.compartment === compartments).length;
  return {
    movedUp: recalled.length - kept,
    sentBack: visits.length - recalled.length,
    kept,
    introduced: state.plan.newCards.length - state.newPile.length,
    seconds: outcomes.reduce((sum, event) => sum + (event.seconds ?? 0), 0),
  };
}

const isNew = (state: SittingState, card: CardId): boolean => state.newPile.some((ref) => ref.card === card);

function findVisit(plan: SittingPlan, card: CardId): CardRef | undefined {
  for (const pile of plan.piles) {
    const ref = pile.cards.find((one) => one.card === card);
    if (ref) return ref;
  }
  return undefined;
}

/** Recalled: out of the pile. Missed: to its back. */
function askedInTurn(pile: readonly CardRef[], event: OutcomeEntry): readonly CardRef[] {
  const rest = pile.filter((ref) => ref.card !== event.card);
  const asked = pile.find((ref) => ref.card === event.card);
  return event.answer === "missed" && asked ? [...rest, asked] : rest;
}
