// The texts of a fact, whatever its kind, by the names of their fields.
import type { FactContent } from "./fact.ts";

/** Fields that hold one text, those that cards ask first. */
export const SINGLE_TEXTS = [
  "prompt",
  "answer",
  "statement",
  "title",
  "name",
  "formula",
  "clue",
  "word",
  "note",
  "source",
  "story",
  "why",
  "pictureAlt",
  "pictureSource",
  "pictureLicence",
] as const;

/** Fields that hold words: single texts, the items of a list, and the names of a picture's labels. */
export const TEXT_FIELDS = [...SINGLE_TEXTS, "items", "labels"] as const;

/** A field of a fact that holds words. */
export type TextField = (typeof TEXT_FIELDS)[number];

/** The texts in a field: none if the fact has no such field, several in a list or a labelled picture. */
export function fieldTexts(content: FactContent, field: TextField): readonly string[] {
  if (field === "items") return content.kind === "list" ? content.items : [];
  if (field === "labels") return content.kind === "labelled" ? content.labels.map((label) => label.name) : [];
  const value: unknown = (content as unknown as Readonly<Record<string, unknown>>)[field];
  return typeof value === "string" ? [value] : [];
}

/** The content with each of its texts changed. */
export function mapTexts<T extends FactContent>(content: T, change: (text: string, field: TextField) => string): T {
  const next: Record<string, unknown> = { ...content };
  for (const field of SINGLE_TEXTS) {
    const value = next[field];
    if (typeof value === "string") next[field] = change(value, field);
  }
  if (content.kind === "list") next.items = content.items.map((item) => change(item, "items"));
  if (content.kind === "labelled")
    next.labels = content.labels.map((label) => ({ ...label, name: change(label.name, "labels") }));
  return next as unknown as T;
}
