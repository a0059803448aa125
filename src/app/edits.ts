// Undoing edits, and what a fact was before.
import { changeFacts, type FactChange, noteEdit, stateOf } from "./fact-changes.ts";
import { FailureError, found } from "./failure.ts";
import type { Context, Session } from "./ports.ts";
import type { EditView, FactVersion } from "./views.ts";

const RECENT = 50;

/** The newest steps of editing, newest first. */
export const recentEdits = (context: Context): Promise<readonly EditView[]> =>
  context.store.read(async ({ edits }) =>
    (await edits.recentEdits(RECENT)).map(({ edit, facts, undone }) => ({ ...edit, facts, undone })),
  );

/** What a fact was before each step that changed it, newest first; null where the step made it. */
export const factHistory = (context: Context, fact: string): Promise<readonly FactVersion[]> =>
  context.store.read(async ({ library, edits }) => {
    found(await library.fact(fact), "fact");
    return edits.editsOfFact(fact);
  });

/**
 * Puts every fact of a step back to what it was, as a step of its own, which can be undone too. Fails with `conflict`
 * if one of them was changed again since: the later step has to be undone first.
 */
export const undoEdit = (context: Context, id: string): Promise<EditView> =>
  context.store.write(async (session) => {
    const edit = found(await session.edits.edit(id), "step of editing");
    const since = (await session.edits.editedSince(id)).size;
    if (since > 0) {
      const which = since === 1 ? "One of its facts was" : `${since} of its facts were`;
      throw new FailureError("conflict", `${which} changed again since. Undo the later change first.`);
    }
    const befores = await session.edits.factsOfEdit(id);
    const records = await session.library.facts(befores.map(({ fact }) => fact));
    const byId = new Map(records.map((record) => [record.fact.id, record]));
    const changes = befores.map(({ fact, before }): FactChange => {
      const now = found(byId.get(fact), "fact");
      return { before: now, after: before ?? { fact: now.fact, deleted: true } };
    });
    await refuseLostSubjects(session, changes);
    await changeFacts(context, session, changes);
    const states = changes.map(({ before }) => ({ fact: before.fact.id, before: stateOf(before) }));
    const title = edit.undoes === null ? `Undid: ${edit.title}` : edit.title.replace(/^Undid: /u, "Did again: ");
    const step = found(await noteEdit(context, session, title, states, id), "step of editing");
    return { id: step, at: context.clock(), title, undoes: id, facts: states.length, undone: false };
  });

/** An empty subject may have been removed since its facts were moved out of it. */
async function refuseLostSubjects({ library }: Session, changes: readonly FactChange[]): Promise<void> {
  const there = new Set((await library.subjects()).map(({ id }) => id));
  if (changes.every(({ after }) => there.has(after.fact.subject))) return;
  throw new FailureError(
    "conflict",
    "The subject in which these facts were is removed. Move them where you want them.",
  );
}
