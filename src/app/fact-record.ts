// A fact as it is kept: with what finds duplicates and what is searched.
import { contentKey } from "../core/facts/content-key.ts";
import type { Fact, FactContent } from "../core/facts/fact.ts";
import { addedWords, statedWords } from "../core/facts/fact-words.ts";
import { hash32 } from "../core/random.ts";
import { foldText } from "../core/text/fold-text.ts";
import type { FactRecord } from "./ports.ts";

/** A short key by which a fact of equal content is found; `contentKey` settles whether it is equal. */
export function contentHash(content: FactContent): string {
  const key = contentKey(content);
  return hash32("a", key).toString(16).padStart(8, "0") + hash32("b", key).toString(16).padStart(8, "0");
}

/** How a fact is kept. */
export function factRecord(fact: Fact, deleted = false): FactRecord {
  const search = foldText([...statedWords(fact), ...addedWords(fact)].join("\n"));
  return { fact, contentHash: contentHash(fact), search, deleted };
}
