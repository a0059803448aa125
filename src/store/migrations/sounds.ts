// Sounds, addressed by their content as pictures are.
import { type Kysely, type Migration, sql } from "kysely";

export const sounds: Migration = {
  // biome-ignore lint/suspicious/noExplicitAny: a migration sees the tables as they were then, not as they are typed now
  async up(db: Kysely<any>) {
    const bytes = db.getExecutor().adapter.supportsTransactionalDdl ? sql`bytea` : sql`blob`;
    await db.schema
      .createTable("sound")
      .addColumn("learner_id", "text", (c) => c.notNull().references("learner.id"))
      .addColumn("hash", "text", (c) => c.notNull())
      .addColumn("mime", "text", (c) => c.notNull())
      .addColumn("bytes", bytes, (c) => c.notNull())
      .addPrimaryKeyConstraint("sound_key", ["learner_id", "hash"])
      .execute();
  },
};
