// Facts to rows and back.
import type { Selectable } from "kysely";
import { FailureError } from "../app/failure.ts";
import type { FactRecord } from "../app/ports.ts";
import type { Angle, Fact, FactContent, FactExtras } from "../core/facts/fact.ts";
import { addedWords, statedWords } from "../core/facts/fact-words.ts";
import type { Tables } from "./schema.ts";

type FactRow = Selectable<Tables["fact"]>;

/** The row that keeps a fact. A picture's name stands in the `answer` column, what only new kinds have in `content`. */
export function factToRow({ fact, contentHash, search, deleted }: FactRecord, learner: string): FactRow {
  refuseUnstorable([...statedWords(fact), ...addedWords(fact), fact.language]);
  return {
    id: fact.id,
    learner_id: learner,
    subject_id: fact.subject,
    kind: fact.kind,
    prompt: fact.kind === "pair" ? fact.prompt : "",
    answer: fact.kind === "pair" ? fact.answer : fact.kind === "picture" ? fact.name : "",
    statement: fact.kind === "statement" ? fact.statement : "",
    gaps: JSON.stringify(fact.kind === "statement" ? fact.gaps : []),
    note: fact.note,
    source: fact.source,
    story: fact.story,
    why: fact.why,
    tags: JSON.stringify(fact.tags),
    language: fact.language,
    picture: fact.picture,
    picture_alt: fact.pictureAlt,
    picture_source: fact.pictureSource,
    picture_licence: fact.pictureLicence,
    sound: fact.sound,
    content: JSON.stringify(ownContent(fact)),
    angles: JSON.stringify(fact.angles),
    content_hash: contentHash,
    search,
    deleted: deleted ? 1 : 0,
  };
}

/** What has no column of its own. Named field by field: a fact may carry more than its kind says. */
function ownContent(fact: Fact): unknown {
  switch (fact.kind) {
    case "list":
      return { title: fact.title, items: fact.items, numbers: fact.numbers };
    case "formula":
      return { name: fact.name, formula: fact.formula };
    case "spelling":
      return { clue: fact.clue, word: fact.word, accents: fact.accents, letterCase: fact.letterCase };
    case "sound":
      return { name: fact.name };
    case "labelled":
      return { labels: fact.labels };
    default:
      return null;
  }
}

/** Fails on what not every database takes as text, so that all refuse the same: NUL, and halves of surrogate pairs. */
export function refuseUnstorable(texts: readonly string[]): void {
  if (!texts.some((text) => text.includes("\0") || /\p{Cs}/u.test(text))) return;
  const message = "A text holds a character that cannot be stored (NUL, or half of a character). Type it anew.";
  throw new FailureError("invalid-input", message);
}

/** The fact that a row keeps. */
export function factFromRow(row: FactRow): FactRecord {
  const fact: Fact = {
    ...contentFromRow(row),
    id: row.id,
    subject: row.subject_id,
    angles: JSON.parse(row.angles) as Angle[],
  };
  return { fact, contentHash: row.content_hash, search: row.search, deleted: row.deleted === 1 };
}

function contentFromRow(row: FactRow): FactContent {
  const extras: FactExtras = {
    note: row.note,
    source: row.source,
    story: row.story,
    why: row.why,
    tags: JSON.parse(row.tags) as string[],
    language: row.language,
    picture: row.picture,
    pictureAlt: row.picture_alt,
    pictureSource: row.picture_source,
    pictureLicence: row.picture_licence,
    sound: row.sound,
  };
  const { kind } = row;
  switch (kind) {
    case "pair":
      return { ...extras, kind, prompt: row.prompt, answer: row.answer };
    case "statement":
      return { ...extras, kind, statement: row.statement, gaps: JSON.parse(row.gaps) as number[] };
    case "picture":
      return { ...extras, kind, name: row.answer, picture: row.picture ?? "" };
    case "list":
      return { ...extras, kind, ...own<"list">(row) };
    case "formula":
      return { ...extras, kind, ...own<"formula">(row) };
    case "spelling":
      return { ...extras, kind, ...own<"spelling">(row) };
    case "sound":
      return { ...extras, kind, ...own<"sound">(row), sound: row.sound ?? "" };
    case "labelled":
      return { ...extras, kind, ...own<"labelled">(row), picture: row.picture ?? "" };
  }
}

/** What `ownContent` made of a fact of this kind. */
const own = <K extends FactContent["kind"]>(row: FactRow) =>
  JSON.parse(row.content) as Omit<Extract<FactContent, { kind: K }>, keyof FactExtras | "kind">;
