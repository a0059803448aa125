// Edits of facts, with what each fact was before.
import type { EditRecord, Edits, FactBefore, FactState } from "../app/ports.ts";
import { batches } from "../core/lists.ts";
import { BATCH, type Db } from "./schema.ts";

/** The edits of `learner`. */
export function createEdits(db: Db, learner: string): Edits {
  const own = () => db.selectFrom("edit").selectAll().where("learner_id", "=", learner);
  return {
    async addEdit({ id, at, title, undoes }: EditRecord, facts: readonly FactBefore[]) {
      await db.insertInto("edit").values({ id, learner_id: learner, at, title, undoes }).execute();
      for (const batch of batches(facts, BATCH)) {
        const rows = batch.map(({ fact, before }) => ({
          edit_id: id,
          fact_id: fact,
          learner_id: learner,
          before: before && JSON.stringify(before),
        }));
        await db.insertInto("fact_edit").values(rows).execute();
      }
    },
    async edit(id) {
      const row = await own().where("id", "=", id).executeTakeFirst();
      return row ? toEdit(row) : null;
    },
    async lastEditId() {
      const row = await own().orderBy("id", "desc").limit(1).executeTakeFirst();
      return row?.id ?? null;
    },
    async factsOfEdit(id) {
      const rows = await db
        .selectFrom("fact_edit")
        .select(["fact_id", "before"])
        .where("edit_id", "=", id)
        .where("learner_id", "=", learner)
        .orderBy("fact_id")
        .execute();
      return rows.map((row) => ({ fact: row.fact_id, before: toState(row.before) }));
    },
    async editedSince(edit) {
      const rows = await db
        .selectFrom("fact_edit as then")
        .innerJoin("fact_edit as later", "later.fact_id", "then.fact_id")
        .select("then.fact_id")
        .distinct()
        .where("then.edit_id", "=", edit)
        .where("then.learner_id", "=", learner)
        .where("later.edit_id", ">", edit)
        .execute();
      return new Set(rows.map((row) => row.fact_id));
    },
    async editsOfFact(fact) {
      const rows = await db
        .selectFrom("fact_edit")
        .innerJoin("edit", "edit.id", "fact_edit.edit_id")
        .selectAll("edit")
        .select("fact_edit.before")
        .where("fact_edit.fact_id", "=", fact)
        .where("fact_edit.learner_id", "=", learner)
        .orderBy("edit.id", "desc")
        .execute();
      return rows.map((row) => ({ edit: toEdit(row), before: toState(row.before) }));
    },
    async wavedOff() {
      const rows = await db.selectFrom("waved_note").select("key").where("learner_id", "=", learner).execute();
      return new Set(rows.map((row) => row.key));
    },
    async waveOff(keys) {
      if (keys.length === 0) return;
      await db
        .insertInto("waved_note")
        .values(keys.map((key) => ({ learner_id: learner, key })))
        .onConflict((c) => c.columns(["learner_id", "key"]).doNothing())
        .execute();
    },
    async bringBackNotes(keys) {
      if (keys.length === 0) return;
      await db
        .deleteFrom("waved_note")
        .where("learner_id", "=", learner)
        .where("key", "in", [...keys])
        .execute();
    },
    async recentEdits(limit) {
      const rows = await db
        .selectFrom("edit")
        .selectAll("edit")
        .select((q) => [
          q
            .selectFrom("fact_edit")
            .select(({ fn }) => fn.countAll().as("count"))
            .whereRef("fact_edit.edit_id", "=", "edit.id")
            .as("facts"),
          q
            .selectFrom("edit as undoing")
            .select(({ fn }) => fn.countAll().as("count"))
            .whereRef("undoing.undoes", "=", "edit.id")
            .as("undone"),
        ])
        .where("learner_id", "=", learner)
        .orderBy("id", "desc")
        .limit(limit)
        .execute();
      return rows.map((row) => ({ edit: toEdit(row), facts: Number(row.facts), undone: Number(row.undone) > 0 }));
    },
  };
}

const toEdit = (row: { id: string; at: number | string; title: string; undoes: string | null }): EditRecord => ({
  id: row.id,
  at: Number(row.at),
  title: row.title,
  undoes: row.undoes,
});

const toState = (before: string | null): FactState | null =>
  before === null ? null : (JSON.parse(before) as FactState);
