// The texts of a fact, whatever its kind.
import type { FactContent } from "./fact.ts";

/** A field of a fact that holds words. */
export type TextField = (typeof TEXT_FIELDS)[number];

/** Fields that hold words, those that cards ask first. A list's items and the names of labels are words too. */
export const TEXT_FIELDS = ["prompt", "answer", "statement", "name", "note", "source", "story"] as const;

/** Fields without which a fact is none. */
const NEEDED: ReadonlySet<string> = new Set(["prompt", "answer", "statement", "name"]);

const isTextField = (key: string): key is TextField => (TEXT_FIELDS as readonly string[]).includes(key);

/** The content with each of its texts changed. */
export const mapTexts = <T extends FactContent>(content: T, change: (text: string, field: TextField) => string): T =>
  Object.fromEntries(
    Object.entries(content).map(([key, value]) => [
      key,
      isTextField(key) && typeof value === "string" ? change(value, key) : value,
    ]),
  ) as T;

/** The first field that is needed and holds nothing; null if there is none. */
export function emptyField(content: FactContent): string | null {
  const empty = Object.entries(content).find(
    ([key, value]) => NEEDED.has(key) && typeof value === "string" && value.trim() === "",
  );
  return empty?.[0] ?? null;
}
