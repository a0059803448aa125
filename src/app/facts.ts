// Facts and subjects: adding, rewording, putting away. Rewording never loses a card's history.
import { possibleAngles } from "../core/cards/cards.ts";
import { anglesAfter, defaultAngles } from "../core/cards/default-angles.ts";
import { contentProblem } from "../core/facts/check-content.ts";
import { type Angle, EXACT_SPELLING, type Fact, type FactContent } from "../core/facts/fact.ts";
import { factTitle } from "../core/facts/fact-title.ts";
import { counted } from "../core/words.ts";
import { makeCards } from "./fact-cards.ts";
import { changeFacts, noteEdit, stateOf } from "./fact-changes.ts";
import { factRecord } from "./fact-record.ts";
import { FailureError, found } from "./failure.ts";
import { type FactDraft, translateAngles, withFreshNumbers, withNumbersAfter } from "./number-parts.ts";
import type { Context, Session, SubjectRecord } from "./ports.ts";
import type { SubjectView } from "./views.ts";

const quoted = (fact: Fact): string => `“${factTitle(fact)}”`;

/** The subjects and what they hold. */
export const listSubjects = (context: Context): Promise<readonly SubjectView[]> =>
  context.store.read(async ({ library, boxes }) => {
    const box = await boxes.box();
    const inside = new Set(box ? await boxes.subjectsInBox(box.id) : []);
    const facts = await library.countBySubject("fact");
    const cards = await library.countBySubject("card");
    return (await library.subjects()).map(({ id, name, spelling }) => ({
      id,
      name,
      facts: facts.get(id) ?? 0,
      cards: cards.get(id) ?? 0,
      inBox: inside.has(id),
      spelling,
    }));
  });

/** A new subject; it joins the box if there is one. Fails if the name is taken. */
export const addSubject = (context: Context, id: string, name: string): Promise<SubjectView> =>
  context.store.write((session) => createSubject(session, id, name));

/** As `addSubject`, inside a transaction that does more. */
export async function createSubject(
  session: Session,
  id: string,
  name: string,
  { demo = false, spelling = EXACT_SPELLING }: Partial<Pick<SubjectRecord, "demo" | "spelling">> = {},
): Promise<SubjectView> {
  await refuseTakenName(session, id, name);
  await session.library.saveSubject({ id, name, demo, spelling });
  const box = await session.boxes.box();
  if (box) await session.boxes.addSubjectToBox(box.id, id);
  return { id, name, facts: 0, cards: 0, inBox: box !== null, spelling };
}

/** Gives a subject another name. */
export const renameSubject = (context: Context, id: string, name: string): Promise<void> =>
  context.store.write(async (session) => {
    const subject = found(await session.library.subject(id), "subject");
    await refuseTakenName(session, id, name);
    await session.library.saveSubject({ ...subject, name });
  });

/** Takes away a subject that never had a fact. Fails with `conflict` if it has, deleted ones included: they can come back. */
export const removeSubject = (context: Context, id: string): Promise<void> =>
  context.store.write(async (session) => {
    const { name } = found(await session.library.subject(id), "subject");
    if ((await session.library.cardsOfSubject(id)).length > 0) {
      const message = `“${name}” has facts, or had some that can be brought back. Only an empty subject can be removed.`;
      throw new FailureError("conflict", message);
    }
    const box = await session.boxes.box();
    if (box) await session.boxes.forgetSubject(box.id, id);
    await session.library.removeSubject(id);
  });

async function refuseTakenName({ library }: Session, id: string, name: string): Promise<void> {
  const taken = (await library.subjects()).some((other) => other.id !== id && other.name === name);
  if (taken) throw new FailureError("conflict", `There is a subject named “${name}” already. Choose another name.`);
}

/** A new fact with its cards; the cards go into the stock of the box. Sending the same id again changes nothing. */
export const addFact = (
  context: Context,
  id: string,
  subject: string,
  draft: FactDraft,
  angles?: readonly Angle[],
): Promise<Fact> =>
  context.store.write(async (session) => {
    const known = await session.library.fact(id);
    if (known) return known.fact;
    found(await session.library.subject(subject), "subject");
    const content = await checkContent(session, withFreshNumbers(draft));
    const chosen = angles ? translateAngles(draft, content, angles) : defaultAngles(content);
    const fact: Fact = { ...content, id, subject, angles: chosenAngles(content, chosen) };
    await saveNewFacts(session, [fact]);
    await noteEdit(context, session, `New fact ${quoted(fact)}`, [{ fact: id, before: null }]);
    return fact;
  });

/** New facts together, as one step: all of them or, if one cannot be used, none. Those that are there already are left. */
export const addFacts = (
  context: Context,
  subject: string,
  facts: readonly { readonly id: string; readonly content: FactDraft }[],
): Promise<readonly Fact[]> =>
  context.store.write(async (session) => {
    found(await session.library.subject(subject), "subject");
    const known = new Set((await session.library.facts(facts.map(({ id }) => id))).map(({ fact }) => fact.id));
    const made: Fact[] = [];
    for (const { id, content: draft } of facts) {
      if (known.has(id)) continue;
      const content = await checkContent(session, withFreshNumbers(draft));
      made.push({ ...content, id, subject, angles: chosenAngles(content, defaultAngles(content)) });
    }
    await saveNewFacts(session, made);
    const befores = made.map(({ id }) => ({ fact: id, before: null }));
    await noteEdit(context, session, `Added ${counted(made.length, "fact")}`, befores);
    return made;
  });

/** Saves facts that are known to be sound, makes their cards, and stocks those cards. */
export async function saveNewFacts(session: Session, facts: readonly Fact[]): Promise<number> {
  await session.library.addFacts(facts.map((fact) => factRecord(fact)));
  const wanted = facts.flatMap((fact) => fact.angles.map((angle) => ({ fact, angle })));
  return (await makeCards(session, wanted)).length;
}

/** Rewords a fact. Cards of angles no longer chosen leave the box, those chosen again come back where they were. */
export const editFact = (context: Context, id: string, draft: FactDraft, angles?: readonly Angle[]): Promise<Fact> =>
  context.store.write(async (session) => {
    const record = found(await session.library.fact(id), "fact");
    if (record.deleted) throw new FailureError("conflict", "This fact was deleted. Bring it back before changing it.");
    const fact = await rewordedFact(session, record.fact, draft, angles);
    if (sameFact(fact, record.fact)) return fact;
    await changeFacts(context, session, [{ before: record, after: { fact, deleted: false } }]);
    await noteEdit(context, session, `Changed ${quoted(record.fact)}`, [{ fact: id, before: stateOf(record) }]);
    return fact;
  });

/** A fact with another wording, checked, its gaps numbered so that they keep their histories. Fails with `invalid-input`. */
export async function rewordedFact(
  session: Session,
  before: Fact,
  draft: FactDraft,
  angles?: readonly Angle[],
): Promise<Fact> {
  const asked = (await session.library.cardsOfFact(before.id)).map((card) => card.angle);
  const content = await checkContent(session, withNumbersAfter(before, asked, draft));
  const chosen = angles ? translateAngles(draft, content, angles) : anglesAfter(before, content);
  return { ...content, id: before.id, subject: before.subject, angles: chosenAngles(content, chosen) };
}

/** Whether two facts are the same in everything that is kept of them. */
export function sameFact(a: Fact, b: Fact): boolean {
  const [keys, others] = [Object.keys(a), Object.keys(b)] as (keyof Fact)[][];
  return (
    keys?.length === others?.length && keys?.every((key) => JSON.stringify(a[key]) === JSON.stringify(b[key])) === true
  );
}

/** Puts a fact away: its cards leave the box, nothing is forgotten. */
export const deleteFact = (context: Context, id: string): Promise<void> =>
  context.store.write(async (session) => {
    const record = found(await session.library.fact(id), "fact");
    if (record.deleted) return;
    await changeFacts(context, session, [{ before: record, after: { fact: record.fact, deleted: true } }]);
    await noteEdit(context, session, `Deleted ${quoted(record.fact)}`, [{ fact: id, before: stateOf(record) }]);
  });

/** Brings back a fact that was put away, with the cards that left the box because of it. */
export const restoreFact = (context: Context, id: string): Promise<Fact> =>
  context.store.write(async (session) => {
    const record = found(await session.library.fact(id), "fact");
    if (record.deleted) {
      await changeFacts(context, session, [{ before: record, after: { fact: record.fact, deleted: false } }]);
      await noteEdit(context, session, `Brought back ${quoted(record.fact)}`, [{ fact: id, before: stateOf(record) }]);
    }
    return record.fact;
  });

/** Refuses wording that cannot be asked, and pictures that are not there. */
async function checkContent({ library }: Session, content: FactContent): Promise<FactContent> {
  if (content.picture !== null && !(await library.hasPicture(content.picture))) {
    throw new FailureError("invalid-input", "The picture of this fact is not stored. Add the picture again.");
  }
  if (content.sound !== null && !(await library.hasSound(content.sound))) {
    throw new FailureError("invalid-input", "The sound of this fact is not stored. Record or choose it again.");
  }
  const problem = contentProblem(content);
  if (!problem) return content;
  const place = problem.at === null ? "" : ` (position ${problem.at})`;
  const what = content.kind === "labelled" ? "labelled picture" : content.kind;
  throw new FailureError("invalid-input", `The ${what} cannot be used: ${problem.reason}${place}.`);
}

function chosenAngles(content: FactContent, angles: readonly Angle[]): readonly Angle[] {
  const possible = possibleAngles(content);
  const chosen = possible.filter((angle) => angles.includes(angle));
  if (chosen.length === 0) {
    throw new FailureError(
      "invalid-input",
      `A fact needs at least one angle to be asked from: ${possible.join(", ")}.`,
    );
  }
  return chosen;
}
