import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { afterAll, beforeAll, expect, test } from "vitest";
import { FailureError } from "../app/failure.ts";
import { explainTrouble } from "./database-trouble.ts";

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "longhold-trouble-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What SQLite itself throws. */
function thrown(work: () => unknown): unknown {
  try {
    work();
  } catch (error) {
    return error;
  }
  throw new Error("nothing was thrown");
}

const words = (error: unknown): string => {
  const explained = explainTrouble(error, "box.sqlite");
  expect(explained).toBeInstanceOf(FailureError);
  expect((explained as FailureError).failure.kind).toBe("storage");
  return (explained as FailureError).failure.message;
};

test("a database that may not grow is a full disk", () => {
  const database = new Database(join(folder, "full.sqlite"));
  database.exec("create table t (x blob)");
  database.pragma("max_page_count = 10");
  const error = thrown(() => database.prepare("insert into t values (?)").run(new Uint8Array(1_000_000)));
  expect(words(error)).toBe(
    "The database box.sqlite: The disk is full, so nothing was saved. Make room and try again.",
  );
  database.close();
});

test("a database opened for reading may not be written", () => {
  const file = join(folder, "read.sqlite");
  new Database(file).exec("create table t (x)").close();
  const database = new Database(file, { readonly: true });
  expect(words(thrown(() => database.exec("insert into t values (1)")))).toContain("may not be written");
  database.close();
});

test("a file of something else is damaged, and a folder that is not there cannot be opened", () => {
  const file = join(folder, "text.sqlite");
  writeFileSync(file, "Vega, Altair and Deneb make the summer triangle. ".repeat(100));
  expect(words(thrown(() => new Database(file).pragma("journal_mode = WAL")))).toContain("damaged");
  expect(words(thrown(() => new Database(join(folder, "none", "x.sqlite"))))).toContain("cannot be opened");
});

test("a binding that is missing or made for another Node is named, with what to run", () => {
  const missing = new Error("Could not locate the bindings file. Tried: …");
  const foreign = Object.assign(new Error("was compiled against a different Node.js version"), {
    code: "ERR_DLOPEN_FAILED",
  });
  for (const error of [missing, foreign]) expect(words(error)).toContain("npm rebuild better-sqlite3");
});

test("anything else stays what it is", () => {
  const failure = new FailureError("conflict", "There is a subject of this name.");
  expect(explainTrouble(failure, "box.sqlite")).toBe(failure);
  const bug = new TypeError("x is not a function");
  expect(explainTrouble(bug, "box.sqlite")).toBe(bug);
});
