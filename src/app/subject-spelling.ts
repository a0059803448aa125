// What counts in the spellings of a subject: one rule for new facts, which those that were like it follow.
import type { SpellingRule } from "../core/facts/fact.ts";
import { counted } from "../core/words.ts";
import { changeFacts, noteEdit, stateOf } from "./fact-changes.ts";
import { found } from "./failure.ts";
import type { Context } from "./ports.ts";
import type { SpellingChange } from "./views.ts";

/**
 * Sets what counts in a subject's spellings. With `following` the facts that counted the same as the subject go along, as
 * one step of editing; those that differ from it stay as they are. Fails with `not-found`.
 */
export const changeSubjectSpelling = (
  context: Context,
  id: string,
  rule: SpellingRule,
  following = true,
): Promise<SpellingChange> =>
  context.store.write(async (session) => {
    const { library } = session;
    const subject = found(await library.subject(id), "subject");
    const { spelling: before } = subject;
    if (sameRule(before, rule)) return { changed: 0, edit: null };
    await library.saveSubject({ ...subject, spelling: rule });
    const ids: string[] = [];
    if (following)
      for await (const fact of library.eachFact(id))
        if (fact.kind === "spelling" && sameRule(fact, before)) ids.push(fact.id);
    const changes = (await library.facts(ids)).map((record) => ({
      before: record,
      after: { fact: { ...record.fact, accents: rule.accents, letterCase: rule.letterCase }, deleted: false },
    }));
    await changeFacts(context, session, changes);
    const steps = changes.map((change) => ({ fact: change.before.fact.id, before: stateOf(change.before) }));
    const title = `Accents ${words(rule.accents)}, capital letters ${words(rule.letterCase)} in ${counted(ids.length, "fact")}`;
    return { changed: ids.length, edit: await noteEdit(context, session, title, steps) };
  });

const sameRule = (a: SpellingRule, b: SpellingRule): boolean =>
  a.accents === b.accents && a.letterCase === b.letterCase;

const words = (counts: SpellingRule["accents"]): string => (counts === "count" ? "count" : "do not count");
