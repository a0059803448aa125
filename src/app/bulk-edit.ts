// One change to many facts at once: looked at before it is made, made whole, undone as one step.
import { critiqueFact } from "../core/critique/critique-fact.ts";
import { RULE_TEXTS, type Rule } from "../core/critique/note.ts";
import { cleanText } from "../core/facts/clean-text.ts";
import type { Fact } from "../core/facts/fact.ts";
import { factTitle } from "../core/facts/fact-title.ts";
import { mergeFacts } from "../core/facts/merge-facts.ts";
import { type Replacement, replaceText } from "../core/facts/replace-text.ts";
import { mapTexts, type TextField } from "../core/facts/text-fields.ts";
import { counted } from "../core/words.ts";
import { changeFacts, type FactChange, noteEdit, stateOf } from "./fact-changes.ts";
import { rewordedFact, sameFact } from "./facts.ts";
import { FailureError, found } from "./failure.ts";
import type { FactDraft } from "./number-parts.ts";
import type { Context, FactRecord, FactState, Session } from "./ports.ts";
import type { BulkPreview, BulkResult, RefusedFact } from "./views.ts";

/** Most facts that are changed at once. */
export const MOST_AT_ONCE = 10_000;
const SHOWN = 100;
const LONGEST_TEXT = 5_000;
const MOST_TAGS = 20;

/** What is done to the facts. `fields` left out means all of them. */
export type BulkChange =
  | ({ readonly kind: "replace"; readonly fields?: readonly TextField[] | undefined } & Replacement)
  | { readonly kind: "tags"; readonly add: readonly string[]; readonly remove: readonly string[] }
  | { readonly kind: "move"; readonly subject: string }
  | { readonly kind: "delete" }
  /** What the critique would mend by this rule. */
  | { readonly kind: "fix"; readonly rule: Rule }
  /** All become one: the fact `into`, which is among them. */
  | { readonly kind: "merge"; readonly into: string };

interface Planned {
  readonly changes: readonly FactChange[];
  readonly refused: readonly RefusedFact[];
}

/** What a change would do; nothing is changed. */
export const previewBulk = (context: Context, facts: readonly string[], change: BulkChange): Promise<BulkPreview> =>
  context.store.read(async (session) => {
    const { changes, refused } = await planBulk(session, facts, change);
    return {
      changed: changes.length,
      shown: changes.slice(0, SHOWN).map(({ before, after }) => ({ before: stateOf(before), after })),
      refused,
    };
  });

/** Makes a change to all facts that it concerns and that can take it, as one step. */
export const applyBulk = (context: Context, facts: readonly string[], change: BulkChange): Promise<BulkResult> =>
  context.store.write(async (session) => {
    const { changes, refused } = await planBulk(session, facts, change);
    await changeFacts(context, session, changes);
    const steps = changes.map(({ before }) => ({ fact: before.fact.id, before: stateOf(before) }));
    const title = await titleOf(session, change, changes.length);
    return { edit: await noteEdit(context, session, title, steps), title, changed: changes.length, refused };
  });

async function planBulk(session: Session, ids: readonly string[], change: BulkChange): Promise<Planned> {
  if (ids.length > MOST_AT_ONCE) {
    const message = `At most ${counted(MOST_AT_ONCE, "fact")} can be changed at once. Choose fewer, for instance by tag.`;
    throw new FailureError("too-large", message);
  }
  const records = (await session.library.facts(ids)).filter((record) => !record.deleted);
  if (change.kind === "move") found(await session.library.subject(change.subject), "subject");
  return change.kind === "merge" ? planMerge(records, change.into) : planEach(session, records, change);
}

async function planEach(
  session: Session,
  records: readonly FactRecord[],
  change: Exclude<BulkChange, { kind: "merge" }>,
): Promise<Planned> {
  const changes: FactChange[] = [];
  const refused: RefusedFact[] = [];
  for (const before of records) {
    const after = await afterChange(session, before.fact, change).catch((error: unknown) => {
      if (!(error instanceof FailureError)) throw error;
      refused.push({ fact: before.fact.id, title: factTitle(before.fact), reason: error.failure.message });
      return null;
    });
    if (after && (after.deleted || !sameFact(after.fact, before.fact))) changes.push({ before, after });
  }
  return { changes, refused };
}

async function afterChange(
  session: Session,
  fact: Fact,
  change: Exclude<BulkChange, { kind: "merge" }>,
): Promise<FactState> {
  switch (change.kind) {
    case "delete":
      return { fact, deleted: true };
    case "move":
      return { fact: { ...fact, subject: change.subject }, deleted: false };
    case "fix": {
      const fix = critiqueFact(fact).find((note) => note.rule === change.rule && note.fix)?.fix;
      if (!fix) return { fact, deleted: false };
      return { fact: await rewordedFact(session, fact, fix.content, fix.angles), deleted: false };
    }
    case "tags":
      return { fact: { ...fact, tags: changedTags(fact.tags, change) }, deleted: false };
    case "replace": {
      const fields = new Set<string>(change.fields ?? []);
      const wanted = (field: TextField): boolean => change.fields === undefined || fields.has(field);
      const draft = mapTexts(fact, (text, field) => (wanted(field) ? cleanText(replaceText(text, change)) : text));
      if (sameFact(draft, fact)) return { fact, deleted: false };
      refuseLong(draft);
      const { id: _id, subject: _subject, angles: _angles, ...content } = draft;
      return { fact: await rewordedFact(session, fact, content as FactDraft), deleted: false };
    }
  }
}

function refuseLong(draft: Fact): void {
  mapTexts(draft, (text, field) => {
    if (text.length > LONGEST_TEXT) {
      throw new FailureError("invalid-input", `Its ${field} would be longer than ${LONGEST_TEXT} characters.`);
    }
    return text;
  });
}

function changedTags(
  tags: readonly string[],
  change: { readonly add: readonly string[]; readonly remove: readonly string[] },
): readonly string[] {
  const after = [...new Set([...tags, ...change.add])].filter((tag) => !change.remove.includes(tag));
  if (after.length > MOST_TAGS) throw new FailureError("invalid-input", `It would have more than ${MOST_TAGS} tags.`);
  return after;
}

function planMerge(records: readonly FactRecord[], into: string): Planned {
  const kept = found(
    records.find((record) => record.fact.id === into),
    "fact",
  );
  const others = records.filter((record) => record !== kept);
  const strangers = others.filter((record) => record.fact.kind !== kept.fact.kind);
  if (strangers.length > 0) {
    throw new FailureError("invalid-input", "Only facts of one kind can be merged. Choose facts of the same kind.");
  }
  const fact = mergeFacts(
    kept.fact,
    others.map((record) => record.fact),
  );
  const after = { before: kept, after: { fact, deleted: false } };
  return {
    changes: [
      ...(sameFact(fact, kept.fact) ? [] : [after]),
      ...others.map((before) => ({ before, after: { fact: before.fact, deleted: true } })),
    ],
    refused: [],
  };
}

async function titleOf({ library }: Session, change: BulkChange, changed: number): Promise<string> {
  const facts = counted(changed, "fact");
  switch (change.kind) {
    case "replace":
      return `Replaced “${change.find}” by “${change.by}” in ${facts}`;
    case "tags":
      return `Changed the tags of ${facts}`;
    case "move":
      return `Moved ${facts} to “${(await library.subject(change.subject))?.name ?? ""}”`;
    case "fix":
      return `Mended ${facts}: ${RULE_TEXTS[change.rule].title.toLowerCase()}`;
    case "delete":
      return `Deleted ${facts}`;
    case "merge":
      return `Merged facts into one`;
  }
}
