// Where a card is, and how an entry moves it. The rules are those of a paper box with compartments.
import { arrival, type BoxDay, type Chart, compartmentCount } from "../chart/chart.ts";
import type { CardLogEntry, OutcomeEntry } from "../log/entry.ts";
import type { EntryId } from "../log/entry-id.ts";

/** Made, but not yet introduced. */
export interface InStock {
  readonly kind: "stock";
}

/** In a bundle of a compartment, to be asked on box day `due`. */
export interface InCompartment {
  readonly kind: "compartment";
  readonly compartment: number;
  readonly bundle: number;
  readonly due: BoxDay;
}

/** Recalled in the last compartment: long-term. */
export interface Kept {
  readonly kind: "kept";
}

/** Out of the box; `from` is where it goes when it is brought back. */
export interface Withdrawn {
  readonly kind: "withdrawn";
  readonly from: InStock | InCompartment | Kept;
}

/** The one place a card is in. */
export type Place = InStock | InCompartment | Kept | Withdrawn;

/** A card's place and what is needed to judge its next entry. */
export interface CardState {
  readonly place: Place;
  /** Both sides have been seen at a first look. */
  readonly looked: boolean;
  /** Box day on which it arrived at its place, however charts have changed since; 0 before it was introduced. */
  readonly since: BoxDay;
  /** The sitting in which it was last asked for the record or introduced. */
  readonly askedIn: EntryId | null;
  /** The newest entry that was read for this card, counted or not. */
  readonly lastEntry: EntryId | null;
}

/** A card that has no entries yet. */
export const FRESH_CARD: CardState = {
  place: { kind: "stock" },
  looked: false,
  since: 0,
  askedIn: null,
  lastEntry: null,
};

/** Whether the state changed because of an entry, or why the entry does not count. */
export interface Applied {
  readonly state: CardState;
  /** Why the entry does not count; null if it does. */
  readonly ignored: "asked-already" | "not-due" | "not-in-box" | "not-in-stock" | "no-such-place" | "withdrawn" | null;
}

/** One entry later. Entries must come in log order and must not have been taken back. */
export function applyEntry(chart: Chart, state: CardState, entry: CardLogEntry): Applied {
  const seen = { ...state, lastEntry: entry.id };
  switch (entry.kind) {
    case "look":
      return counted({ ...seen, looked: true });
    case "outcome":
      return applyOutcome(chart, seen, entry);
    case "move": {
      if (seen.place.kind === "withdrawn") return { state: seen, ignored: "withdrawn" };
      const place = placeFor(chart, entry.to, entry.day);
      if (!place) return { state: seen, ignored: "no-such-place" };
      return counted({ ...seen, place, since: entry.day, looked: seen.looked || entry.to !== "stock" });
    }
    case "withdraw":
      if (seen.place.kind === "withdrawn") return { state: seen, ignored: "withdrawn" };
      return counted({ ...seen, place: { kind: "withdrawn", from: seen.place } });
    case "bring-back":
      if (seen.place.kind !== "withdrawn") return { state: seen, ignored: "not-in-box" };
      return counted({ ...seen, place: seen.place.from });
  }
}

function applyOutcome(chart: Chart, state: CardState, entry: OutcomeEntry): Applied {
  if (entry.pass === "second") return counted(state);
  if (state.place.kind === "withdrawn") return { state, ignored: "withdrawn" };
  if (entry.pass === "introduction") {
    if (state.place.kind !== "stock") return { state, ignored: "not-in-stock" };
    if (entry.answer === "missed") return counted({ ...state, looked: true });
    return counted(arrive(chart, { ...state, looked: true, askedIn: entry.sitting }, 1, entry.day));
  }
  if (state.place.kind !== "compartment") return { state, ignored: "not-in-box" };
  if (state.askedIn === entry.sitting) return { state, ignored: "asked-already" };
  if (state.place.due > entry.day) return { state, ignored: "not-due" };
  const asked = { ...state, askedIn: entry.sitting };
  if (entry.answer === "missed") return counted(arrive(chart, asked, 1, entry.day));
  if (state.place.compartment < compartmentCount(chart)) {
    return counted(arrive(chart, asked, state.place.compartment + 1, entry.day));
  }
  return counted({ ...asked, place: { kind: "kept" }, since: entry.day });
}

const counted = (state: CardState): Applied => ({ state, ignored: null });

const arrive = (chart: Chart, state: CardState, compartment: number, day: BoxDay): CardState => ({
  ...state,
  place: { kind: "compartment", compartment, ...arrival(chart, compartment, day) },
  since: day,
});

function placeFor(chart: Chart, to: number | "kept" | "stock", day: BoxDay): InStock | InCompartment | Kept | null {
  if (to === "kept" || to === "stock") return { kind: to };
  if (!Number.isInteger(to) || to < 1 || to > compartmentCount(chart)) return null;
  return { kind: "compartment", compartment: to, ...arrival(chart, to, day) };
}
