// The words of a fact, whatever its kind: what is searched, and what a database must be able to store.
import type { FactContent } from "./fact.ts";

/** The texts that state the fact, in reading order. */
export function statedWords(fact: FactContent): readonly string[] {
  switch (fact.kind) {
    case "pair":
      return [fact.prompt, fact.answer];
    case "statement":
      return [fact.statement];
    case "picture":
    case "sound":
      return [fact.name];
    case "list":
      return [fact.title, ...fact.items];
    case "formula":
      return [fact.name, fact.formula];
    case "spelling":
      return [fact.clue, fact.word];
    case "labelled":
      return fact.labels.map((label) => label.name);
  }
}

/** The texts that go with the fact and are shown with its answer. */
export const addedWords = (fact: FactContent): readonly string[] => [
  fact.note,
  fact.source,
  fact.story,
  fact.why,
  fact.pictureAlt,
  fact.pictureSource,
  fact.pictureLicence,
  ...fact.tags,
];
