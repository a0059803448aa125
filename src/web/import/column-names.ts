// What the columns of a list may hold, as it is said on the page.
import type { Column, ImportChoices, ImportPreview } from "../../app/views.ts";

/** Columns in words, in the order in which they are offered. */
export const COLUMN_NAMES = {
  prompt: "Prompt",
  answer: "Answer",
  statement: "Statement with gaps",
  note: "Note",
  source: "Source",
  picture: "Picture",
  story: "Story",
  tags: "Tags",
  kind: "Kind of fact",
  list: "List, one item a line",
  formula: "Formula in TeX",
  spelling: "Word to be spelt",
  accents: "Whether accents count",
  capitals: "Whether capitals count",
  regions: "Regions of a labelled picture",
  why: "Why question",
  language: "Language",
  "picture description": "Description of the picture",
  "picture source": "Source of the picture",
  "picture licence": "Licence of the picture",
  sound: "Sound",
  angles: "Angles",
} as const satisfies Record<Column, string>;

/** All columns with their names. */
export const COLUMN_CHOICES = Object.entries(COLUMN_NAMES) as readonly (readonly [Column, string])[];

/** Ways in which letters may be written in a file. */
export const ENCODINGS: readonly (readonly [NonNullable<ImportChoices["encoding"]>, string])[] = [
  ["utf-8", "UTF-8 (usual)"],
  ["utf-16le", "UTF-16, little end first"],
  ["utf-16be", "UTF-16, big end first"],
  ["windows-1252", "Windows, Western European"],
];

/** What may stand between two columns. */
export const DELIMITERS: readonly (readonly [NonNullable<ImportChoices["delimiter"]>, string])[] = [
  [",", "comma"],
  ["\t", "tab"],
  [";", "semicolon"],
];

/** The choices of a preview spelt out, so that what is accepted is what was shown. */
export const choicesOf = (preview: ImportPreview): ImportChoices => ({
  encoding: preview.encoding,
  delimiter: preview.delimiter,
  header: preview.header,
  columns: preview.columns,
});

/** The columns after column `at` was said to hold `column`; two columns never hold the same. */
export const withColumn = (columns: readonly (Column | null)[], at: number, column: Column | null): (Column | null)[] =>
  columns.map((other, i) => (i === at ? column : column !== null && other === column ? null : other));
