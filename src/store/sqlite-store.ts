// The embedded database: SQLite in one file, durable on every commit.
import Database from "better-sqlite3";
import { SqliteDialect } from "kysely";
import type { Store } from "../app/ports.ts";
import { openKyselyStore } from "./kysely-store.ts";

/** Opens (or creates) the database in `file`; ":memory:" for one that vanishes. */
export function openSqliteStore(file: string): Promise<Store> {
  const database = new Database(file);
  database.pragma("journal_mode = WAL");
  // FULL: an acknowledged outcome survives a power cut, not only a crash of the program.
  database.pragma("synchronous = FULL");
  database.pragma("foreign_keys = ON");
  database.pragma("busy_timeout = 5000");
  return openKyselyStore(new SqliteDialect({ database }));
}
