// What a verb is, and what verbs share.
import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { FailureError } from "../app/failure.ts";
import type { Context } from "../app/ports.ts";
import { databaseFile, defaultDataFolder, holdFolder } from "../server/data-folder.ts";
import { randomBytes } from "../server/random-bytes.ts";
import { openSqliteStore } from "../store/sqlite-store.ts";

/** One option of a verb. */
export interface Option {
  readonly type: "string" | "boolean";
  readonly about: string;
}

/** What a verb is run with. */
export interface Call {
  readonly values: Readonly<Record<string, string | boolean | undefined>>;
  readonly positionals: readonly string[];
  /** Makes the error for bad usage. */
  usage(message: string): Error;
  out(text: string): void;
}

/** A verb of the command line. `run` gives the exit status. */
export interface Verb {
  readonly name: string;
  readonly about: string;
  /** What stands after the verb, if anything. */
  readonly operand?: string;
  readonly options: Readonly<Record<string, Option>>;
  run(call: Call): Promise<number>;
}

/** The option that names the data folder. */
export const DATA_OPTION: Option = { type: "string", about: `the data folder (${defaultDataFolder()})` };

/** The option for JSON instead of words. */
export const JSON_OPTION: Option = { type: "boolean", about: "print JSON" };

/** The data folder a call names. */
export function dataFolder(call: Call): string {
  const { data } = call.values;
  if (data === "") throw call.usage("--data needs the name of a folder");
  return typeof data === "string" ? resolve(data) : defaultDataFolder();
}

/** The one operand of a verb that needs it. */
export function operand(call: Call, what: string): string {
  const [one, ...more] = call.positionals;
  if (one === undefined) throw call.usage(`${what} is missing`);
  if (more.length > 0) throw call.usage(`one ${what} at a time, not also “${more[0]}”`);
  return one;
}

/** Runs work that only reads; a Longhold that is serving the same folder is not disturbed. */
export async function reading<T>(call: Call, work: (context: Context) => Promise<T>): Promise<T> {
  const file = databaseFile(dataFolder(call));
  if (!existsSync(file))
    throw new FailureError(
      "not-found",
      `There is no Longhold in ${dataFolder(call)} yet. longhold serve or longhold demo makes one.`,
    );
  return withStore(file, work);
}

/** Runs work that writes; fails with kind `in-use` while another Longhold has the folder. */
export async function writing<T>(call: Call, work: (context: Context) => Promise<T>): Promise<T> {
  const folder = holdFolder(dataFolder(call));
  try {
    return await withStore(databaseFile(folder.folder), work);
  } finally {
    folder.release();
  }
}

async function withStore<T>(file: string, work: (context: Context) => Promise<T>): Promise<T> {
  const store = await openSqliteStore(file);
  try {
    return await work({ store, clock: Date.now, random: randomBytes });
  } finally {
    await store.close();
  }
}

/** Prints a value as one JSON document. */
export const printJson = (call: Call, value: unknown): void => call.out(`${JSON.stringify(value)}\n`);
