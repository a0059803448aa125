// Printings of one learner. The face of a card is kept as text, since it is compared and shown as a whole.
import type { PrintStep, Prints } from "../app/print-port.ts";
import type { PaperEvent, PaperRecord } from "../core/kit/paper-state.ts";
import { faceText, type PrintedFace } from "../core/kit/printed-face.ts";
import { batches } from "../core/lists.ts";
import { BATCH, type Db } from "./schema.ts";

/** The printings of `learner`. */
export function createPrints(db: Db, learner: string): Prints {
  const own = () => db.selectFrom("print_step").selectAll().where("learner_id", "=", learner);
  return {
    async addPrintStep({ id, at, kind }, cards) {
      await db.insertInto("print_step").values({ id, learner_id: learner, at, kind, undone: 0 }).execute();
      for (const batch of batches(cards, BATCH)) {
        const rows = batch.map(({ card, face }) => ({
          step_id: id,
          card_id: card,
          learner_id: learner,
          face: face && faceText(face),
        }));
        await db.insertInto("print_card").values(rows).execute();
      }
    },
    async printStep(id) {
      const row = await own().where("id", "=", id).executeTakeFirst();
      return row ? toStep(row) : null;
    },
    async lastPrintStepId() {
      const row = await own().orderBy("id", "desc").limit(1).executeTakeFirst();
      return row?.id ?? null;
    },
    async markPrintStepUndone(id) {
      await db
        .updateTable("print_step")
        .set({ undone: 1 })
        .where("id", "=", id)
        .where("learner_id", "=", learner)
        .execute();
    },
    async recentPrintSteps(limit) {
      const rows = await own()
        .select((q) =>
          q
            .selectFrom("print_card")
            .select(({ fn }) => fn.countAll().as("count"))
            .whereRef("print_card.step_id", "=", "print_step.id")
            .as("cards"),
        )
        .where("undone", "=", 0)
        .orderBy("id", "desc")
        .limit(limit)
        .execute();
      return rows.map((row) => ({ step: toStep(row), cards: Number(row.cards) }));
    },
    async onPaper(card) {
      const rows = await db
        .selectFrom("print_card")
        .innerJoin("print_step", "print_step.id", "print_card.step_id")
        .select(["print_card.card_id", "print_card.face", "print_step.at", "print_step.kind"])
        .where("print_card.learner_id", "=", learner)
        .where("print_step.undone", "=", 0)
        .$if(card !== undefined, (query) => query.where("print_card.card_id", "=", card as string))
        .orderBy("print_step.id")
        .execute();
      const records = new Map<string, PaperRecord>();
      for (const row of rows) records.set(row.card_id, later(records.get(row.card_id), row));
      return records;
    },
  };
}

/** Printings forget the cards of a subject; a step that is about no other card goes too. */
export async function forgetPrints(db: Db, learner: string, subject: string): Promise<void> {
  await db
    .deleteFrom("print_card")
    .where("learner_id", "=", learner)
    .where("card_id", "in", (q) => q.selectFrom("card").select("card.id").where("subject_id", "=", subject))
    .execute();
  await db
    .deleteFrom("print_step")
    .where("learner_id", "=", learner)
    .where("id", "not in", (q) => q.selectFrom("print_card").select("step_id"))
    .execute();
}

function later(
  before: PaperRecord | undefined,
  { at, kind, face }: { at: number | string; kind: PaperEvent; face: string | null },
): PaperRecord {
  const printed =
    face === null
      ? { face: before?.face ?? null, printedAt: before?.printedAt ?? null }
      : { face: JSON.parse(face) as PrintedFace, printedAt: Number(at) };
  return { last: kind, at: Number(at), ...printed };
}

const toStep = (row: { id: string; at: number | string; kind: PaperEvent; undone: number }): PrintStep => ({
  id: row.id,
  at: Number(row.at),
  kind: row.kind,
  undone: row.undone === 1,
});
