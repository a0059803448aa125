// The outcome log: what happened, never changed. Everything else about a box is worked out from it.
import type { Calendar } from "../calendar/calendar.ts";
import type { LocalDate } from "../calendar/local-date.ts";
import type { CardId } from "../cards/cards.ts";
import type { BoxDay, Chart } from "../chart/chart.ts";
import type { EntryId } from "./entry-id.ts";

interface EntryBase {
  /** UUIDv7 made where the thing happened; the log is read in the order of these. */
  readonly id: EntryId;
  readonly box: string;
  /** Wall clock when it was written, milliseconds since 1970. */
  readonly at: number;
}

/** The box was set up. The first of these decides the chart; the seed shuffles the stock. */
export interface SetUpEntry extends EntryBase {
  readonly kind: "set-up";
  readonly chart: Chart;
  readonly calendar: Calendar;
  readonly newPerDay: number;
  readonly seed: string;
}

/** The calendar or the daily number of new cards was changed. */
export interface SettingsEntry extends EntryBase {
  readonly kind: "settings";
  readonly calendar: Calendar;
  readonly newPerDay: number;
}

/** From box day `day` on the box goes by another chart; `core/box/rechart.ts` says where its cards go. */
export interface ChartEntry extends EntryBase {
  readonly kind: "chart";
  readonly chart: Chart;
  readonly day: BoxDay;
}

/** Somebody sat down; the entry's own id names the sitting and seeds its shuffling. */
export interface BeginEntry extends EntryBase {
  readonly kind: "begin";
  readonly date: LocalDate;
  readonly day: BoxDay;
  /** How many new cards were wanted. */
  readonly newCards: number;
  /** The new cards that were taken from the stock for this sitting. */
  readonly fresh: readonly CardId[];
}

/** A sitting came to its closing page. */
export interface FinishEntry extends EntryBase {
  readonly kind: "finish";
  readonly sitting: EntryId;
}

interface CardEntry extends EntryBase {
  readonly card: CardId;
  readonly day: BoxDay;
}

/** A new card was turned over once, both sides seen. */
export interface LookEntry extends CardEntry {
  readonly kind: "look";
  readonly sitting: EntryId;
}

/** Why a card was asked. Only a visit is evidence of recall. */
export type Pass = "visit" | "introduction" | "second";

/** What came of asking. */
export type Answer = "recalled" | "missed";

/** A card was asked. `compartment` and `bundle` are where it lay; 0 for a new card. */
export interface OutcomeEntry extends CardEntry {
  readonly kind: "outcome";
  readonly sitting: EntryId;
  readonly pass: Pass;
  readonly answer: Answer;
  readonly compartment: number;
  readonly bundle: number;
  /** Seconds from showing the prompt to the outcome; null if it was not measured (paper). */
  readonly seconds: number | null;
}

/** A card was moved by hand, to a compartment or to the kept shelf or back to the stock. */
export interface MoveEntry extends CardEntry {
  readonly kind: "move";
  readonly to: number | "kept" | "stock";
}

/** A card was taken out of the box: by hand, or because its angle or its fact was given up. */
export interface WithdrawEntry extends CardEntry {
  readonly kind: "withdraw";
  readonly reason: "hand" | "angle" | "fact";
}

/** A withdrawn card was put back where it had been. */
export interface BringBackEntry extends CardEntry {
  readonly kind: "bring-back";
}

/** An earlier entry about a card, or a change of chart, no longer counts. */
export interface TakeBackEntry extends EntryBase {
  readonly kind: "take-back";
  readonly entry: EntryId;
}

/** The entries that move or mark a card. */
export type CardLogEntry = LookEntry | OutcomeEntry | MoveEntry | WithdrawEntry | BringBackEntry;

/** Any entry of the log. */
export type LogEntry =
  | SetUpEntry
  | SettingsEntry
  | ChartEntry
  | BeginEntry
  | FinishEntry
  | CardLogEntry
  | TakeBackEntry;

/** Whether an entry is about one card. */
export const isCardEntry = (entry: LogEntry): entry is CardLogEntry => "card" in entry;

/** What is taken back by the entries of a log. */
export const takenBackBy = (entries: Iterable<LogEntry>): ReadonlySet<EntryId> =>
  new Set([...entries].flatMap((entry) => (entry.kind === "take-back" ? [entry.entry] : [])));

/** Entries in the order in which they count: by id, each id once. */
export function inLogOrder<T extends { readonly id: EntryId }>(entries: Iterable<T>): readonly T[] {
  const byId = new Map<EntryId, T>();
  for (const entry of entries) if (!byId.has(entry.id)) byId.set(entry.id, entry);
  return [...byId.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
}
