// Facts to rows and back.
import type { Selectable } from "kysely";
import { FailureError } from "../app/failure.ts";
import type { FactRecord } from "../app/ports.ts";
import type { Angle, Fact, FactContent } from "../core/facts/fact.ts";
import type { Tables } from "./schema.ts";

type FactRow = Selectable<Tables["fact"]>;

/** The row that keeps a fact. A picture's name stands in the `answer` column. */
export function factToRow({ fact, contentHash, search, deleted }: FactRecord, learner: string): FactRow {
  refuseUnstorable([...wordsOf(fact), fact.note, fact.source, fact.story, ...fact.tags]);
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
    tags: JSON.stringify(fact.tags),
    picture: fact.picture,
    angles: JSON.stringify(fact.angles),
    content_hash: contentHash,
    search,
    deleted: deleted ? 1 : 0,
  };
}

const wordsOf = (fact: Fact): readonly string[] =>
  fact.kind === "pair" ? [fact.prompt, fact.answer] : [fact.kind === "statement" ? fact.statement : fact.name];

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
  const extras = { note: row.note, source: row.source, story: row.story, tags: JSON.parse(row.tags) as string[] };
  switch (row.kind) {
    case "pair":
      return { kind: "pair", prompt: row.prompt, answer: row.answer, picture: row.picture, ...extras };
    case "statement":
      return {
        kind: "statement",
        statement: row.statement,
        gaps: JSON.parse(row.gaps) as number[],
        picture: row.picture,
        ...extras,
      };
    case "picture":
      return { kind: "picture", name: row.answer, picture: row.picture ?? "", ...extras };
  }
}
