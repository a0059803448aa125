// How the database comes to its present shape. Steps are only ever added.
import { type Kysely, type Migration, type MigrationProvider, sql } from "kysely";
import { editsStep } from "./migrations/edits.ts";
import { kinds } from "./migrations/kinds.ts";
import { prints } from "./migrations/prints.ts";
import { sounds } from "./migrations/sounds.ts";
import { subjectSpelling } from "./migrations/subject-spelling.ts";
import { wavedNotes } from "./migrations/waved-notes.ts";

/** The learner that exists from the beginning; accounts will add others. */
export const LOCAL_LEARNER = "local";

// biome-ignore lint/suspicious/noExplicitAny: a migration sees the tables as they were then, not as they are typed now
type AnyDb = Kysely<any>;

// Names are quoted by the builder; big numbers (milliseconds) need 64 bits in PostgreSQL.
const first: Migration = {
  async up(db: AnyDb) {
    const { schema } = db;
    await schema
      .createTable("learner")
      .addColumn("id", "text", (c) => c.primaryKey())
      .addColumn("name", "text", (c) => c.notNull())
      .execute();
    await db.insertInto("learner").values({ id: LOCAL_LEARNER, name: "" }).execute();
    await schema
      .createTable("subject")
      .addColumn("id", "text", (c) => c.primaryKey())
      .addColumn("learner_id", "text", (c) => c.notNull().references("learner.id"))
      .addColumn("name", "text", (c) => c.notNull())
      .addColumn("demo", "integer", (c) => c.notNull())
      .execute();
    await schema
      .createTable("picture")
      .addColumn("learner_id", "text", (c) => c.notNull().references("learner.id"))
      .addColumn("hash", "text", (c) => c.notNull())
      .addColumn("mime", "text", (c) => c.notNull())
      .addColumn("width", "integer", (c) => c.notNull())
      .addColumn("height", "integer", (c) => c.notNull())
      .addColumn("bytes", bytesType(db), (c) => c.notNull())
      .addPrimaryKeyConstraint("picture_key", ["learner_id", "hash"])
      .execute();
    await createFactTables(db);
    await createBoxTables(db);
    await createIndexes(db);
  },
};

async function createFactTables(db: AnyDb): Promise<void> {
  let fact = db.schema
    .createTable("fact")
    .addColumn("id", "text", (c) => c.primaryKey())
    .addColumn("learner_id", "text", (c) => c.notNull().references("learner.id"))
    .addColumn("subject_id", "text", (c) => c.notNull().references("subject.id"));
  for (const name of ["kind", "prompt", "answer", "statement", "gaps", "note", "source", "story", "tags", "angles"]) {
    fact = fact.addColumn(name, "text", (c) => c.notNull());
  }
  await fact
    .addColumn("picture", "text")
    .addColumn("content_hash", "text", (c) => c.notNull())
    .addColumn("search", "text", (c) => c.notNull())
    .addColumn("deleted", "integer", (c) => c.notNull())
    .addForeignKeyConstraint("fact_picture", ["learner_id", "picture"], "picture", ["learner_id", "hash"])
    .execute();
  await db.schema
    .createTable("card")
    .addColumn("id", "text", (c) => c.primaryKey())
    .addColumn("number", "integer", (c) => c.notNull())
    .addColumn("learner_id", "text", (c) => c.notNull().references("learner.id"))
    .addColumn("fact_id", "text", (c) => c.notNull().references("fact.id"))
    .addColumn("subject_id", "text", (c) => c.notNull().references("subject.id"))
    .addColumn("angle", "text", (c) => c.notNull())
    // The number first: otherwise SQLite takes this index for every look-up by learner and reads all cards.
    .addUniqueConstraint("card_number", ["number", "learner_id"])
    .execute();
}

async function createBoxTables(db: AnyDb): Promise<void> {
  const { schema } = db;
  await schema
    .createTable("box")
    .addColumn("id", "text", (c) => c.primaryKey())
    .addColumn("learner_id", "text", (c) => c.notNull().references("learner.id"))
    .addColumn("chart", "text", (c) => c.notNull())
    .addColumn("calendar", "text", (c) => c.notNull())
    .addColumn("new_per_day", "integer", (c) => c.notNull())
    .addColumn("seed", "text", (c) => c.notNull())
    .execute();
  await schema
    .createTable("box_subject")
    .addColumn("box_id", "text", (c) => c.notNull().references("box.id"))
    .addColumn("subject_id", "text", (c) => c.notNull().references("subject.id"))
    .addColumn("learner_id", "text", (c) => c.notNull().references("learner.id"))
    .addPrimaryKeyConstraint("box_subject_key", ["box_id", "subject_id"])
    .execute();
  await schema
    .createTable("log")
    .addColumn("id", "text", (c) => c.primaryKey())
    .addColumn("box_id", "text", (c) => c.notNull().references("box.id"))
    .addColumn("learner_id", "text", (c) => c.notNull().references("learner.id"))
    .addColumn("at", "bigint", (c) => c.notNull())
    .addColumn("kind", "text", (c) => c.notNull())
    .addColumn("card_id", "text", (c) => c.references("card.id"))
    .addColumn("sitting_id", "text")
    .addColumn("day", "integer")
    .addColumn("pass", "text")
    .addColumn("answer", "text")
    .addColumn("compartment", "integer")
    .addColumn("bundle", "integer")
    .addColumn("seconds", "double precision")
    .addColumn("target_id", "text")
    .addColumn("data", "text")
    .execute();
  await createCacheTables(db);
}

async function createCacheTables(db: AnyDb): Promise<void> {
  const { schema } = db;
  await schema
    .createTable("sitting")
    .addColumn("id", "text", (c) => c.primaryKey())
    .addColumn("box_id", "text", (c) => c.notNull().references("box.id"))
    .addColumn("learner_id", "text", (c) => c.notNull().references("learner.id"))
    .addColumn("date", "text", (c) => c.notNull())
    .addColumn("day", "integer", (c) => c.notNull())
    .addColumn("new_cards", "integer", (c) => c.notNull())
    .addColumn("fresh", "text", (c) => c.notNull())
    .addColumn("finished", "integer", (c) => c.notNull())
    .addColumn("asked", "integer", (c) => c.notNull())
    .addColumn("touched", "integer", (c) => c.notNull())
    .execute();
  await schema
    .createTable("placement")
    .addColumn("box_id", "text", (c) => c.notNull().references("box.id"))
    .addColumn("card_id", "text", (c) => c.notNull().references("card.id"))
    .addColumn("learner_id", "text", (c) => c.notNull().references("learner.id"))
    .addColumn("fact_id", "text", (c) => c.notNull().references("fact.id"))
    .addColumn("place", "text", (c) => c.notNull())
    .addColumn("from_place", "text")
    .addColumn("compartment", "integer", (c) => c.notNull())
    .addColumn("bundle", "integer", (c) => c.notNull())
    .addColumn("due", "integer", (c) => c.notNull())
    .addColumn("looked", "integer", (c) => c.notNull())
    .addColumn("since", "integer", (c) => c.notNull())
    .addColumn("asked_in", "text")
    .addColumn("last_entry", "text")
    .addColumn("stock_key", "bigint", (c) => c.notNull())
    .addPrimaryKeyConstraint("placement_key", ["box_id", "card_id"])
    .execute();
}

async function createIndexes(db: AnyDb): Promise<void> {
  const indexes: readonly [name: string, table: string, columns: readonly string[]][] = [
    ["fact_content", "fact", ["subject_id", "content_hash"]],
    ["fact_subject", "fact", ["subject_id", "deleted", "id"]],
    ["card_fact", "card", ["fact_id"]],
    ["card_subject", "card", ["subject_id"]],
    ["log_card", "log", ["card_id", "id"]],
    ["log_sitting", "log", ["sitting_id", "id"]],
    ["log_target", "log", ["target_id"]],
    ["sitting_date", "sitting", ["box_id", "date"]],
    ["placement_due", "placement", ["box_id", "place", "due", "compartment", "bundle"]],
    ["placement_stock", "placement", ["box_id", "place", "stock_key"]],
    ["placement_part", "placement", ["box_id", "place", "compartment", "bundle", "card_id"]],
  ];
  for (const [name, table, columns] of indexes) {
    await db.schema
      .createIndex(name)
      .on(table)
      .columns([...columns])
      .execute();
  }
}

/** Raw bytes have different names in the two databases. */
const bytesType = (db: AnyDb) => (db.getExecutor().adapter.supportsTransactionalDdl ? sql`bytea` : sql`blob`);

/** All steps, by name in the order in which they run. */
export const migrations: MigrationProvider = {
  async getMigrations() {
    return {
      "0001-first": first,
      "0002-kinds": kinds,
      "0006-edits": editsStep,
      "0007-waved-notes": wavedNotes,
      "0008-sounds": sounds,
      "0009-prints": prints,
      "0010-subject-spelling": subjectSpelling,
    };
  },
};
