// Which version of which card went to paper and when, and which paper cards are lost or damaged.
import type { Kysely, Migration } from "kysely";

export const prints: Migration = {
  // biome-ignore lint/suspicious/noExplicitAny: a migration sees the tables as they were then, not as they are typed now
  async up(db: Kysely<any>) {
    await db.schema
      .createTable("print_step")
      .addColumn("id", "text", (c) => c.primaryKey())
      .addColumn("learner_id", "text", (c) => c.notNull().references("learner.id"))
      .addColumn("at", "bigint", (c) => c.notNull())
      .addColumn("kind", "text", (c) => c.notNull())
      .addColumn("undone", "integer", (c) => c.notNull())
      .execute();
    await db.schema
      .createTable("print_card")
      .addColumn("step_id", "text", (c) => c.notNull().references("print_step.id"))
      .addColumn("card_id", "text", (c) => c.notNull().references("card.id"))
      .addColumn("learner_id", "text", (c) => c.notNull().references("learner.id"))
      .addColumn("face", "text")
      .addPrimaryKeyConstraint("print_card_key", ["step_id", "card_id"])
      .execute();
    await db.schema.createIndex("print_card_card").on("print_card").column("card_id").execute();
  },
};
