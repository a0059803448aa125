// Spreadsheets take a cell that begins with certain signs for a formula and work it out. Such cells are written with
// the apostrophe that makes them text there (common practice, as OWASP describes for CSV injection), and read without.

const STARTS_FORMULA = /^'*[=+\-@\t\r＝＋－＠]/u;
const ARMED_AGAIN = /^'+[=+\-@\t\r＝＋－＠]/u;
/** A number is no formula, whatever its sign. */
const NUMBER = /^[+-]?\d[\d.,]*(e[+-]?\d+)?$/iu;

/** A cell that no spreadsheet works out. */
export const disarmCell = (cell: string): string =>
  STARTS_FORMULA.test(cell) && !NUMBER.test(cell) ? `'${cell}` : cell;

/** The cell as it was before `disarmCell`. */
export const readDisarmed = (cell: string): string => (ARMED_AGAIN.test(cell) ? cell.slice(1) : cell);
