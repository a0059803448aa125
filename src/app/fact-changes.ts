// One fact from one state to another, its cards following; and the step of editing in which that happened.
import { bringBackCards, withdrawCards } from "./box-cards.ts";
import { idSeries } from "./entry-ids.ts";
import { followAngles } from "./fact-cards.ts";
import { factRecord } from "./fact-record.ts";
import type { Context, EditRecord, FactBefore, FactRecord, FactState, Session } from "./ports.ts";

/**
 * Saves a fact as it is to be. Cards of angles given up leave the box, those chosen again come back where they were; a
 * fact put away takes its cards with it, and brings them back. Does not check the wording.
 */
export async function changeFact(
  context: Context,
  session: Session,
  before: FactRecord,
  after: FactState,
): Promise<void> {
  const { id } = after.fact;
  await session.library.updateFact(factRecord(after.fact, after.deleted));
  if (before.fact.subject !== after.fact.subject) await session.library.moveCards(id, after.fact.subject);
  const cards = await session.library.cardsOfFact(id);
  if (after.deleted) {
    const all = cards.map((card) => card.id);
    if (!before.deleted) await withdrawCards(context, session, all, "fact");
    return;
  }
  if (before.deleted) {
    const asked = cards.filter((card) => after.fact.angles.includes(card.angle));
    await bringBackCards(
      context,
      session,
      asked.map((card) => card.id),
      "fact",
    );
  }
  await followAngles(context, session, before.fact, after.fact, cards);
}

/** Writes down a step of editing; nothing for a step that changed no fact. Gives the step's id. */
export async function noteEdit(
  context: Context,
  { edits }: Session,
  title: string,
  facts: readonly FactBefore[],
  undoes: string | null = null,
): Promise<string | null> {
  if (facts.length === 0) return null;
  const id = idSeries(context, (await edits.lastEditId()) ?? undefined)();
  const edit: EditRecord = { id, at: context.clock(), title, undoes };
  await edits.addEdit(edit, facts);
  return id;
}

/** A fact's state out of how it is stored. */
export const stateOf = ({ fact, deleted }: FactRecord): FactState => ({ fact, deleted });
