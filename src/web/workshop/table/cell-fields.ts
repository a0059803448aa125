// Which text of a fact stands in which column of the table.
import type { FactContent } from "../../../core/facts/fact.ts";
import { fieldTexts, type TextField } from "../../../core/facts/text-fields.ts";

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

/** What fields are called. */
export const FIELD_NAMES: Readonly<Record<TextField, string>> = {
  prompt: "Prompt",
  answer: "Answer",
  statement: "Statement",
  title: "Title",
  name: "Name",
  formula: "Formula",
  clue: "Clue",
  word: "Word",
  note: "Note",
  source: "Source",
  story: "Story",
  why: "Why",
  pictureAlt: "Description",
  pictureSource: "Source of the picture",
  pictureLicence: "Licence of the picture",
  items: "Items",
  labels: "Labels",
};

interface MainFields {
  readonly asks: TextField | null;
  readonly answer: TextField | null;
}

const MAIN: Readonly<Record<FactContent["kind"], MainFields>> = {
  pair: { asks: "prompt", answer: "answer" },
  statement: { asks: "statement", answer: null },
  picture: { asks: null, answer: "name" },
  list: { asks: "title", answer: "items" },
  formula: { asks: "name", answer: "formula" },
  spelling: { asks: "clue", answer: "word" },
  sound: { asks: null, answer: "name" },
  // The names of labels belong to places in the picture; they are changed beside it.
  labelled: { asks: null, answer: null },
};

/** The field that a column shows of a fact; null if it has none that can be changed in a cell. */
export const cellField = (fact: FactContent, column: TextColumn): TextField | null =>
  column === "asks" || column === "answer" ? MAIN[fact.kind][column] : column;

/** What stands in a field; the items of a list each on a line of their own. */
export const fieldText = (fact: FactContent, field: TextField): string => fieldTexts(fact, field).join("\n");

/** The fact with another text in a field. */
export function withField<T extends FactContent>(fact: T, field: TextField, text: string): T {
  if (field !== "items") return { ...fact, [field]: text };
  const items = text.split("\n").filter((item) => item.trim() !== "");
  return { ...fact, items };
}

/** Tags as they are typed, separated by commas or semicolons. */
export const tagsIn = (typed: string): readonly string[] => [
  ...new Set(
    typed
      .split(/[,;]/u)
      .map((tag) => tag.trim())
      .filter((tag) => tag !== ""),
  ),
];
