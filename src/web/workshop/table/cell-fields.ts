// Which text of a fact stands in which column of the table.
import type { FactContent } from "../../../core/facts/fact.ts";
import type { TextField } from "../../../core/facts/text-fields.ts";

/** The columns in which words are changed. */
export const TEXT_COLUMNS = ["asks", "answer", "note", "story", "source"] as const;

/** A column of the table. */
export type TextColumn = (typeof TEXT_COLUMNS)[number];

/** Headings of the columns. */
export const COLUMN_NAMES: Readonly<Record<TextColumn | "tags", string>> = {
  asks: "Prompt or statement",
  answer: "Answer or name",
  note: "Note",
  story: "Story",
  source: "Source",
  tags: "Tags",
};

const MAIN: Readonly<
  Record<FactContent["kind"], { readonly asks: TextField | null; readonly answer: TextField | null }>
> = {
  pair: { asks: "prompt", answer: "answer" },
  statement: { asks: "statement", answer: null },
  picture: { asks: null, answer: "name" },
};

/** The field that a column shows of a fact; null if it has none that is a single text. */
export const cellField = (fact: FactContent, column: TextColumn): TextField | null =>
  column === "asks" || column === "answer" ? MAIN[fact.kind][column] : column;

/** What stands in a field. */
export function fieldText(fact: FactContent, field: TextField): string {
  const value: unknown = (fact as unknown as Readonly<Record<string, unknown>>)[field];
  return typeof value === "string" ? value : "";
}

/** The fact with another text in a field. */
export const withField = <T extends FactContent>(fact: T, field: TextField, text: string): T => ({
  ...fact,
  [field]: text,
});

/** Tags as they are typed, separated by commas or semicolons. */
export const tagsIn = (typed: string): readonly string[] => [
  ...new Set(
    typed
      .split(/[,;]/u)
      .map((tag) => tag.trim())
      .filter((tag) => tag !== ""),
  ),
];
