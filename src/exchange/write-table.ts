// Writes facts as a table after RFC 4180, with the columns that an import knows, so that what was written
// can be read again. Numbers of gaps are not written: they belong to a fact's history, not to its wording.
import { COLUMNS, type Column } from "../app/views.ts";
import type { FactContent, PictureHash } from "../core/facts/fact.ts";
import type { Delimiter } from "./read-table.ts";

/** How a table is written; `pictureName` gives the file name under which a picture goes with it. */
export interface WriteChoices {
  readonly delimiter?: Delimiter | undefined;
  /** Begin with a byte order mark, which some spreadsheets need to recognise UTF-8. */
  readonly mark?: boolean | undefined;
  readonly pictureName: (hash: PictureHash) => string;
}

/** The whole table as one text; see `tableLines`. */
export const writeTable = (facts: Iterable<FactContent>, choices: WriteChoices): string =>
  [...tableLines(facts, choices)].join("");

/** The table line by line, header first, each with its CRLF, for tables too long to hold. */
export function* tableLines(facts: Iterable<FactContent>, choices: WriteChoices): Generator<string, void, undefined> {
  const delimiter = choices.delimiter ?? ",";
  yield (choices.mark ? "\ufeff" : "") + writeLine(COLUMNS, delimiter);
  for (const fact of facts) {
    const cells = cellsOf(fact, choices.pictureName);
    yield writeLine(
      COLUMNS.map((column) => cells[column] ?? ""),
      delimiter,
    );
  }
}

function cellsOf(fact: FactContent, pictureName: WriteChoices["pictureName"]): Partial<Record<Column, string>> {
  const { note, source, story } = fact;
  const extras = {
    note,
    source,
    story,
    tags: fact.tags.join("; "),
    picture: fact.picture === null ? "" : pictureName(fact.picture),
  };
  switch (fact.kind) {
    case "pair":
      return { ...extras, prompt: fact.prompt, answer: fact.answer };
    case "statement":
      return { ...extras, statement: fact.statement };
    case "picture":
      return { ...extras, answer: fact.name };
  }
}

const writeLine = (cells: readonly string[], delimiter: Delimiter): string =>
  `${cells.map((cell) => quoteCell(cell.replace(/\r\n?/g, "\n"), delimiter)).join(delimiter)}\r\n`;

/** Blanks at either end are quoted too: RFC 4180 keeps them, but not every program does. */
function quoteCell(cell: string, delimiter: Delimiter): string {
  const needsQuotes = cell.includes(delimiter) || /["\n]|^\s|\s$/u.test(cell);
  return needsQuotes ? `"${cell.replaceAll('"', '""')}"` : cell;
}
