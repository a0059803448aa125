// What goes wrong with a database file, in words for the person whose box it is.
import { FailureError } from "../app/failure.ts";

const WORDS: readonly (readonly [code: RegExp, words: string])[] = [
  [/FULL|cannot rollback - no transaction/, "The disk is full, so nothing was saved. Make room and try again."],
  [/READONLY/, "It may not be written. Check who owns the folder and its files."],
  [/CANTOPEN|directory does not exist/, "It cannot be opened. Check that the folder exists and may be written."],
  [/NOTADB|CORRUPT/, "The file is damaged. Put a copy that you kept in its place."],
  [/IOERR/, "The disk did not do what it was asked. Check the disk, then try again."],
  [/BUSY|LOCKED/, "Another program holds the database. Close it and try again."],
  [
    /bindings file|DLOPEN_FAILED/,
    "The part of Longhold that reads it was not built for this Node. Run “npm rebuild better-sqlite3”; if npm holds back its install script, allow it first.",
  ],
  [/corrupted migrations/, "It was written by a newer Longhold. Install that version or a newer one."],
];

/** The error, or a failure of kind `storage` that says what is wrong with `file` and what to do. */
export function explainTrouble(error: unknown, file: string): unknown {
  if (!(error instanceof Error) || error instanceof FailureError) return error;
  const code = "code" in error && typeof error.code === "string" ? error.code : "";
  const known = WORDS.find(([pattern]) => pattern.test(code) || pattern.test(error.message));
  return known ? new FailureError("storage", `The database ${file}: ${known[1]}`) : error;
}
