// A table of days on paper: one row for each, with the numbers that stand on its sheet.
import { isLocalDate, type LocalDate } from "../core/calendar/local-date.ts";
import { fail, ok, type Result } from "../core/result.ts";
import { DELIMITERS } from "./guess-delimiter.ts";
import { type Delimiter, readTable, type TableRow } from "./read-table.ts";

/** Columns of the table; only `date` has to be there. */
const PAPER_COLUMNS = ["date", "missed", "introduced", "piles"] as const;

type PaperColumn = (typeof PAPER_COLUMNS)[number];

/** One row, its numbers as they were typed. */
export interface PaperRow {
  readonly line: number;
  readonly date: LocalDate;
  readonly missed: string;
  readonly introduced: string;
  readonly piles: string;
}

/** Reads the rows of a table, or says what is wrong with the first of them that cannot be right, and on which line. */
export function readPaperDays(text: string): Result<readonly PaperRow[], string> {
  const { rows, problems } = readTable(text, delimiterOf(text));
  const [problem] = problems;
  if (problem) return fail(`line ${problem.line}, column ${problem.column}: ${problem.reason}`);
  const [header, ...days] = rows;
  const columns = namesIn(header);
  if (!columns.every(isColumn) || !columns.includes("date"))
    return fail(`the first line names the columns: date, and any of ${PAPER_COLUMNS.slice(1).join(", ")}`);
  // The second of two would be passed over, and its missed cards taken for recalled.
  const twice = columns.find((name, i) => columns.indexOf(name) < i);
  if (twice !== undefined) return fail(`two columns are named ${twice}`);
  const read: PaperRow[] = [];
  for (const row of days.filter(isFilled)) {
    const day = readRow(row, columns);
    if (!day.ok) return day;
    if (read.some(({ date }) => date === day.value.date))
      return fail(`line ${row.line}: ${day.value.date} is there twice`);
    read.push(day.value);
  }
  return ok(read);
}

const namesIn = (row: TableRow | undefined): readonly string[] =>
  (row?.cells ?? []).map((cell) => cell.text.trim().toLowerCase());

/** Spreadsheets write rows of empty cells below a table. */
const isFilled = ({ cells }: TableRow): boolean => cells.some(({ text }) => text.trim() !== "");

const isColumn = (name: string): name is PaperColumn => PAPER_COLUMNS.some((known) => known === name);

/** What stands between the names of the columns. */
function delimiterOf(text: string): Delimiter {
  const [header = ""] = text.trimStart().split(/[\r\n]/u, 1);
  return DELIMITERS.find((one) => namesIn(readTable(header, one).rows[0]).every(isColumn)) ?? ",";
}

function readRow({ line, cells }: TableRow, columns: readonly PaperColumn[]): Result<PaperRow, string> {
  if (cells.length > columns.length)
    return fail(`line ${line}: more cells than columns; put numbers with commas between them into quotation marks`);
  const cell = (name: PaperColumn): string => cells[columns.indexOf(name)]?.text.trim() ?? "";
  const date = cell("date");
  if (!isLocalDate(date)) return fail(`line ${line}: “${date}” is no day such as 2026-03-14`);
  return ok({ line, date, missed: cell("missed"), introduced: cell("introduced"), piles: cell("piles") });
}
