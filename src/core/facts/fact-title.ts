// What a fact is called where there is room for a few words.
import type { FactContent } from "./fact.ts";
import { statedWords } from "./fact-words.ts";
import { parseStatement } from "./gaps.ts";

const LONGEST = 60;

/** The first words of a fact on one line, at most 60 characters. */
export function factTitle(fact: FactContent): string {
  const [line = ""] = words(fact).trim().split(/\s*\n/u);
  const characters = [...line];
  return characters.length > LONGEST
    ? `${characters
        .slice(0, LONGEST - 1)
        .join("")
        .trimEnd()}…`
    : line;
}

function words(fact: FactContent): string {
  if (fact.kind === "labelled") return fact.labels.map((label) => label.name).join(", ");
  const [first = "", second = ""] = statedWords(fact);
  if (fact.kind !== "statement") return first.trim() === "" ? second : first;
  const parsed = parseStatement(first);
  return parsed.ok ? parsed.value.map((part) => part.text).join("") : first;
}
