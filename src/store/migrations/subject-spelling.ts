// What counts in the spellings of a subject.
import type { Kysely, Migration } from "kysely";

export const subjectSpelling: Migration = {
  // biome-ignore lint/suspicious/noExplicitAny: a migration sees the tables as they were then, not as they are typed now
  async up(db: Kysely<any>) {
    for (const name of ["accents", "letter_case"]) {
      await db.schema
        .alterTable("subject")
        .addColumn(name, "text", (c) => c.notNull().defaultTo("count"))
        .execute();
    }
  },
};
