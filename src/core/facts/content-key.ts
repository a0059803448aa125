// When do two facts say the same? Used to recognise duplicates on import.
import type { FactContent, Region } from "./fact.ts";

/** Text as it is compared: NFC, white space folded, ends trimmed. Case and accents count. */
export const comparableText = (text: string): string => text.normalize("NFC").replace(/\s+/gu, " ").trim();

/** Equal for two facts of a subject exactly when they state the same thing in the same words. */
export const contentKey = (fact: FactContent): string => [fact.kind, ...keyParts(fact)].join("\u001f");

function keyParts(fact: FactContent): readonly string[] {
  switch (fact.kind) {
    case "pair":
      return [comparableText(fact.prompt), comparableText(fact.answer)];
    case "statement":
      return [comparableText(fact.statement)];
    case "picture":
      return [comparableText(fact.name), fact.picture];
    case "list":
      return [fact.title, ...fact.items].map(comparableText);
    case "formula":
      return [comparableText(fact.name), comparableText(fact.formula)];
    case "spelling":
      return [comparableText(fact.clue), comparableText(fact.word), fact.sound ?? ""];
    case "sound":
      return [comparableText(fact.name), fact.sound];
    case "labelled":
      return [fact.picture, ...fact.labels.flatMap((label) => [comparableText(label.name), regionKey(label)])];
  }
}

const regionKey = ({ x, y, width, height }: Region): string => [x, y, width, height].join(" ");
