// A list of facts from bytes to facts: settles how it is written, then reads it row by row, so that whoever
// reads can show progress, stop between rows, and never holds more than one row that it does not want.
import type { Column, ImportChoices, ImportPreview, RowProblem } from "../app/views.ts";
import { type Card, cardsOf } from "../core/cards/cards.ts";
import { defaultAngles } from "../core/cards/default-angles.ts";
import { contentKey } from "../core/facts/content-key.ts";
import type { Angle, Fact, FactContent } from "../core/facts/fact.ts";
import { fail, ok, type Result } from "../core/result.ts";
import { type ColumnGuess, GUESS_ROWS, guessColumns } from "./columns.ts";
import { decodeText, type Encoding } from "./decode-text.ts";
import { guessDelimiter } from "./guess-delimiter.ts";
import type { FindMedia } from "./list-media.ts";
import { type Delimiter, type TableRow, tableRows } from "./read-table.ts";
import { isBlankRow, rowToFact } from "./rows-to-facts.ts";

/** The largest list that is read, in bytes. */
export const MAX_LIST_BYTES = 64 * 1024 * 1024;

/** The longest list that is read, in rows. */
export const MAX_LIST_ROWS = 500_000;

/** How much a preview shows. */
export const PREVIEW_LIMITS = { problems: 200, cardRows: 20, sampleRows: 10 } as const;

/** Why a list as a whole cannot be read, in words for the person who sent it. */
export interface ListRefusal {
  readonly kind: "not-text" | "too-many-bytes" | "too-many-rows" | "column-twice";
  readonly message: string;
}

/** One row that was read. `key` is the fact's `contentKey`; a duplicate says the same as the row on line `firstLine`. */
export type ListItem =
  | {
      readonly kind: "fact";
      readonly line: number;
      readonly content: FactContent;
      /** Those that the row names; null for those of its kind. */
      readonly angles: readonly Angle[] | null;
      readonly key: string;
    }
  | {
      readonly kind: "duplicate";
      readonly line: number;
      readonly firstLine: number;
      readonly content: FactContent;
      readonly key: string;
    }
  | { readonly kind: "problems"; readonly line: number; readonly problems: readonly RowProblem[] };

/** How a list turned out to be written, and its rows. */
export interface ListReader {
  readonly encoding: Encoding;
  readonly delimiter: Delimiter;
  readonly header: boolean;
  readonly columns: readonly (Column | null)[];
  /** The first rows as they stand in the list, a header included. */
  readonly sample: readonly (readonly string[])[];
  /** How many places of the file made no sense in this encoding. */
  readonly replaced: number;
  /** About how many rows `drafts` will give; never fewer than it does. */
  readonly estimatedRows: number;
  /** The rows in order, each as soon as it is read; every call starts from the top. */
  drafts(): Generator<ListItem, void, undefined>;
}

/** Settles how a list is to be read. Fails only if the list is too big, no text, or the choices contradict themselves. */
export function createListReader(
  bytes: Uint8Array,
  choices: ImportChoices,
  findMedia: FindMedia,
): Result<ListReader, ListRefusal> {
  const refusal = refuseBytes(bytes) ?? refuseColumns(choices.columns ?? []);
  if (refusal) return fail(refusal);
  const { text, encoding, replaced } = decodeText(bytes, choices.encoding);
  const delimiter = choices.delimiter ?? guessDelimiter(text);
  const estimatedRows = countLines(text);
  const first = firstRows(text, delimiter);
  const { header, columns } = settleColumns(first, choices);
  const mostRecords = MAX_LIST_ROWS + (header ? 1 : 0);
  if (estimatedRows > mostRecords && hasMoreRecords(text, delimiter, mostRecords)) return fail(tooManyRows);
  const headerLine = header ? first[0]?.line : undefined;
  return ok({
    encoding,
    delimiter,
    header,
    columns,
    sample: first.slice(0, PREVIEW_LIMITS.sampleRows).map(textsOf),
    replaced,
    estimatedRows,
    drafts: () => readDrafts({ text, delimiter, columns, headerLine, findMedia }),
  });
}

/** Reads a whole list without saving anything; `isKnown` tells which facts are there already. Time linear in the list. */
export function previewList(
  bytes: Uint8Array,
  choices: ImportChoices,
  findMedia: FindMedia,
  isKnown: (key: string) => boolean,
): Result<ImportPreview, ListRefusal> {
  const reader = createListReader(bytes, choices, findMedia);
  if (!reader.ok) return reader;
  const { encoding, delimiter, header, columns, sample } = reader.value;
  const counts = { rows: 0, good: 0, duplicates: 0, problemCount: 0, cardCount: 0 };
  const problems: RowProblem[] = [];
  const cards: Card[] = [];
  for (const item of reader.value.drafts()) {
    counts.rows++;
    if (item.kind === "problems") {
      counts.problemCount += item.problems.length;
      problems.push(...item.problems.slice(0, PREVIEW_LIMITS.problems - problems.length));
    } else if (item.kind === "duplicate" || isKnown(item.key)) {
      counts.duplicates++;
    } else {
      const fact = asFact(item);
      if (counts.good++ < PREVIEW_LIMITS.cardRows) cards.push(...cardsOf(fact));
      counts.cardCount += fact.angles.length;
    }
  }
  return ok({ encoding, delimiter, header, columns, sample, problems, cards, ...counts });
}

/** A row as a fact that is not saved; its line stands in for an identity. */
export const asFact = ({ content, line, angles }: Extract<ListItem, { kind: "fact" }>): Fact => ({
  ...content,
  id: `line-${line}`,
  subject: "",
  angles: angles ?? defaultAngles(content),
});

interface Drafting {
  readonly text: string;
  readonly delimiter: Delimiter;
  readonly columns: readonly (Column | null)[];
  readonly headerLine: number | undefined;
  readonly findMedia: FindMedia;
}

function* readDrafts({
  text,
  delimiter,
  columns,
  headerLine,
  findMedia,
}: Drafting): Generator<ListItem, void, undefined> {
  const lineByKey = new Map<string, number>();
  for (const event of tableRows(text, delimiter)) {
    if (event.kind === "problem") {
      const { row, line, column, cell, reason } = event.problem;
      yield { kind: "problems", line: row, problems: [{ line, column, field: columns[cell] ?? null, reason }] };
      continue;
    }
    const { row } = event;
    if (row.line === headerLine || isBlankRow(row)) continue;
    const fact = rowToFact(row, columns, findMedia);
    if (!fact.ok) {
      yield { kind: "problems", line: row.line, problems: fact.error };
      continue;
    }
    const { content, angles } = fact.value;
    const key = contentKey(content);
    const firstLine = lineByKey.get(key);
    if (firstLine === undefined) {
      lineByKey.set(key, row.line);
      yield { kind: "fact", line: row.line, content, angles, key };
    } else {
      yield { kind: "duplicate", line: row.line, firstLine, content, key };
    }
  }
}

const textsOf = (row: TableRow): string[] => row.cells.map((cell) => cell.text);

function firstRows(text: string, delimiter: Delimiter): TableRow[] {
  const rows: TableRow[] = [];
  for (const event of tableRows(text, delimiter)) {
    if (event.kind === "row" && !isBlankRow(event.row)) rows.push(event.row);
    if (rows.length >= GUESS_ROWS) break;
  }
  return rows;
}

function settleColumns(first: readonly TableRow[], choices: ImportChoices): ColumnGuess {
  const guess = guessColumns(first.map(textsOf), choices.header);
  return { header: guess.header, columns: choices.columns ?? guess.columns };
}

/** Files that people take for lists, by their first bytes. */
const OTHER_FILES: readonly { readonly start: string; readonly name: string }[] = [
  { start: "PK\u0003\u0004", name: "a spreadsheet, document or zip file" },
  { start: "\u00d0\u00cf\u0011\u00e0", name: "an old spreadsheet or document" },
  { start: "%PDF-", name: "a PDF" },
  { start: "\u0089PNG", name: "a picture" },
  { start: "\u00ff\u00d8\u00ff", name: "a picture" },
];

function refuseBytes(bytes: Uint8Array): ListRefusal | null {
  if (bytes.length > MAX_LIST_BYTES) {
    const size = (bytes.length / 1024 / 1024).toFixed(1);
    const message = `The list has ${size} MB, and at most ${MAX_LIST_BYTES / 1024 / 1024} MB can be read at once. Divide it into smaller lists.`;
    return { kind: "too-many-bytes", message };
  }
  const start = String.fromCharCode(...bytes.subarray(0, 8));
  const other = OTHER_FILES.find((file) => start.startsWith(file.start));
  if (!other) return null;
  const message = `This file is ${other.name}, not a list in plain text. Save the table as CSV or tab-separated text, and choose that file.`;
  return { kind: "not-text", message };
}

function refuseColumns(columns: readonly (Column | null)[]): ListRefusal | null {
  const twice = columns.find((column, i) => column !== null && columns.indexOf(column) < i);
  if (!twice) return null;
  return {
    kind: "column-twice",
    message: `Two columns are both set to “${twice}”. Choose one of them, and leave the other out.`,
  };
}

const tooManyRows: ListRefusal = {
  kind: "too-many-rows",
  message: `The list has more than ${MAX_LIST_ROWS.toLocaleString("en-GB")} rows. Divide it into smaller lists.`,
};

function hasMoreRecords(text: string, delimiter: Delimiter, most: number): boolean {
  const events = tableRows(text, delimiter);
  for (let records = 0; records <= most; records++) if (events.next().done) return false;
  return true;
}

/** Lines that are not empty: at least as many as there are records. */
function countLines(text: string): number {
  let lines = 0;
  let filled = false;
  for (let i = 0; i <= text.length; i++) {
    const c = i < text.length ? text.charCodeAt(i) : 0x0a;
    const end = c === 0x0a || c === 0x0d;
    if (end && filled) lines++;
    filled = !end;
  }
  return lines;
}
