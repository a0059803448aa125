// The embedded database: SQLite in one file, durable on every commit.
import Database from "better-sqlite3";
import { SqliteDialect } from "kysely";
import type { Session, Store } from "../app/ports.ts";
import { explainTrouble } from "./database-trouble.ts";
import { openKyselyStore } from "./kysely-store.ts";

/**
 * Opens (or creates) the database in `file`; ":memory:" for one that vanishes. Trouble with the file or the
 * disk, now or later, is a failure of kind `storage`.
 */
export async function openSqliteStore(file: string): Promise<Store> {
  try {
    return explained(await openKyselyStore(new SqliteDialect({ database: openDatabase(file) })), file);
  } catch (error) {
    throw explainTrouble(error, file);
  }
}

function openDatabase(file: string): Database.Database {
  const database = new Database(file);
  database.pragma("journal_mode = WAL");
  // FULL: an acknowledged outcome survives a power cut, not only a crash of the program.
  database.pragma("synchronous = FULL");
  database.pragma("foreign_keys = ON");
  database.pragma("busy_timeout = 5000");
  return database;
}

function explained(store: Store, file: string): Store {
  const run =
    (act: Store["read"]): Store["read"] =>
    async (work) => {
      // When a transaction fails, rolling it back may fail too; what went wrong first is what counts.
      let first: unknown;
      const watched = (session: Session) =>
        work(session).catch((error: unknown) => {
          first = error;
          throw error;
        });
      return act(watched).catch((error: unknown) => {
        throw explainTrouble(first ?? error, file);
      });
    };
  return { read: run(store.read), write: run(store.write), close: store.close };
}
