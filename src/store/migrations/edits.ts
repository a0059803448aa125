// What was edited, step by step, so that every edit of a fact can be looked up and undone.
import type { Kysely, Migration } from "kysely";

export const editsStep: Migration = {
  // biome-ignore lint/suspicious/noExplicitAny: a migration sees the tables as they were then, not as they are typed now
  async up(db: Kysely<any>) {
    await db.schema
      .createTable("edit")
      .addColumn("id", "text", (c) => c.primaryKey())
      .addColumn("learner_id", "text", (c) => c.notNull().references("learner.id"))
      .addColumn("at", "bigint", (c) => c.notNull())
      .addColumn("title", "text", (c) => c.notNull())
      .addColumn("undoes", "text")
      .execute();
    await db.schema
      .createTable("fact_edit")
      .addColumn("edit_id", "text", (c) => c.notNull().references("edit.id"))
      .addColumn("fact_id", "text", (c) => c.notNull().references("fact.id"))
      .addColumn("learner_id", "text", (c) => c.notNull().references("learner.id"))
      .addColumn("before", "text")
      .addPrimaryKeyConstraint("fact_edit_key", ["edit_id", "fact_id"])
      .execute();
    await db.schema.createIndex("fact_edit_fact").on("fact_edit").columns(["fact_id", "edit_id"]).execute();
    await db.schema.createIndex("edit_undoes").on("edit").column("undoes").execute();
  },
};
