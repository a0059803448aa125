// The storage port over a query builder: one learner's view of one database.
import { type Dialect, Kysely, Migrator } from "kysely";
import type { Session, Store } from "../app/ports.ts";
import { createBoxes } from "./box-store.ts";
import { createEdits } from "./edit-store.ts";
import { createLibrary } from "./library-store.ts";
import { LOCAL_LEARNER, migrations } from "./migrations.ts";
import { createPrints } from "./print-store.ts";
import type { Db, Tables } from "./schema.ts";

/** Brings the database up to date and opens it for a learner. Throws if a migration fails. */
export async function openKyselyStore(dialect: Dialect, learner: string = LOCAL_LEARNER): Promise<Store> {
  const db = new Kysely<Tables>({ dialect });
  try {
    await migrate(db);
  } catch (error) {
    await db.destroy();
    throw error;
  }
  const session = (over: Db): Session => ({
    library: createLibrary(over, learner),
    boxes: createBoxes(over, learner),
    edits: createEdits(over, learner),
    prints: createPrints(over, learner),
  });
  return {
    // A transaction for reading too: a view made of several queries must see one moment. SQLite always does.
    read: (work) =>
      db
        .transaction()
        .setIsolationLevel("repeatable read")
        .execute((transaction) => work(session(transaction))),
    write: (work) =>
      db.transaction().execute(async (transaction) => {
        await takeTurn(transaction, learner);
        return work(session(transaction));
      }),
    close: () => db.destroy(),
  };
}

/** Holds the learner's row, so that writes for one learner come one after another on every database. */
async function takeTurn(db: Db, learner: string): Promise<void> {
  await db
    .updateTable("learner")
    .set(({ ref }) => ({ name: ref("name") }))
    .where("id", "=", learner)
    .execute();
}

async function migrate(db: Db): Promise<void> {
  const { error } = await new Migrator({ db, provider: migrations }).migrateToLatest();
  if (error) throw error;
}
