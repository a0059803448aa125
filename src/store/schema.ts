// The tables, as the query builder sees them. Types are those that SQLite and PostgreSQL share:
// text, integers, doubles and bytes; lists and settings are JSON in text columns, read and written by name.
import type { Kysely } from "kysely";
import type { FactContent } from "../core/facts/fact.ts";
import type { PaperEvent } from "../core/kit/paper-state.ts";

interface LearnerTable {
  id: string;
  name: string;
}

interface SubjectTable {
  id: string;
  learner_id: string;
  name: string;
  demo: number;
  accents: string;
  letter_case: string;
}

interface FactTable {
  id: string;
  learner_id: string;
  subject_id: string;
  kind: FactContent["kind"];
  prompt: string;
  answer: string;
  statement: string;
  gaps: string;
  note: string;
  source: string;
  story: string;
  why: string;
  tags: string;
  language: string;
  picture: string | null;
  picture_alt: string;
  picture_source: string;
  picture_licence: string;
  sound: string | null;
  content: string;
  angles: string;
  content_hash: string;
  search: string;
  deleted: number;
}

interface CardTable {
  id: string;
  number: number;
  learner_id: string;
  fact_id: string;
  subject_id: string;
  angle: string;
}

interface PictureTable {
  learner_id: string;
  hash: string;
  mime: string;
  width: number;
  height: number;
  bytes: Uint8Array;
}

interface SoundTable {
  learner_id: string;
  hash: string;
  mime: string;
  bytes: Uint8Array;
}

interface BoxTable {
  id: string;
  learner_id: string;
  chart: string;
  calendar: string;
  new_per_day: number;
  seed: string;
}

interface BoxSubjectTable {
  box_id: string;
  subject_id: string;
  learner_id: string;
}

interface LogTable {
  id: string;
  box_id: string;
  learner_id: string;
  at: number;
  kind: string;
  card_id: string | null;
  sitting_id: string | null;
  day: number | null;
  pass: string | null;
  answer: string | null;
  compartment: number | null;
  bundle: number | null;
  seconds: number | null;
  target_id: string | null;
  data: string | null;
}

interface SittingTable {
  id: string;
  box_id: string;
  learner_id: string;
  date: string;
  day: number;
  new_cards: number;
  fresh: string;
  finished: number;
  asked: number;
  touched: number;
}

interface PlacementTable {
  box_id: string;
  card_id: string;
  learner_id: string;
  fact_id: string;
  place: "stock" | "compartment" | "kept" | "withdrawn";
  from_place: "stock" | "compartment" | "kept" | null;
  compartment: number;
  bundle: number;
  due: number;
  looked: number;
  since: number;
  asked_in: string | null;
  last_entry: string | null;
  stock_key: number;
}

interface EditTable {
  id: string;
  learner_id: string;
  at: number;
  title: string;
  undoes: string | null;
}

interface FactEditTable {
  edit_id: string;
  fact_id: string;
  learner_id: string;
  before: string | null;
}

interface WavedNoteTable {
  learner_id: string;
  key: string;
}

interface PrintStepTable {
  id: string;
  learner_id: string;
  at: number;
  kind: PaperEvent;
  undone: number;
}

interface PrintCardTable {
  step_id: string;
  card_id: string;
  learner_id: string;
  face: string | null;
}

/** All tables by name. */
export interface Tables {
  learner: LearnerTable;
  subject: SubjectTable;
  fact: FactTable;
  card: CardTable;
  picture: PictureTable;
  sound: SoundTable;
  box: BoxTable;
  box_subject: BoxSubjectTable;
  log: LogTable;
  sitting: SittingTable;
  placement: PlacementTable;
  edit: EditTable;
  fact_edit: FactEditTable;
  waved_note: WavedNoteTable;
  print_step: PrintStepTable;
  print_card: PrintCardTable;
}

/** The query builder, over a connection or a transaction. */
export type Db = Kysely<Tables>;

/** Rows fetched or written at once: well inside the parameter limits of both databases. */
export const BATCH = 500;

/** A box if it is this learner's, else nothing: what is asked by box never shows another learner's rows. */
export const ownBox = (db: Db, learner: string, box: string) =>
  db.selectFrom("box").select("id").where("id", "=", box).where("learner_id", "=", learner);
