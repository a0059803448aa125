// What stands between the cells of a list? The delimiter that divides the first rows most evenly; a comma that
// looks like prose or like a decimal comma counts for little, and names of columns settle it.
import { columnNamed } from "./columns.ts";
import { type Delimiter, type TableRow, tableRows } from "./read-table.ts";

/** The delimiters that are tried. */
export const DELIMITERS: readonly Delimiter[] = [",", "\t", ";"];

const SAMPLE_CHARACTERS = 65_536;
const SAMPLE_ROWS = 50;
/** Below this a delimiter divides the rows too unevenly to be one. */
const LOWEST_SCORE = 0.6;
const GAP = /\[[^[\]\r\n]+\]/u;

/** The delimiter of a list, from its first rows; for a list of one column, one that does not divide it. */
export function guessDelimiter(text: string): Delimiter {
  const tried = DELIMITERS.map((delimiter) => ({ delimiter, rows: firstRows(text, delimiter) }));
  const undivided = tried.find(({ rows }) => rows.every((row) => row.cells.length === 1))?.delimiter ?? "\t";
  if (tried.every(({ rows }) => isNamedColumn(rows[0]))) return undivided;
  const scored = tried.map(({ delimiter, rows }) => ({ delimiter, score: scoreRows(delimiter, rows) }));
  const best = scored.reduce((a, b) => (b.score > a.score ? b : a));
  return best.score >= LOWEST_SCORE ? best.delimiter : undivided;
}

function firstRows(text: string, delimiter: Delimiter): TableRow[] {
  const rows: TableRow[] = [];
  for (const event of tableRows(text.slice(0, SAMPLE_CHARACTERS), delimiter)) {
    if (event.kind === "row") rows.push(event.row);
    if (rows.length > SAMPLE_ROWS) break;
  }
  // The last row of a sample may have been cut in the middle.
  return rows.length > 1 && text.length > SAMPLE_CHARACTERS ? rows.slice(0, -1) : rows;
}

const isNamedColumn = (row: TableRow | undefined): boolean =>
  row?.cells.length === 1 && columnNamed(row.cells[0]?.text ?? "") !== null;

function scoreRows(delimiter: Delimiter, rows: readonly TableRow[]): number {
  const divided = rows.filter((row) => row.cells.length > 1);
  if (divided.length === 0) return 0;
  const names = (rows[0]?.cells ?? []).filter((cell) => columnNamed(cell.text) !== null).length;
  const rowsByWidth = new Map<number, number>();
  for (const { cells } of divided) rowsByWidth.set(cells.length, (rowsByWidth.get(cells.length) ?? 0) + 1);
  const [width, most] = [...rowsByWidth].reduce((a, b) => (b[1] > a[1] ? b : a));
  const evenness = (divided.length + most) / (2 * rows.length);
  const sureness = delimiter === "\t" ? 1.2 : 0.5 + 0.5 * hardness(delimiter, rows, divided);
  return evenness * sureness + 0.01 * Math.min(width, COLUMNS_THAT_MATTER) + (names > 1 ? 1 : 0);
}

/** More columns than we know names for make a delimiter no likelier. */
const COLUMNS_THAT_MATTER = 8;

/** The share of delimiters (0 to 1) that divide cells rather than a sentence, a number or the inside of a gap. */
function hardness(delimiter: Delimiter, rows: readonly TableRow[], divided: readonly TableRow[]): number {
  const gaps = rows.filter((row) => GAP.test(row.cells.map((cell) => cell.text).join(delimiter))).length;
  const blankAfter = gaps * 2 > rows.length ? 0 : 0.5;
  let hard = 0;
  let all = 0;
  for (const { cells } of divided) {
    for (let i = 1; i < cells.length; i++) {
      const before = cells[i - 1] as TableRow["cells"][number];
      const after = cells[i] as TableRow["cells"][number];
      all++;
      if (before.quoted || after.quoted) hard += 1;
      else if (/\d$/u.test(before.text) && /^\d/u.test(after.text)) hard += 0;
      else if (/\[[^\]]*$/u.test(before.text)) hard += 0;
      else hard += /^ /u.test(after.text) ? blankAfter : 1;
    }
  }
  return hard / all;
}
