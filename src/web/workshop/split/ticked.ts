// Which of the proposals for a text are to be kept, and the facts that they make.
import type { FactContent } from "../../../core/facts/fact.ts";
import type { Stretch } from "../../../core/splitting/sentences.ts";
import { listOf, type Proposal, statementOf } from "../../../core/splitting/split-text.ts";

/** Ticked blanks and lists by where they stand in the text, and the titles that were given to lists. */
export interface Ticked {
  readonly blanks: ReadonlySet<string>;
  readonly lists: ReadonlySet<string>;
  readonly titles: ReadonlyMap<string, string>;
}

/** Names a stretch of the text. */
export const stretchKey = ({ from, to }: Stretch): string => `${from}-${to}`;

/** Nothing is ticked. */
export const NOTHING_TICKED: Ticked = { blanks: new Set(), lists: new Set(), titles: new Map() };

/** The same with one more or one less. */
export function toggled(ticked: Ticked, what: "blanks" | "lists", key: string): Ticked {
  const next = new Set(ticked[what]);
  if (!next.delete(key)) next.add(key);
  return { ...ticked, [what]: next };
}

/** The title of a list: the given one, or the one in the text. */
export const titleOf = (list: Extract<Proposal, { kind: "list" }>, { titles }: Ticked): string =>
  titles.get(stretchKey(list.source)) ?? list.title;

/** The facts that were ticked; a list without a title is not among them. */
export const tickedFacts = (proposals: readonly Proposal[], ticked: Ticked, language: string): readonly FactContent[] =>
  proposals.flatMap((one): readonly FactContent[] => {
    if (one.kind === "list") {
      const title = titleOf(one, ticked).trim();
      return ticked.lists.has(stretchKey(one.source)) && title !== "" ? [listOf(one, title, language)] : [];
    }
    const blanks = one.blanks.filter((blank) => ticked.blanks.has(stretchKey(blank)));
    const statement = statementOf(one, blanks, language);
    return statement ? [statement] : [];
  });
