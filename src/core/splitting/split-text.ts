// From a text that was pasted to cards that could be made of it. Nothing is invented: whatever is proposed is a stretch
// of the text, and says where it stands.
import { type FactContent, NO_EXTRAS } from "../facts/fact.ts";
import { freshNumbers } from "../facts/list-numbers.ts";
import { type Blank, proposeBlanks } from "./blanks.ts";
import { listInText } from "./list-in-text.ts";
import { type Stretch, sentences } from "./sentences.ts";

/** A sentence, and where it could be blanked out; every blank makes one card. */
export interface SentenceProposal {
  readonly kind: "statement";
  readonly source: Stretch;
  readonly text: string;
  readonly blanks: readonly Blank[];
}

/** A list, to be asked from each item to the next. */
export interface ListProposal {
  readonly kind: "list";
  readonly source: Stretch;
  readonly title: string;
  readonly items: readonly string[];
}

/** What could be made of a stretch of the text. */
export type Proposal = SentenceProposal | ListProposal;

/** The longest text that is split at once, in UTF-16 code units. */
export const LONGEST_TEXT = 50_000;

/** Proposals in the order of the text; `language` of the text by its BCP 47 tag, if it is known. */
export function splitText(text: string, language = ""): readonly Proposal[] {
  const list = listInText(text);
  if (list) {
    const read = ({ from, to }: Stretch): string => text.slice(from, to);
    const source = { from: list.title?.from ?? list.items[0]?.from ?? 0, to: list.items.at(-1)?.to ?? text.length };
    return [{ kind: "list", source, title: list.title ? read(list.title) : "", items: list.items.map(read) }];
  }
  return sentences(text, language).map((source) => ({
    kind: "statement",
    source,
    text: text.slice(source.from, source.to),
    blanks: proposeBlanks(text, source, language),
  }));
}

/** The statement of a sentence with gaps where blanks were ticked; null if none was. */
export function statementOf(proposal: SentenceProposal, ticked: readonly Stretch[], language = ""): FactContent | null {
  const gaps = [...ticked].sort((a, b) => a.from - b.from);
  if (gaps.length === 0) return null;
  const { source, text } = proposal;
  let at = 0;
  let statement = "";
  for (const { from, to } of gaps) {
    statement += `${escaped(text.slice(at, from - source.from))}[${escaped(text.slice(from - source.from, to - source.from))}]`;
    at = to - source.from;
  }
  statement += escaped(text.slice(at));
  return {
    ...NO_EXTRAS,
    kind: "statement",
    statement: statement.replace(/\s*\n\s*/gu, " "),
    gaps: gaps.map((_, i) => i + 1),
    language,
  };
}

/** Square brackets and backslashes as they are written in a statement where they mean themselves. */
const escaped = (text: string): string => text.replace(/[[\]\\]/gu, "\\$&");

/** The list of a proposal, under a title. */
export const listOf = ({ items }: ListProposal, title: string, language = ""): FactContent => ({
  ...NO_EXTRAS,
  kind: "list",
  title,
  items,
  numbers: freshNumbers(items),
  language,
});
