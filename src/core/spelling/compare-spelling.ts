// How a typed word differs from the right one, character by character as a reader counts them (UAX 29), after NFC.
import type { SpellingRule } from "../facts/fact.ts";
import { graphemes } from "../text/graphemes.ts";

/** One step from what was typed to the right word. `typed` or `right` is empty where the other has one too many. */
export interface SpellingStep {
  readonly kind: "same" | "wrong" | "missing" | "extra";
  readonly typed: string;
  readonly right: string;
}

/** How a typed word compares. `distance` counts the steps that are not the same: the fewest that there can be. */
export interface SpellingComparison {
  readonly steps: readonly SpellingStep[];
  readonly distance: number;
}

/** The longest text that is compared, in characters; of a longer one the rest counts as wrong or missing in one piece. */
export const LONGEST_COMPARED = 400;

/**
 * Compares what was typed with the word that is right. White space at the ends and its amount between words do not
 * count. Accents that do not count are the marks of European alphabets and of Arabic; marks that make another letter,
 * such as vowel signs of Indic scripts, Hebrew points and voiced kana, always count, and so do letters like ø and ł.
 * Time and memory grow with the product of the lengths.
 */
export function compareSpelling(typed: string, right: string, rule: SpellingRule): SpellingComparison {
  const steps = align(charactersOf(typed), charactersOf(right), (text) => fold(text, rule));
  return { steps, distance: steps.filter((step) => step.kind !== "same").length };
}

function charactersOf(text: string): readonly string[] {
  const all = graphemes(text.normalize("NFC").replace(/\s+/gu, " ").trim());
  if (all.length <= LONGEST_COMPARED) return all;
  return [...all.slice(0, LONGEST_COMPARED), all.slice(LONGEST_COMPARED).join("")];
}

/** Marks that any script may use, but for those that make kana voiced. */
const ACCENT = /(?![\u3099\u309a])(?=\p{Script=Inherited})\p{M}/gu;

function fold(character: string, { accents, letterCase }: SpellingRule): string {
  const cased = letterCase === "count" ? character : character.toLowerCase().replace("ς", "σ");
  return accents === "count" ? cased : cased.normalize("NFD").replace(ACCENT, "").normalize("NFC");
}

/**
 * The cheapest way from one row of characters to the other: V. I. Levenshtein's distance by the method of Wagner and
 * Fischer, "The string-to-string correction problem", Journal of the ACM 21 (1974), with the way read back.
 */
function align(
  typed: readonly string[],
  right: readonly string[],
  key: (character: string) => string,
): readonly SpellingStep[] {
  const [a, b] = [typed.map(key), right.map(key)];
  const width = b.length + 1;
  const cost = new Uint16Array((a.length + 1) * width);
  const at = (i: number, j: number): number => cost[i * width + j] as number;
  for (let i = 0; i <= a.length; i++)
    for (let j = 0; j <= b.length; j++)
      cost[i * width + j] =
        i === 0 || j === 0
          ? i + j
          : Math.min(at(i - 1, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1), at(i - 1, j) + 1, at(i, j - 1) + 1);
  const steps: SpellingStep[] = [];
  for (let [i, j] = [a.length, b.length]; i > 0 || j > 0; ) {
    const same = i > 0 && j > 0 && a[i - 1] === b[j - 1];
    if (i > 0 && j > 0 && at(i, j) === at(i - 1, j - 1) + (same ? 0 : 1))
      steps.push({ kind: same ? "same" : "wrong", typed: typed[--i] as string, right: right[--j] as string });
    else if (j > 0 && at(i, j) === at(i, j - 1) + 1)
      steps.push({ kind: "missing", typed: "", right: right[--j] as string });
    else steps.push({ kind: "extra", typed: typed[--i] as string, right: "" });
  }
  return steps.reverse();
}
