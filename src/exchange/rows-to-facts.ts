// One row of a list becomes one fact, or says in plain words what is wrong with it and where.
import { COLUMNS, type Column, type RowProblem } from "../app/views.ts";
import { cleanText } from "../core/facts/clean-text.ts";
import type { FactContent, PictureHash } from "../core/facts/fact.ts";
import { freshGaps, parseStatement } from "../core/facts/gaps.ts";
import { fail, ok, type Result } from "../core/result.ts";
import type { TableCell, TableRow } from "./read-table.ts";

/** Finds a picture by its bare file name (in NFC) among those that came with the list. */
export type FindPicture = (name: string) => PictureHash | null;

/** What a fact from a list may hold: characters of a text, tags, and characters of a tag. */
export const ROW_LIMITS = { text: 5_000, tags: 20, tag: 60, pictureName: 255 } as const;

/** Turns a row into a fact; `columns` says what each cell holds. Fails with everything that is wrong with the row. */
export function rowToFact(
  row: TableRow,
  columns: readonly (Column | null)[],
  findPicture: FindPicture,
): Result<FactContent, readonly RowProblem[]> {
  const reading = readFields(row, columns);
  checkLengths(reading);
  const extras = {
    note: reading.text.note,
    source: reading.text.source,
    story: reading.text.story,
    tags: readTags(reading),
    picture: readPicture(reading, findPicture),
  };
  const content = readContent(reading, extras);
  return content && reading.problems.length === 0 ? ok(content) : fail(reading.problems);
}

/** Whether a row has nothing in any cell, like the empty rows at the end of many spreadsheets. */
export const isBlankRow = (row: TableRow): boolean => row.cells.every((cell) => cell.text.trim() === "");

interface Reading {
  readonly row: TableRow;
  readonly text: Record<Column, string>;
  readonly cells: Partial<Record<Column, TableCell>>;
  readonly problems: RowProblem[];
}

type Extras = Pick<FactContent, "note" | "source" | "story" | "tags" | "picture">;

function readFields(row: TableRow, columns: readonly (Column | null)[]): Reading {
  const text = { prompt: "", answer: "", statement: "", note: "", source: "", picture: "", story: "", tags: "" };
  const reading: Reading = { row, text, cells: {}, problems: [] };
  row.cells.forEach((cell, i) => {
    const column = columns[i];
    if (column) {
      reading.text[column] = cleanText(cell.text);
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

function checkLengths(reading: Reading): void {
  for (const field of COLUMNS) {
    const { length } = reading.text[field];
    if (length <= ROW_LIMITS.text || field === "tags" || field === "picture") continue;
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

function readPicture(reading: Reading, findPicture: FindPicture): PictureHash | null {
  const name = reading.text.picture;
  if (name === "") return null;
  const refusal = refusePictureName(name);
  if (refusal !== null) {
    report(reading, "picture", refusal);
    return null;
  }
  const hash = findPicture(name);
  if (hash === null) {
    report(reading, "picture", `the picture “${name}” did not come with the list: add that file, or clear the cell`);
  }
  return hash;
}

/** A list may name pictures that came with it and nothing else: no other folder, disk or address. */
function refusePictureName(name: string): string | null {
  const advice = "write only the file's name, like moon.png, and add the file to the list";
  if (name.length > ROW_LIMITS.pictureName)
    return `the picture's name is longer than ${ROW_LIMITS.pictureName} characters: ${advice}`;
  if (/^[a-z][a-z\d+.-]+:/iu.test(name))
    return `the picture is an address, and pictures are not fetched from elsewhere: ${advice}`;
  if (/^[a-z]:/iu.test(name) || /[/\\]/u.test(name)) return `the picture's name holds a folder or a disk: ${advice}`;
  if (name.includes("..") || name.includes("\n")) return `this is not the name of a picture file: ${advice}`;
  return null;
}

function readContent(reading: Reading, extras: Extras): FactContent | null {
  const { prompt, answer, statement } = reading.text;
  if (statement !== "") {
    if (prompt === "" && answer === "") return readStatement(reading, extras);
    const field = prompt !== "" ? "prompt" : "answer";
    report(
      reading,
      field,
      `a row is either a statement or a prompt with an answer: clear the ${field}, or the statement`,
    );
    return null;
  }
  if (prompt !== "" && answer !== "") return { kind: "pair", prompt, answer, ...extras };
  const name = prompt || answer;
  if (name !== "" && reading.text.picture !== "") {
    return extras.picture === null ? null : { kind: "picture", name, ...extras, picture: extras.picture };
  }
  reportMissing(reading);
  return null;
}

function reportMissing(reading: Reading): void {
  const { prompt, answer, picture } = reading.text;
  if (prompt !== "") report(reading, "answer", "the answer is missing: write the answer that belongs to this prompt");
  else if (answer !== "")
    report(reading, "prompt", "the prompt is missing: write the prompt that asks for this answer");
  else if (picture !== "") report(reading, "answer", "the picture has no name: write what it shows as the answer");
  else
    report(
      reading,
      null,
      "there is nothing to learn in this row: write a prompt and an answer, or a statement with a [gap]",
    );
}

function readStatement(reading: Reading, extras: Extras): FactContent | null {
  const { statement } = reading.text;
  const parsed = parseStatement(statement);
  if (parsed.ok) return { kind: "statement", statement, gaps: freshGaps(statement), ...extras };
  const cell = reading.cells.statement as TableCell;
  const noGap = !/[[\]]/u.test(statement);
  const advice = ": write [ ] round what is to be asked, and \\[ or \\] where a bracket is only a bracket";
  reading.problems.push({
    ...gapPosition(cell),
    field: "statement",
    reason: noGap ? parsed.error.reason : parsed.error.reason + advice,
  });
  return null;
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
