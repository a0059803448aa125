// Real SQLite files in a temporary folder.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { SqliteDialect } from "kysely";
import type { Store } from "../../src/app/ports.ts";
import { openKyselyStore } from "../../src/store/kysely-store.ts";
import { openSqliteStore } from "../../src/store/sqlite-store.ts";
import type { StoreDatabase } from "./store-database.ts";

/** An empty SQLite database in a folder of its own. */
export async function newSqliteDatabase(): Promise<StoreDatabase> {
  const folder = mkdtempSync(join(tmpdir(), "longhold-sqlite-"));
  const file = join(folder, "box.sqlite");
  const opened: Store[] = [];
  const connect = (): Database.Database => {
    const database = new Database(file);
    database.pragma("foreign_keys = ON");
    database.pragma("busy_timeout = 5000");
    return database;
  };
  return {
    async open(learner) {
      const store = await (learner === undefined
        ? openSqliteStore(file)
        : openKyselyStore(new SqliteDialect({ database: connect() }), learner));
      opened.push(store);
      return store;
    },
    async run(statement) {
      const database = connect();
      try {
        const prepared = database.prepare(statement);
        if (prepared.reader) return prepared.all() as Record<string, unknown>[];
        prepared.run();
        return [];
      } finally {
        database.close();
      }
    },
    async drop() {
      for (const store of opened) await store.close();
      rmSync(folder, { recursive: true });
    },
  };
}
