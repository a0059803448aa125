// What the rules say about a subject, remembered until it changes, and what was waved off.
import type { Note, Rule } from "../core/critique/note.ts";
import { RULES } from "../core/critique/note.ts";
import type { Fact } from "../core/facts/fact.ts";
import { found } from "./failure.ts";
import type { Context, Session } from "./ports.ts";
import type { FactNotes, RuleCount } from "./views.ts";

/** Looks through facts; where, is for whoever puts the program together to say. */
export type Critique = (facts: readonly Fact[]) => Promise<readonly Note[]>;

/** The critique of a learner's subjects. */
export interface Critic {
  /** How many facts each rule speaks about, those with something to say first. */
  counts(subject: string): Promise<readonly RuleCount[]>;
  /** Facts about which a rule speaks. */
  factsWith(subject: string, rule: Rule): Promise<readonly string[]>;
  /** Notes about one fact that need the others, and the keys of all that were waved off about it. */
  notesOf(fact: string): Promise<FactNotes>;
}

/** What was said of a subject, or is about to be. */
interface Said {
  readonly version: string;
  readonly notes: Promise<readonly Note[]>;
  underWay: boolean;
}

/** Rules that look at several facts. */
const AMONG_FACTS: ReadonlySet<Rule> = new Set(["same-prompt", "near-alike"]);
const REMEMBERED = 8;

/** A critic that remembers what was said of a subject as long as nothing in it changes. */
export function createCritic(context: Context, critique: Critique): Critic {
  const said = new Map<string, Said>();
  const all = async (subject: string): Promise<readonly Note[]> => {
    const version = await context.store.read((session) => versionOf(session, subject));
    const known = said.get(subject);
    // While one look at a large subject is under way, edits do not begin others beside it.
    if (known && (known.underWay || known.version === version)) return known.notes;
    const notes = factsOf(context, subject).then(critique);
    const now: Said = { version, notes, underWay: true };
    said.delete(subject);
    said.set(subject, now);
    const settle = (): void => {
      now.underWay = false;
    };
    notes.then(settle, settle);
    for (const [oldest] of said) if (said.size > REMEMBERED) said.delete(oldest);
    notes.catch(() => said.delete(subject));
    return notes;
  };
  const standing = async (subject: string): Promise<readonly Note[]> => {
    const waved = await context.store.read(({ edits }) => edits.wavedOff());
    return (await all(subject)).filter((note) => !waved.has(note.key));
  };
  return {
    async counts(subject) {
      const facts = new Map(RULES.map((rule) => [rule, new Set<string>()]));
      for (const note of await standing(subject)) facts.get(note.rule)?.add(note.fact);
      return [...facts].map(([rule, some]) => ({ rule, facts: some.size })).filter((one) => one.facts > 0);
    },
    async factsWith(subject, rule) {
      return [...new Set((await standing(subject)).filter((note) => note.rule === rule).map((note) => note.fact))];
    },
    async notesOf(id) {
      const { fact, wavedOff } = await context.store.read(async ({ library, edits }) => ({
        fact: found(await library.fact(id), "fact").fact,
        wavedOff: await edits.wavedOff(),
      }));
      const notes = (await all(fact.subject)).filter((note) => note.fact === id && AMONG_FACTS.has(note.rule));
      return { among: notes, wavedOff: [...wavedOff].filter((key) => key.split("|")[1] === id) };
    },
  };
}

/** Changes whenever a fact of the subject may have changed: by an edit, or because facts came or went. */
async function versionOf({ library, edits }: Session, subject: string): Promise<string> {
  const facts = (await library.countBySubject("fact")).get(subject) ?? 0;
  return `${await edits.lastEditId()} ${facts}`;
}

const factsOf = (context: Context, subject: string): Promise<readonly Fact[]> =>
  context.store.read(async ({ library }) => {
    found(await library.subject(subject), "subject");
    const facts: Fact[] = [];
    for await (const fact of library.eachFact(subject)) facts.push(fact);
    return facts;
  });

/** Notes that are not to be shown any more. */
export const waveOff = (context: Context, keys: readonly string[]): Promise<void> =>
  context.store.write(({ edits }) => edits.waveOff(keys));

/** Notes that are to be shown again. */
export const bringBackNotes = (context: Context, keys: readonly string[]): Promise<void> =>
  context.store.write(({ edits }) => edits.bringBackNotes(keys));
