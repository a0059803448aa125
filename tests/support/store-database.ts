// What the store contract needs from a database: stores on it, and a way to look and reach past them.
import type { Context, Store } from "../../src/app/ports.ts";
import { FIRST_EVENING } from "./any-log.ts";

/** One empty database. */
export interface StoreDatabase {
  /** A store for the learner who is there from the beginning, or for another one. */
  open(learner?: string): Promise<Store>;
  /** Runs a statement behind the stores' backs. */
  run(statement: string): Promise<readonly Record<string, unknown>[]>;
  /** Closes what is open and removes the database. */
  drop(): Promise<void>;
}

/** Makes an empty database. */
export type NewDatabase = () => Promise<StoreDatabase>;

/** A context whose clock is set by hand. */
export interface TestContext extends Context {
  now: number;
}

let drawn = 0;

/** Random bytes that never come twice, the same in every run. */
function countingBytes(count: number): Uint8Array {
  const bytes = new Uint8Array(count);
  new DataView(bytes.buffer).setUint32(count - 4, ++drawn);
  return bytes;
}

/** A context on a store; its clock begins an hour before the first evening. */
export function contextOn(store: Store): TestContext {
  const context: TestContext = {
    store,
    now: FIRST_EVENING - 3_600_000,
    clock: () => context.now,
    random: countingBytes,
  };
  return context;
}

/** Adds a learner. */
export const addLearner = (database: StoreDatabase, learner: string): Promise<unknown> =>
  database.run(`insert into learner (id, name) values ('${learner}', '')`);

/** Everything in a database, table by table, rows in a fixed order. */
export async function dump(database: StoreDatabase): Promise<Readonly<Record<string, readonly string[]>>> {
  const tables = [
    "learner",
    "subject",
    "fact",
    "card",
    "picture",
    "sound",
    "box",
    "box_subject",
    "log",
    "sitting",
    "placement",
    "edit",
    "fact_edit",
    "waved_note",
    "print_step",
    "print_card",
  ];
  const all: Record<string, readonly string[]> = {};
  for (const table of tables) {
    all[table] = (await database.run(`select * from ${table}`)).map((row) => JSON.stringify(row)).sort();
  }
  return all;
}
