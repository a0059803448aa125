// Figures as a CSV file (RFC 4180). Cells are numbers, dates and plain names, so nothing has to be quoted.

/** A cell; a number that is not known is left empty. */
export type Cell = string | number | null;

/** A header and rows as CSV. */
export const csvText = (header: readonly string[], rows: readonly (readonly Cell[])[]): string =>
  [header, ...rows].map((row) => `${row.map(cellText).join(",")}\r\n`).join("");

/** Six decimals are more than any figure here is good for. */
function cellText(cell: Cell): string {
  if (typeof cell !== "number") return cell ?? "";
  return Number.isFinite(cell) ? String(Math.round(cell * 1e6) / 1e6) : "";
}
