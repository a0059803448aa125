// Reads a table of cells after RFC 4180, and every other mix of line ends and delimiters that people have.
// A reader of our own, because a library cannot go on after an unclosed quote and say on which line and
// column the trouble is. Time is linear in the text, whatever is in it (see `abandonRow`).

/** What may stand between two cells. */
export type Delimiter = "," | "\t" | ";";

/** One cell and where it starts; lines count from 1, columns are 1-based UTF-16 code units of that line. */
export interface TableCell {
  readonly text: string;
  readonly line: number;
  readonly column: number;
  readonly quoted: boolean;
}

/** One record; `line` is the first of its lines. */
export interface TableRow {
  readonly line: number;
  readonly cells: readonly TableCell[];
}

/** Why the record that starts on line `row` was left out, and where the trouble is; `cell` counts from 0. */
export interface TableProblem {
  readonly row: number;
  readonly line: number;
  readonly column: number;
  readonly cell: number;
  readonly reason: string;
}

/** What reading one record gives: the record, or the first thing wrong with it. */
export type TableEvent =
  | { readonly kind: "row"; readonly row: TableRow }
  | { readonly kind: "problem"; readonly problem: TableProblem };

/** The longest cell that is read, in UTF-16 code units. */
export const MAX_CELL = 20_000;

interface Scan {
  readonly text: string;
  readonly delimiter: number;
  pos: number;
  line: number;
  lineStart: number;
}

type Trouble = Omit<TableProblem, "row" | "cell">;

interface ScannedCell extends TableCell {
  readonly trouble?: Trouble;
  /** Set when the rest of the record cannot be trusted and reading went on at the next line. */
  readonly abandoned?: boolean;
}

/** No table that somebody wrote has more columns; a row that does is something else. */
const MAX_CELLS = 1_000;
const TOO_MANY_CELLS = `this row has more than ${MAX_CELLS} cells: check what stands between its cells`;

const QUOTE = 0x22;
const LF = 0x0a;
const CR = 0x0d;
const TAB = 0x09;
const SPACE = 0x20;

/** All records of a text, and all problems; see `tableRows`. */
export function readTable(text: string, delimiter: Delimiter): { rows: TableRow[]; problems: TableProblem[] } {
  const rows: TableRow[] = [];
  const problems: TableProblem[] = [];
  for (const event of tableRows(text, delimiter)) {
    if (event.kind === "row") rows.push(event.row);
    else problems.push(event.problem);
  }
  return { rows, problems };
}

/** Reads one record at a time, in order, as a row or a problem; empty lines are skipped. CRLF, LF and CR end lines. */
export function* tableRows(text: string, delimiter: Delimiter): Generator<TableEvent, void, undefined> {
  const scan: Scan = { text, delimiter: delimiter.charCodeAt(0), pos: 0, line: 1, lineStart: 0 };
  while (scan.pos < text.length) {
    if (!skipLineEnd(scan)) yield readRecord(scan);
  }
}

function readRecord(scan: Scan): TableEvent {
  const line = scan.line;
  const cells: TableCell[] = [];
  let problem: TableProblem | undefined;
  for (let more = true; more; ) {
    const cell = scan.text.charCodeAt(scan.pos) === QUOTE ? readQuoted(scan) : readPlain(scan);
    const trouble = cell.trouble ?? tooLong(cell);
    if (trouble) problem ??= { ...trouble, row: line, cell: cells.length };
    if (cells.length < MAX_CELLS) cells.push(cell);
    else problem ??= { line, column: 1, reason: TOO_MANY_CELLS, row: line, cell: 0 };
    more = !cell.abandoned && scan.text.charCodeAt(scan.pos) === scan.delimiter;
    if (more) scan.pos++;
  }
  skipLineEnd(scan);
  return problem ? { kind: "problem", problem } : { kind: "row", row: { line, cells } };
}

function readPlain(scan: Scan): ScannedCell {
  const start = scan.pos;
  skipToCellEnd(scan);
  return {
    text: scan.text.slice(start, scan.pos),
    line: scan.line,
    column: start - scan.lineStart + 1,
    quoted: false,
  };
}

function readQuoted(scan: Scan): ScannedCell {
  const start = scan.pos;
  const { line } = scan;
  const column = start - scan.lineStart + 1;
  const close = closingQuote(scan.text, start + 1);
  if (close < 0 || !endsCell(scan, close + 1)) {
    if (close < 0 || hasLineEnd(scan.text, start, close)) return abandonRow(scan, line, column);
  }
  const raw = scan.text.slice(start + 1, close);
  countLines(scan, start + 1, close);
  scan.pos = skipBlanks(scan, close + 1);
  const at = { line: scan.line, column: scan.pos - scan.lineStart + 1 };
  const after = scan.pos;
  skipToCellEnd(scan);
  const cell = { text: raw.includes('"') ? raw.replaceAll('""', '"') : raw, line, column, quoted: true };
  if (scan.pos === after) return cell;
  const reason = 'there is text after a closing quote ("): a quote sign inside a quoted cell is written twice, like ""';
  return { ...cell, trouble: { ...at, reason } };
}

/**
 * Gives up a record whose quote is not closed, or is "closed" lines later in the middle of other text, and goes on
 * at the line after the one with the quote. Nothing before that quote is read again, and behind it every run of
 * quotes up to where the search ended is even, so that a quote opened there closes at once: no text is searched
 * more than twice.
 */
function abandonRow(scan: Scan, line: number, column: number): ScannedCell {
  while (scan.pos < scan.text.length && !isLineEnd(scan.text.charCodeAt(scan.pos))) scan.pos++;
  const reason = 'a quote (") opens here and is never closed: close it, or write "" if a quote sign is meant';
  return { text: "", line, column, quoted: true, abandoned: true, trouble: { line, column, reason } };
}

function tooLong(cell: TableCell): Trouble | undefined {
  if (cell.text.length <= MAX_CELL) return undefined;
  const reason = `this cell has ${count(cell.text.length)} characters and at most ${count(MAX_CELL)} can be read: divide it`;
  return { line: cell.line, column: cell.column, reason };
}

const count = (n: number): string => n.toLocaleString("en-GB");

/** The position of the quote that closes a cell, or -1. A doubled quote is text. */
function closingQuote(text: string, from: number): number {
  let at = text.indexOf('"', from);
  while (at >= 0 && text.charCodeAt(at + 1) === QUOTE) at = text.indexOf('"', at + 2);
  return at;
}

const isLineEnd = (c: number): boolean => c === LF || c === CR;

function skipToCellEnd(scan: Scan): void {
  const { text, delimiter } = scan;
  let at = scan.pos;
  while (at < text.length) {
    const c = text.charCodeAt(at);
    if (c === delimiter || c === LF || c === CR) break;
    at++;
  }
  scan.pos = at;
}

/** Blanks after a closing quote are no text of anybody's. */
function skipBlanks(scan: Scan, from: number): number {
  let at = from;
  for (let c = scan.text.charCodeAt(at); c === SPACE || (c === TAB && c !== scan.delimiter); ) {
    c = scan.text.charCodeAt(++at);
  }
  return at;
}

function endsCell(scan: Scan, from: number): boolean {
  const at = skipBlanks(scan, from);
  const c = scan.text.charCodeAt(at);
  return at >= scan.text.length || c === scan.delimiter || isLineEnd(c);
}

function hasLineEnd(text: string, from: number, to: number): boolean {
  for (let i = from; i < to; i++) if (isLineEnd(text.charCodeAt(i))) return true;
  return false;
}

function countLines(scan: Scan, from: number, to: number): void {
  for (let i = from; i < to; i++) {
    const c = scan.text.charCodeAt(i);
    if (c === LF || (c === CR && scan.text.charCodeAt(i + 1) !== LF)) {
      scan.line++;
      scan.lineStart = i + 1;
    }
  }
}

function skipLineEnd(scan: Scan): boolean {
  const c = scan.text.charCodeAt(scan.pos);
  if (!isLineEnd(c)) return false;
  scan.pos += c === CR && scan.text.charCodeAt(scan.pos + 1) === LF ? 2 : 1;
  scan.line++;
  scan.lineStart = scan.pos;
  return true;
}
