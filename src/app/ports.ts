// What the use cases need from outside: storage, time and randomness. Storage is asynchronous so that
// another database can stand behind it; nothing in here knows SQL.
import type { CardState } from "../core/box/placement.ts";
import type { Calendar } from "../core/calendar/calendar.ts";
import type { LocalDate } from "../core/calendar/local-date.ts";
import type { CardId } from "../core/cards/cards.ts";
import type { BoxDay, Chart } from "../core/chart/chart.ts";
import type { Angle, Fact, PictureHash, SoundHash, SpellingRule } from "../core/facts/fact.ts";
import type { Waiting } from "../core/load/expected.ts";
import type { CardLogEntry, LogEntry } from "../core/log/entry.ts";
import type { EntryId } from "../core/log/entry-id.ts";
import type { RecallCount } from "../core/recall/estimate.ts";
import type { CardRef, DueCard } from "../core/sitting/plan.ts";
import type { SittingTally } from "../core/sitting/sitting-tally.ts";
import type { Prints } from "./print-port.ts";

/** Milliseconds since 1970. */
export type Clock = () => number;

/** That many random bytes. */
export type Random = (bytes: number) => Uint8Array;

/** A subject as it is stored. */
export interface SubjectRecord {
  readonly id: string;
  readonly name: string;
  readonly demo: boolean;
  /** What counts in its spellings, unless a fact says otherwise. */
  readonly spelling: SpellingRule;
}

/** A fact as it is stored; `contentHash` finds duplicates, `search` is the folded text to look in. */
export interface FactRecord {
  readonly fact: Fact;
  readonly contentHash: string;
  readonly search: string;
  readonly deleted: boolean;
}

/** A card as it is stored: identity and number, never wording. */
export interface CardRecord {
  readonly id: CardId;
  readonly number: number;
  readonly fact: string;
  readonly subject: string;
  readonly angle: Angle;
}

/** A picture, addressed by its content. */
export interface PictureRecord {
  readonly hash: PictureHash;
  readonly mime: string;
  readonly width: number;
  readonly height: number;
  readonly bytes: Uint8Array;
}

/** A sound, addressed by its content. */
export interface SoundRecord {
  readonly hash: SoundHash;
  readonly mime: string;
  readonly bytes: Uint8Array;
}

/** A box with its settings; `seed` shuffles its stock. */
export interface BoxRecord {
  readonly id: string;
  readonly chart: Chart;
  readonly calendar: Calendar;
  readonly newPerDay: number;
  readonly seed: string;
}

/** A sitting as it is cached: what the log says of it. */
export type SittingRecord = SittingTally;

/** A card's cached place. `stockKey` is its position in the shuffled stock. */
export interface PlacementRecord {
  readonly card: CardId;
  readonly fact: string;
  readonly state: CardState;
  readonly stockKey: number;
}

/** Part of the log, and the entries of it that have been taken back. */
export interface CardEntries {
  readonly entries: readonly CardLogEntry[];
  readonly takenBack: ReadonlySet<EntryId>;
}

/** How many cards lie in one place. */
export interface PlaceCount {
  readonly place: "stock" | "compartment" | "kept" | "withdrawn";
  readonly compartment: number;
  readonly bundle: number;
  readonly count: number;
}

/** A slice of a list: at most `limit` items after the one that `after` names. */
export interface Slice {
  readonly after?: string | undefined;
  readonly limit: number;
}

/** What to look for among facts. */
export interface FactQuery extends Slice {
  readonly subject?: string | undefined;
  /** Folded words, all of which must occur. */
  readonly words: readonly string[];
  readonly tag?: string | undefined;
  /** Facts of which a card lies in this part of the box. */
  readonly place?: PlaceCount["place"] | undefined;
  readonly compartment?: number | undefined;
  /** Only these facts. */
  readonly among?: readonly string[] | undefined;
}

/** A fact as it can be gone back to. */
export type FactState = Pick<FactRecord, "fact" | "deleted">;

/** A step of editing: one fact reworded, or many changed at once. `undoes` names the step that it takes back. */
export interface EditRecord {
  /** UUIDv7, later than that of every earlier step. */
  readonly id: string;
  readonly at: number;
  /** What was done, in words. */
  readonly title: string;
  readonly undoes: string | null;
}

/** What a fact was before a step; null if the step made it. */
export interface FactBefore {
  readonly fact: string;
  readonly before: FactState | null;
}

/** Which part of the box to list. */
export interface PlaceQuery extends Slice {
  readonly place: PlaceCount["place"];
  readonly compartment?: number | undefined;
  readonly bundle?: number | undefined;
}

/** Subjects, facts, cards and pictures of one learner. */
export interface Library {
  subjects(): Promise<readonly SubjectRecord[]>;
  /** Facts of each subject that has any, or the cards from which they are asked; facts put away left out. */
  countBySubject(what: "fact" | "card"): Promise<ReadonlyMap<string, number>>;
  subject(id: string): Promise<SubjectRecord | null>;
  saveSubject(subject: SubjectRecord): Promise<void>;
  removeSubject(id: string): Promise<void>;
  fact(id: string): Promise<FactRecord | null>;
  facts(ids: readonly string[]): Promise<readonly FactRecord[]>;
  findFacts(query: FactQuery): Promise<{ readonly items: readonly Fact[]; readonly total: number }>;
  /** The identities of all facts that fit, newest first; `limit` and `after` as in any slice. */
  findFactIds(query: FactQuery): Promise<readonly string[]>;
  /** Tags of facts not deleted, with how many facts have each, most used first. */
  tagsOf(subject: string): Promise<ReadonlyMap<string, number>>;
  /** Facts of a subject, not deleted, in the order in which they came. */
  eachFact(subject: string): AsyncIterable<Fact>;
  /** Facts of a subject that could be the same as one with this content hash. */
  factsByContent(subject: string, contentHash: string): Promise<readonly Fact[]>;
  contentHashes(subject: string): Promise<ReadonlySet<string>>;
  addFacts(facts: readonly FactRecord[]): Promise<void>;
  /** Saves facts that are there already, each named once. */
  updateFacts(facts: readonly FactRecord[]): Promise<void>;
  cards(ids: readonly CardId[]): Promise<readonly CardRecord[]>;
  cardsOfFact(fact: string): Promise<readonly CardRecord[]>;
  /** By number. */
  cardsOfFacts(facts: readonly string[]): Promise<readonly CardRecord[]>;
  cardsOfSubject(subject: string): Promise<readonly CardRecord[]>;
  addCards(cards: readonly CardRecord[]): Promise<void>;
  /** Puts a fact's cards into another subject. */
  moveCards(fact: string, subject: string): Promise<void>;
  lastCardNumber(): Promise<number>;
  picture(hash: PictureHash): Promise<PictureRecord | null>;
  hasPicture(hash: PictureHash): Promise<boolean>;
  pictureHashes(): Promise<ReadonlySet<PictureHash>>;
  addPicture(picture: PictureRecord): Promise<void>;
  sound(hash: SoundHash): Promise<SoundRecord | null>;
  hasSound(hash: SoundHash): Promise<boolean>;
  soundHashes(): Promise<ReadonlySet<SoundHash>>;
  addSound(sound: SoundRecord): Promise<void>;
}

/** The boxes of one learner, their logs, and what is cached from the logs. */
export interface Boxes {
  /** The learner's box; null before it is set up. */
  box(): Promise<BoxRecord | null>;
  saveBox(box: BoxRecord): Promise<void>;
  removeBox(id: string): Promise<void>;
  /** Takes a subject out of a box as if it had never been in it: its cards' places and entries go too. */
  forgetSubject(box: string, subject: string): Promise<void>;
  subjectsInBox(box: string): Promise<readonly string[]>;
  addSubjectToBox(box: string, subject: string): Promise<void>;

  entry(id: EntryId): Promise<LogEntry | null>;
  appendEntries(entries: readonly LogEntry[]): Promise<void>;
  /** Everything about these cards in log order, and which of it has been taken back. */
  entriesOfCards(box: string, cards: readonly CardId[]): Promise<CardEntries>;
  /** Everything about a sitting in log order, its begin and the take-backs included. */
  entriesOfSitting(sitting: EntryId): Promise<readonly LogEntry[]>;
  /** All entries of these kinds, none of them about a card, in log order. */
  entriesOfKind(box: string, kinds: readonly Exclude<LogEntry, CardLogEntry>["kind"][]): Promise<readonly LogEntry[]>;
  /** Look and outcome entries of a sitting in log order, those taken back left out. */
  eventsOfSitting(sitting: EntryId): Promise<readonly CardLogEntry[]>;
  /** Of these entries, the ones that have been taken back. */
  takenBack(ids: readonly EntryId[]): Promise<ReadonlySet<EntryId>>;
  /** Whether a change of chart that stands came after this entry. */
  chartChangedSince(box: string, entry: EntryId): Promise<boolean>;
  /**
   * Whether anything that stands has happened to a card since this entry. Answers of sittings begun before it do not count
   * or, where sittings are named, answers of those.
   */
  cardsTouchedSince(box: string, entry: EntryId, apartFrom?: readonly EntryId[]): Promise<boolean>;
  /** Cards about which there is any entry behind this one. */
  cardsSince(box: string, entry: EntryId): Promise<readonly CardId[]>;
  /** The newest identity in the log; null if it is empty. */
  lastEntryId(box: string): Promise<EntryId | null>;
  countEntries(box: string): Promise<number>;
  /** Everything in the log, in order. */
  eachEntry(box: string): AsyncIterable<LogEntry>;
  /** The newest first answers of visits, counted by sitting and compartment: at most `limit`. */
  recentVisits(box: string, limit: number): Promise<readonly SittingRecall[]>;
  /** Measured seconds of the newest outcomes, by what was asked: at most `limit` outcomes are read. */
  recentSeconds(
    box: string,
    limit: number,
  ): Promise<readonly { readonly sort: keyof MeasuredSeconds; readonly seconds: number }[]>;

  sitting(id: EntryId): Promise<SittingRecord | null>;
  saveSitting(box: string, sitting: SittingRecord): Promise<void>;
  sittings(box: string): Promise<readonly SittingRecord[]>;
  sittingsBetween(box: string, from: LocalDate, to: LocalDate): Promise<readonly SittingRecord[]>;
  /** The last sitting in which anything happened, before or on a date. */
  lastSitting(box: string, until: LocalDate): Promise<SittingRecord | null>;
  removeSittings(box: string): Promise<void>;

  placement(box: string, card: CardId): Promise<PlacementRecord | null>;
  placements(box: string, cards: readonly CardId[]): Promise<readonly PlacementRecord[]>;
  savePlacement(box: string, placement: PlacementRecord): Promise<void>;
  /** As `savePlacement` for many at once; all of them must be there already. */
  savePlacements(box: string, placements: readonly PlacementRecord[]): Promise<void>;
  addPlacements(box: string, placements: readonly PlacementRecord[]): Promise<void>;
  eachPlacement(box: string): AsyncIterable<PlacementRecord>;
  /** The earliest due day of any card in a compartment; null if there is none. */
  firstDue(box: string): Promise<BoxDay | null>;
  duePiles(box: string, day: BoxDay): Promise<readonly PlaceCount[]>;
  dueCards(box: string, day: BoxDay): Promise<readonly DueCard[]>;
  /** Cards in the stock in their shuffled order. */
  stock(box: string, limit: number): Promise<readonly CardRef[]>;
  countStock(box: string): Promise<number>;
  countPlaces(box: string): Promise<readonly PlaceCount[]>;
  /** Cards in compartments, counted by compartment and due day. */
  waiting(box: string): Promise<readonly Waiting[]>;
  placed(box: string, query: PlaceQuery): Promise<readonly PlacementRecord[]>;
}

/** What one learner edited. */
export interface Edits {
  addEdit(edit: EditRecord, facts: readonly FactBefore[]): Promise<void>;
  edit(id: string): Promise<EditRecord | null>;
  lastEditId(): Promise<string | null>;
  factsOfEdit(id: string): Promise<readonly FactBefore[]>;
  /** Of the facts that a step changed, those changed again since. */
  editedSince(edit: string): Promise<ReadonlySet<string>>;
  /** The steps that changed a fact, newest first. */
  editsOfFact(fact: string): Promise<readonly { readonly edit: EditRecord; readonly before: FactState | null }[]>;
  /** Keys of notes that are not to be shown any more. */
  wavedOff(): Promise<ReadonlySet<string>>;
  waveOff(keys: readonly string[]): Promise<void>;
  bringBackNotes(keys: readonly string[]): Promise<void>;
  /** The newest steps first. */
  recentEdits(
    limit: number,
  ): Promise<readonly { readonly edit: EditRecord; readonly facts: number; readonly undone: boolean }[]>;
}

/** Seconds by what was asked. */
export interface MeasuredSeconds {
  readonly recalled: number;
  readonly missed: number;
  readonly fresh: number;
}

/** First answers in one compartment in one sitting. */
export interface SittingRecall extends RecallCount {
  readonly sitting: EntryId;
}

/** One learner's storage, within one consistent view. */
export interface Session {
  readonly library: Library;
  readonly boxes: Boxes;
  readonly edits: Edits;
  readonly prints: Prints;
}

/** Storage. `write` resolves only when everything in it is durable, or throws and nothing has changed. */
export interface Store {
  read<T>(work: (session: Session) => Promise<T>): Promise<T>;
  write<T>(work: (session: Session) => Promise<T>): Promise<T>;
  close(): Promise<void>;
}

/** What every use case is given. */
export interface Context {
  readonly store: Store;
  readonly clock: Clock;
  readonly random: Random;
}
