// Room for more kinds of facts, and for what every fact may carry besides.
import type { Kysely, Migration } from "kysely";

/** Columns of the table of facts: `content` holds as JSON what a kind has that no other column is made for. */
export const kinds: Migration = {
  // biome-ignore lint/suspicious/noExplicitAny: a migration sees the tables as they were then, not as they are typed now
  async up(db: Kysely<any>) {
    const texts = ["content", "why", "language", "picture_alt", "picture_source", "picture_licence"];
    for (const name of texts) {
      await db.schema
        .alterTable("fact")
        .addColumn(name, "text", (c) => c.notNull().defaultTo(""))
        .execute();
    }
    await db.schema.alterTable("fact").addColumn("sound", "text").execute();
  },
};
