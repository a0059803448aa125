// Notes of the critique that were waved off.
import type { Kysely, Migration } from "kysely";

export const wavedNotes: Migration = {
  // biome-ignore lint/suspicious/noExplicitAny: a migration sees the tables as they were then, not as they are typed now
  async up(db: Kysely<any>) {
    await db.schema
      .createTable("waved_note")
      .addColumn("learner_id", "text", (c) => c.notNull().references("learner.id"))
      .addColumn("key", "text", (c) => c.notNull())
      .addPrimaryKeyConstraint("waved_note_key", ["learner_id", "key"])
      .execute();
  },
};
