// What the program shows: the read models that the server sends, the pages draw and the command line prints.

import type { Place } from "../core/box/placement.ts";
import type { Calendar, DayMark, MissedDayPolicy } from "../core/calendar/calendar.ts";
import type { LocalDate } from "../core/calendar/local-date.ts";
import type { Card } from "../core/cards/cards.ts";
import type { BoxDay, Chart } from "../core/chart/chart.ts";
import type { Note, Rule } from "../core/critique/note.ts";
import type { Fact, SpellingRule } from "../core/facts/fact.ts";
import type { Waiting } from "../core/load/expected.ts";
import type { Pace } from "../core/load/minutes.ts";
import type { LogEntry } from "../core/log/entry.ts";
import type { EntryId } from "../core/log/entry-id.ts";
import type { RecallCount } from "../core/recall/estimate.ts";
import type { SittingPlan } from "../core/sitting/plan.ts";
import type { SittingEvent } from "../core/sitting/sitting.ts";
import type { EditRecord, FactState } from "./ports.ts";

/** A box as it is set up now. */
export interface BoxView {
  readonly id: string;
  readonly chart: Chart;
  readonly calendar: Calendar;
  readonly newPerDay: number;
}

/** The results from paper that were entered last, in one step, as long as nothing was recorded since. */
export interface PaperUndo {
  readonly sittings: readonly EntryId[];
  /** The earliest first. */
  readonly dates: readonly LocalDate[];
  readonly asked: number;
  readonly introduced: number;
}

/** A day whose results can be entered from paper. */
export interface PaperDayView {
  /** Dates that can be entered, the earliest first: the last month of them. */
  readonly dates: readonly LocalDate[];
  /** Those of them that have answers already. */
  readonly recorded: readonly LocalDate[];
  readonly date: LocalDate;
  readonly day: BoxDay;
  /** Numbers of the cards that are due, by pile, the highest compartment first. */
  readonly piles: readonly {
    readonly compartment: number;
    readonly bundle: number;
    readonly numbers: readonly number[];
  }[];
  /** Numbers of the new cards that a sheet of this day names. */
  readonly newCards: readonly number[];
  readonly undo: PaperUndo | null;
}

/** What the results of one day on paper come to. */
export interface PaperOutcome {
  readonly sitting: EntryId;
  readonly date: LocalDate;
  readonly day: BoxDay;
  readonly recalled: number;
  readonly missed: number;
  /** Of those recalled, the ones that leave the last compartment. */
  readonly kept: number;
  readonly introduced: number;
  /** Due cards that were not asked, and stay due. */
  readonly left: number;
  /** First answers of later days that no longer count, because their cards were not due any more by then. */
  readonly overtaken: number;
}

/** A step of editing. */
export interface EditView extends EditRecord {
  readonly facts: number;
  readonly undone: boolean;
}

/** What a fact was before a step; null where the step made it. */
export interface FactVersion {
  readonly edit: EditRecord;
  readonly before: FactState | null;
}

/** How many facts a rule of the critique speaks about. */
export interface RuleCount {
  readonly rule: Rule;
  readonly facts: number;
}

/** What the critique says of a fact beside what its own words tell, and the keys of what was waved off about it. */
export interface FactNotes {
  readonly among: readonly Note[];
  readonly wavedOff: readonly string[];
}

/** A fact that cannot take a change, and why. */
export interface RefusedFact {
  readonly fact: string;
  readonly title: string;
  readonly reason: string;
}

/** What a change of many facts would do: how many it changes, some of them before and after, and those it cannot change. */
export interface BulkPreview {
  readonly changed: number;
  readonly shown: readonly { readonly before: FactState; readonly after: FactState }[];
  readonly refused: readonly RefusedFact[];
}

/** What a change of many facts did; `edit` names the step, by which it can be undone. */
export interface BulkResult {
  readonly edit: string | null;
  readonly title: string;
  readonly changed: number;
  readonly refused: readonly RefusedFact[];
}

/** What came of choosing a chart for a running box. */
export interface ChartChange {
  readonly box: BoxView;
  /** The log entry by which it can be taken back; null if the box went by this chart already and nothing was changed. */
  readonly entry: string | null;
  /** How many cards now lie in another bundle or are due on another day. */
  readonly moved: number;
}

/** A pile that is due today. */
export interface DuePile {
  readonly compartment: number;
  readonly bundle: number;
  readonly count: number;
}

/** One date on the ruler. `day` is null on rest days and, with a chart that waits, on missed days. */
export interface RulerTick {
  readonly date: LocalDate;
  readonly day: BoxDay | null;
  readonly chartDay: number | null;
  /** Highest compartment visited, 0 on a rest day. */
  readonly top: number;
  readonly rest: boolean;
  readonly sat: boolean;
  /** First answers given on a past date; on today and later dates the expected number. */
  readonly reviews: number;
}

/** What choosing a policy for missed days would mean. */
export interface PolicyPreview {
  readonly policy: MissedDayPolicy;
  /** Box day that today would be. */
  readonly today: BoxDay;
  readonly dueToday: number;
  /** Expected reviews of the next 14 practice days, today first. */
  readonly ahead: readonly number[];
}

/** A sitting of today. */
export interface SittingBrief {
  readonly id: string;
  readonly finished: boolean;
  readonly asked: number;
}

/** The Today page. `box` is null before anything was set up; then only `facts`, `demo` and `date` mean anything. */
export interface TodayView {
  readonly box: BoxView | null;
  readonly demo: boolean;
  readonly facts: number;
  readonly date: LocalDate;
  readonly day: BoxDay;
  readonly chartDay: number;
  readonly cycle: number;
  readonly restDay: boolean;
  readonly missedDays: number;
  readonly piles: readonly DuePile[];
  readonly due: number;
  readonly stock: number;
  /** New cards that a sitting begun now would introduce. */
  readonly newCards: number;
  readonly introducedToday: number;
  readonly minutes: number;
  readonly pace: Pace;
  /** Whether `pace` comes from this learner's own answers. */
  readonly paceMeasured: boolean;
  /** Chance of recall in compartment 1…K. */
  readonly recall: readonly number[];
  readonly sitting: SittingBrief | null;
  /** The newest identity in the log; identities made from now on must sort behind it. */
  readonly lastEntry: string | null;
  readonly ruler: readonly RulerTick[];
  readonly policies: readonly PolicyPreview[];
}

/** What the Plan page starts from. Without a box it plans an empty one that begins today. */
export interface PlanView {
  readonly box: BoxView | null;
  readonly calendar: Calendar;
  /** Today. */
  readonly date: LocalDate;
  /** The first date that is still ahead: today, or tomorrow once today was sat. */
  readonly from: LocalDate;
  /** The last day that is done. */
  readonly last: DayMark | null;
  /** Cards in compartments, counted by compartment and due day. */
  readonly waiting: readonly Waiting[];
  /** First answers of the newest visits, by compartment. */
  readonly visits: readonly RecallCount[];
  readonly pace: Pace;
  /** Whether `pace` comes from this learner's own answers. */
  readonly paceMeasured: boolean;
  readonly stock: number;
  /** The entry of the newest change of chart, while it can still be taken back. */
  readonly chartChange: string | null;
}

/** A sitting to be sat or resumed. */
export interface SittingView {
  readonly plan: SittingPlan;
  /** Events so far, those taken back left out. */
  readonly events: readonly SittingEvent[];
  readonly finished: boolean;
  readonly compartments: number;
  /** The newest identity in the log; identities made from now on must sort behind it. */
  readonly lastEntry: string;
}

/** What tomorrow will ask, for the closing page. */
export interface AheadView {
  readonly date: LocalDate;
  readonly reviews: number;
  readonly newCards: number;
  readonly minutes: number;
}

/** The box from above. */
export interface DrawerView {
  readonly box: BoxView;
  readonly day: BoxDay;
  readonly stock: number;
  readonly compartments: readonly {
    readonly compartment: number;
    readonly period: number;
    readonly bundles: readonly {
      readonly bundle: number;
      readonly count: number;
      /** Of these, cards due today or earlier. */
      readonly due: number;
      /** The date of the bundle's next visit, today included. */
      readonly nextVisit: LocalDate;
    }[];
  }[];
  readonly kept: number;
  readonly withdrawn: number;
}

/** A card with its place in the box; `place` is null if its subject is in no box. */
export interface PlacedCard {
  readonly card: Card;
  /** Name of its subject. */
  readonly subject: string;
  readonly place: Place | null;
  /** The card's number, as printed on paper. */
  readonly number: number;
}

/** A page of a long list; `next` continues it. */
export interface Page<T> {
  readonly items: readonly T[];
  readonly next: string | null;
  readonly total: number;
}

/** One card's whole story. */
export interface CardHistory extends PlacedCard {
  readonly fact: Fact;
  readonly dueDate: LocalDate | null;
  readonly entries: readonly (LogEntry & { readonly takenBack: boolean })[];
}

/** A subject and what it holds. */
export interface SubjectView {
  readonly id: string;
  readonly name: string;
  readonly facts: number;
  readonly cards: number;
  readonly inBox: boolean;
  /** What counts in its spellings, unless a fact says otherwise. */
  readonly spelling: SpellingRule;
}

/** What became of a change of a subject's spelling: facts that followed, and the step that undoes it for them. */
export interface SpellingChange {
  readonly changed: number;
  readonly edit: string | null;
}

/**
 * What became of a log entry that was sent. `known` is one that had arrived before; `refused` can never
 * be right; `kept-back` cannot be taken here and now, so whoever sent it should keep it.
 */
export interface Receipt {
  readonly id: string;
  readonly status: "saved" | "known" | "refused" | "kept-back";
  readonly reason: string | null;
}

/** The columns of a list of facts, in the order in which they are exported. */
export const COLUMNS = [
  "prompt",
  "answer",
  "statement",
  "note",
  "source",
  "picture",
  "story",
  "tags",
  "kind",
  "list",
  "formula",
  "spelling",
  "accents",
  "capitals",
  "regions",
  "why",
  "language",
  "picture description",
  "picture source",
  "picture licence",
  "sound",
  "angles",
] as const;

/** Columns that every list of ours has; the others are written if a fact needs them. */
export const USUAL_COLUMNS: readonly Column[] = COLUMNS.slice(0, 8);

/** A column of a list of facts. */
export type Column = (typeof COLUMNS)[number];

/** How a list is to be read; what is left out is worked out from the list itself. */
export interface ImportChoices {
  readonly encoding?: "utf-8" | "utf-16le" | "utf-16be" | "windows-1252" | undefined;
  readonly delimiter?: "," | "\t" | ";" | undefined;
  readonly header?: boolean | undefined;
  /** For each column of the list, what it holds; null to leave it out. */
  readonly columns?: readonly (Column | null)[] | undefined;
  /** A subject that exists: facts it holds already count as duplicates. */
  readonly subject?: string | undefined;
}

/** Something wrong with one row. Lines and columns count from 1. */
export interface RowProblem {
  readonly line: number;
  readonly column: number;
  readonly field: Column | null;
  readonly reason: string;
}

/** What an import would bring, before anything is saved. */
export interface ImportPreview {
  readonly encoding: NonNullable<ImportChoices["encoding"]>;
  readonly delimiter: NonNullable<ImportChoices["delimiter"]>;
  readonly header: boolean;
  readonly columns: readonly (Column | null)[];
  /** The first rows as they stand in the list, for choosing columns. */
  readonly sample: readonly (readonly string[])[];
  readonly rows: number;
  readonly good: number;
  readonly duplicates: number;
  readonly problems: readonly RowProblem[];
  /** All problems, where `problems` shows the first of many. */
  readonly problemCount: number;
  /** Cards of the first good rows, as they will look. */
  readonly cards: readonly Card[];
  readonly cardCount: number;
}

/** An import under way. */
export interface ImportStatus {
  readonly id: string;
  readonly state: "waiting" | "reading" | "saving" | "done" | "stopped" | "failed";
  readonly done: number;
  readonly total: number;
  readonly saved: number;
  readonly duplicates: number;
  readonly problems: number;
  readonly message: string | null;
  readonly subject: string | null;
  /** The step of editing that undoes it, once it is saved and there was anything to save. */
  readonly edit: string | null;
}
