// When do two facts say the same? Used to recognise duplicates on import.
import type { FactContent } from "./fact.ts";

/** Text as it is compared: NFC, white space folded, ends trimmed. Case and accents count. */
export const comparableText = (text: string): string => text.normalize("NFC").replace(/\s+/gu, " ").trim();

/** Equal for two facts of a subject exactly when they state the same thing in the same words. */
export function contentKey(fact: FactContent): string {
  switch (fact.kind) {
    case "pair":
      return `pair\u001f${comparableText(fact.prompt)}\u001f${comparableText(fact.answer)}`;
    case "statement":
      return `statement\u001f${comparableText(fact.statement)}`;
    case "picture":
      return `picture\u001f${comparableText(fact.name)}\u001f${fact.picture}`;
  }
}
