// One row of a list becomes one fact, or says in plain words what is wrong with it and where.
import { COLUMNS, type Column, type RowProblem } from "../app/views.ts";
import { cleanText } from "../core/facts/clean-text.ts";
import type { Angle, FactContent, FactExtras } from "../core/facts/fact.ts";
import { parseStatement } from "../core/facts/gaps.ts";
import { isLanguageTag } from "../core/facts/language-tag.ts";
import { fail, ok, type Result } from "../core/result.ts";
import { readAngles } from "./angle-cells.ts";
import { readDisarmed } from "./formula-cells.ts";
import type { FindMedia } from "./list-media.ts";
import { type ContentRefusal, readContent } from "./read-content.ts";
import type { TableCell, TableRow } from "./read-table.ts";

/** What a fact from a list may hold: characters of a text, tags, and characters of a tag or a file name. */
export const ROW_LIMITS = { text: 5_000, tags: 20, tag: 60, fileName: 255 } as const;

/** What a row states, and the angles that it names; null for those of its kind. */
export interface RowFact {
  readonly content: FactContent;
  readonly angles: readonly Angle[] | null;
}

/** Turns a row into a fact; `columns` says what each cell holds. Fails with everything that is wrong with the row. */
export function rowToFact(
  row: TableRow,
  columns: readonly (Column | null)[],
  findMedia: FindMedia,
): Result<RowFact, readonly RowProblem[]> {
  const reading = readFields(row, columns);
  checkLengths(reading);
  const { text } = reading;
  const extras: FactExtras = {
    note: text.note,
    source: text.source,
    story: text.story,
    why: text.why,
    tags: readTags(reading),
    language: readLanguage(reading),
    picture: readFile(reading, "picture", findMedia),
    pictureAlt: text["picture description"],
    pictureSource: text["picture source"],
    pictureLicence: text["picture licence"],
    sound: readFile(reading, "sound", findMedia),
  };
  const content = readContent(text, extras);
  if (!content.ok && !reading.problems.some(({ field }) => field !== null && field === content.error.field))
    reportContent(reading, content.error);
  const angles = content.ok ? readAngles(text.angles, content.value) : ok(null);
  if (!angles.ok) report(reading, "angles", angles.error);
  return content.ok && angles.ok && reading.problems.length === 0
    ? ok({ content: content.value, angles: angles.value })
    : fail(reading.problems);
}

/** Whether a row has nothing in any cell, like the empty rows at the end of many spreadsheets. */
export const isBlankRow = (row: TableRow): boolean => row.cells.every((cell) => cell.text.trim() === "");

interface Reading {
  readonly row: TableRow;
  readonly text: Record<Column, string>;
  readonly cells: Partial<Record<Column, TableCell>>;
  readonly problems: RowProblem[];
}

function readFields(row: TableRow, columns: readonly (Column | null)[]): Reading {
  const text = Object.fromEntries(COLUMNS.map((column) => [column, ""])) as Record<Column, string>;
  const reading: Reading = { row, text, cells: {}, problems: [] };
  row.cells.forEach((cell, i) => {
    const column = columns[i];
    if (column) {
      reading.text[column] = cleanText(readDisarmed(cell.text));
      reading.cells[column] = cell;
    } else if (i >= columns.length && cell.text.trim() !== "") {
      const reason = `this row has more cells than the list has columns (${columns.length}): put quotes ("…") round a cell that holds the sign between cells`;
      if (reading.problems.length === 0) {
        reading.problems.push({ line: cell.line, column: cell.column, field: null, reason });
      }
    }
  });
  return reading;
}

function report(reading: Reading, field: Column | null, reason: string): void {
  const cell = field === null ? undefined : reading.cells[field];
  reading.problems.push({ line: cell?.line ?? reading.row.line, column: cell?.column ?? 1, field, reason });
}

/** Cells of many parts, each with a limit of its own. */
const UNLIMITED: ReadonlySet<Column> = new Set(["tags", "picture", "sound", "list", "regions", "angles"]);

function checkLengths(reading: Reading): void {
  for (const field of COLUMNS) {
    const { length } = reading.text[field];
    if (length <= ROW_LIMITS.text || UNLIMITED.has(field)) continue;
    const most = ROW_LIMITS.text.toLocaleString("en-GB");
    const reason = `the ${field} has ${length.toLocaleString("en-GB")} characters and at most ${most} fit: shorten it, or make several facts of it`;
    report(reading, field, reason);
  }
}

function readTags(reading: Reading): readonly string[] {
  if (reading.text.tags === "") return [];
  const words = reading.text.tags.split(/[,;]/u).map((tag) => tag.replace(/\s+/gu, " ").trim());
  const tags = [...new Set(words.filter((tag) => tag !== ""))];
  const long = tags.find((tag) => tag.length > ROW_LIMITS.tag);
  if (long !== undefined) {
    const shown = `${long.slice(0, 20).replace(/\p{Cs}$/u, "")}…`;
    report(reading, "tags", `the tag “${shown}” is longer than ${ROW_LIMITS.tag} characters: shorten it`);
  }
  if (tags.length > ROW_LIMITS.tags) {
    report(reading, "tags", `there are ${tags.length} tags and a fact can have ${ROW_LIMITS.tags}: leave some out`);
  }
  return tags;
}

/** The picture or sound that a row names. */
function readFile(reading: Reading, kind: "picture" | "sound", findMedia: FindMedia): string | null {
  const name = reading.text[kind];
  if (name === "") return null;
  const refusal = refuseFileName(name, kind);
  if (refusal !== null) {
    report(reading, kind, refusal);
    return null;
  }
  const hash = findMedia[kind](name);
  if (hash === null) {
    report(reading, kind, `the ${kind} “${name}” did not come with the list: add that file, or clear the cell`);
  }
  return hash;
}

function readLanguage(reading: Reading): string {
  const { language } = reading.text;
  if (isLanguageTag(language)) return language;
  report(reading, "language", `“${language}” is not a language tag such as en or pt-BR`);
  return "";
}

/** A list may name files that came with it and nothing else: no other folder, disk or address. */
function refuseFileName(name: string, kind: "picture" | "sound"): string | null {
  const example = kind === "picture" ? "moon.png" : "vega.mp3";
  const advice = `write only the file's name, like ${example}, and add the file to the list`;
  if (name.length > ROW_LIMITS.fileName)
    return `the ${kind}'s name is longer than ${ROW_LIMITS.fileName} characters: ${advice}`;
  if (/^[a-z][a-z\d+.-]+:/iu.test(name))
    return `the ${kind} is an address, and ${kind}s are not fetched from elsewhere: ${advice}`;
  if (/^[a-z]:/iu.test(name) || /[/\\]/u.test(name)) return `the ${kind}'s name holds a folder or a disk: ${advice}`;
  if (name.includes("..") || name.includes("\n")) return `this is not the name of a ${kind} file: ${advice}`;
  return null;
}

function reportContent(reading: Reading, { field, reason, inStatement }: ContentRefusal): void {
  const cell = field === null ? undefined : reading.cells[field];
  if (!inStatement || !cell) report(reading, field, reason);
  else reading.problems.push({ ...gapPosition(cell), field, reason });
}

/** Where in the file the trouble with a statement is; where its cell starts if tidying the text moved it. */
function gapPosition(cell: TableCell): { line: number; column: number } {
  const parsed = parseStatement(cell.text);
  const at = { line: cell.line, column: cell.column };
  if (parsed.ok || parsed.error.at === 1) return at;
  if (cell.quoted) at.column++;
  for (let i = 0; i < parsed.error.at - 1; i++) {
    const c = cell.text[i];
    if (c === "\n" || (c === "\r" && cell.text[i + 1] !== "\n")) {
      at.line++;
      at.column = 1;
    } else {
      at.column += cell.quoted && c === '"' ? 2 : 1;
    }
  }
  return at;
}
