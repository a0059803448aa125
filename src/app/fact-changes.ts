// Facts from one state to another, their cards following; and the step of editing in which that happened.
import { groupBy } from "../core/lists.ts";
import { bringBackCards, withdrawCards } from "./box-cards.ts";
import { idSeries } from "./entry-ids.ts";
import { followAngles, idsOf } from "./fact-cards.ts";
import { factRecord } from "./fact-record.ts";
import type { CardRecord, Context, EditRecord, FactBefore, FactRecord, FactState, Session } from "./ports.ts";

/** A fact as it is, and as it is to be. */
export interface FactChange {
  readonly before: FactRecord;
  readonly after: FactState;
}

/**
 * Saves facts as they are to be, each named once. Cards of angles given up leave the box, those chosen again come back
 * where they were; a fact put away takes its cards with it, and brings them back. Does not check the wording.
 */
export async function changeFacts(context: Context, session: Session, changes: readonly FactChange[]): Promise<void> {
  const { library } = session;
  await library.updateFacts(changes.map(({ after }) => factRecord(after.fact, after.deleted)));
  for (const { before, after } of changes) {
    if (before.fact.subject !== after.fact.subject) await library.moveCards(after.fact.id, after.fact.subject);
  }
  const cards = groupBy(await library.cardsOfFacts(changes.map(({ after }) => after.fact.id)), (card) => card.fact);
  const cardsOf = (change: FactChange): readonly CardRecord[] => cards.get(change.after.fact.id) ?? [];
  const gone = changes.filter(({ before, after }) => after.deleted && !before.deleted);
  await withdrawCards(context, session, idsOf(gone.flatMap(cardsOf)), "fact");
  const back = changes.filter(({ before, after }) => before.deleted && !after.deleted);
  const asked = back.flatMap((change) =>
    cardsOf(change).filter(({ angle }) => change.after.fact.angles.includes(angle)),
  );
  await bringBackCards(context, session, idsOf(asked), "fact");
  const there = changes.filter(({ after }) => !after.deleted);
  await followAngles(
    context,
    session,
    there.map((change) => ({ before: change.before.fact, after: change.after.fact, cards: cardsOf(change) })),
  );
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
