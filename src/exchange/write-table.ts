// Writes facts as a table after RFC 4180, with the columns that an import knows, so that what was written
// can be read again. Numbers of gaps are not written: they belong to a fact's history, not to its wording.
import { COLUMNS, type Column, USUAL_COLUMNS } from "../app/views.ts";
import type { PictureHash, SoundHash } from "../core/facts/fact.ts";
import { factCells, type WrittenFact } from "./fact-cells.ts";
import { disarmCell } from "./formula-cells.ts";
import type { Delimiter } from "./read-table.ts";

/** How a table is written; `fileName` gives the file name under which a picture or sound goes with it. */
export interface WriteChoices {
  readonly delimiter?: Delimiter | undefined;
  /** Begin with a byte order mark, which some spreadsheets need to recognise UTF-8. */
  readonly mark?: boolean | undefined;
  readonly fileName: (hash: PictureHash | SoundHash) => string;
}

/** The whole table as one text; see `tableLines`. */
export const writeTable = (facts: readonly WrittenFact[], choices: WriteChoices): string =>
  [...tableLines(facts, choices)].join("");

/** The table line by line, header first, each with its CRLF, for tables too long to hold. */
export function* tableLines(facts: readonly WrittenFact[], choices: WriteChoices): Generator<string, void, undefined> {
  const delimiter = choices.delimiter ?? ",";
  const columns = columnsFor(facts);
  yield (choices.mark ? "\ufeff" : "") + writeLine(columns, delimiter);
  for (const fact of facts) {
    const cells = factCells(fact, choices.fileName);
    yield writeLine(
      columns.map((column) => disarmCell(cells[column] ?? "")),
      delimiter,
    );
  }
}

/** The columns that all lists have, and those that a fact needs. */
function columnsFor(facts: readonly WrittenFact[]): readonly Column[] {
  const needed = new Set(USUAL_COLUMNS);
  for (const fact of facts)
    for (const [column, cell] of Object.entries(factCells(fact, String))) if (cell !== "") needed.add(column as Column);
  return COLUMNS.filter((column) => needed.has(column));
}

const writeLine = (cells: readonly string[], delimiter: Delimiter): string =>
  `${cells.map((cell) => quoteCell(cell.replace(/\r\n?/g, "\n"), delimiter)).join(delimiter)}\r\n`;

/** Blanks at either end are quoted too: RFC 4180 keeps them, but not every program does. */
function quoteCell(cell: string, delimiter: Delimiter): string {
  const needsQuotes = cell.includes(delimiter) || /["\n]|^\s|\s$/u.test(cell);
  return needsQuotes ? `"${cell.replaceAll('"', '""')}"` : cell;
}
