// The first sheet of a spreadsheet (Office Open XML, ISO/IEC 29500) as a list. Spreadsheets come from outside: they
// are zip files, so what they claim is checked before anything is unpacked, and only the tables inside are.
import { type Unzipped, unzipSync, zipSync } from "fflate";
import { readSheet } from "read-excel-file/universal";
import { fail, ok, type Result } from "../core/result.ts";

/** How much a spreadsheet's tables may unpack to, in bytes. */
export const SPREADSHEET_LIMIT = 128 * 1024 * 1024;

/** The parts of a spreadsheet that are read: never its pictures, macros or links to elsewhere. */
const NEEDED = /^(\[Content_Types\]\.xml|_rels\/\.rels|xl\/(_rels\/)?[^/]+\.(xml|rels)|xl\/worksheets\/[^/]+\.xml)$/u;
const WORKBOOK = "xl/workbook.xml";
/** Stands for a line end inside a cell, so that every row of the sheet is one line of the list. */
const LINE_SEPARATOR = "\u2028";

/** Whether bytes are a spreadsheet: a zip file with a workbook in it. Nothing is unpacked. */
export function isSpreadsheet(bytes: Uint8Array): boolean {
  let found = false;
  try {
    unzipSync(bytes, {
      filter: ({ name }) => {
        found ||= name === WORKBOOK;
        return false;
      },
    });
  } catch {
    // What is no zip file is no spreadsheet; what is a broken one is told when it is opened.
  }
  return found;
}

/**
 * The rows of the first sheet as a list in UTF-8: row n of the sheet is line n of the list. Refused, in words: a file
 * that is broken, or whose tables unpack to more than the limit.
 */
export async function readSpreadsheet(bytes: Uint8Array): Promise<Result<Uint8Array<ArrayBuffer>, string>> {
  const parts = neededParts(bytes);
  if (!parts.ok) return parts;
  // Packed anew with true sizes and without the rest, for a reader that trusts what it is given.
  const packed = zipSync(parts.value, { level: 0 });
  try {
    const rows = await readSheet(new Uint8Array(packed).buffer);
    return ok(new TextEncoder().encode(rows.map(toLine).join("")));
  } catch (error) {
    const reason = error instanceof Error ? error.message : "unreadable";
    return fail(`The spreadsheet cannot be read (${reason}). Save the sheet as CSV, and choose that file.`);
  }
}

function neededParts(bytes: Uint8Array): Result<Unzipped, string> {
  let size = 0;
  let tooLarge = false;
  try {
    const parts = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        if (tooLarge || !NEEDED.test(name)) return false;
        size += originalSize;
        tooLarge = size > SPREADSHEET_LIMIT;
        return !tooLarge;
      },
    });
    if (tooLarge) return fail(`The spreadsheet would unpack to more than ${SPREADSHEET_LIMIT / 1024 / 1024} MB.`);
    return ok(parts);
  } catch (error) {
    const reason = error instanceof Error ? error.message : "unreadable";
    return fail(`The spreadsheet is broken (${reason}). Save it again.`);
  }
}

/** Every cell in quotes, so that whatever stands in it is no delimiter. */
const toLine = (row: readonly unknown[]): string =>
  `${row.map((cell) => (cell === null ? "" : `"${cellText(cell).replaceAll('"', '""')}"`)).join(",")}\r\n`;

/** A cell as it is read off the sheet: numbers as they are written in a program, dates as 1781-03-13. */
function cellText(value: unknown): string {
  if (value === null || value === undefined) return "";
  if (value instanceof Date)
    return value
      .toISOString()
      .replace(/T00:00:00\.000Z$/u, "")
      .replace(/:00\.000Z$/u, "");
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return String(value).replace(/\r\n?|\n/gu, LINE_SEPARATOR);
}
