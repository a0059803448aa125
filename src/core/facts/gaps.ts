// Statements with gaps. A gap is written in [square brackets]; a bracket that is meant as a bracket
// is written \[ or \], a backslash \\. Gaps have numbers of their own, so that rewording a statement
// keeps the history of the cards made from it. Inside a formula \( … \) a bracket is part of the formula.
import { fail, ok, type Result } from "../result.ts";
import { formulaEnd } from "../text/formula-runs.ts";

/** A stretch of a statement: plain text, or the text inside a gap. */
export interface StatementPart {
  readonly text: string;
  readonly gap: boolean;
}

/** What is wrong with a statement, and the 1-based position (UTF-16 code unit) of the trouble. */
export interface GapProblem {
  readonly at: number;
  readonly reason: string;
}

/** Splits a statement at its gaps. Fails if a bracket has no partner, a gap is empty, or there is none. */
export function parseStatement(statement: string): Result<readonly StatementPart[], GapProblem> {
  const parts: StatementPart[] = [];
  let text = "";
  let openedAt = -1;
  const flush = (gap: boolean): void => {
    if (text !== "") parts.push({ text, gap });
    text = "";
  };
  for (let i = 0; i < statement.length; i++) {
    const c = statement[i] as string;
    const next = statement[i + 1];
    const end = formulaEnd(statement, i);
    if (end >= 0) {
      text += statement.slice(i, end);
      i = end - 1;
    } else if (c === "\\" && (next === "[" || next === "]" || next === "\\")) {
      text += next;
      i++;
    } else if (c === "[") {
      if (openedAt >= 0) return fail({ at: i + 1, reason: "a [ stands inside another gap" });
      flush(false);
      openedAt = i;
    } else if (c === "]") {
      if (openedAt < 0) return fail({ at: i + 1, reason: "a ] has no [ before it" });
      if (text.trim() === "") return fail({ at: openedAt + 1, reason: "the gap [ ] is empty" });
      flush(true);
      openedAt = -1;
    } else {
      text += c;
    }
  }
  if (openedAt >= 0) return fail({ at: openedAt + 1, reason: "a [ is never closed" });
  flush(false);
  if (!parts.some((part) => part.gap)) {
    return fail({ at: 1, reason: "there is no gap: put [square brackets] round what is to be asked" });
  }
  return ok(parts);
}

/** A text as it is written in a statement, inside a gap or outside: what would be a bracket or a backslash there is escaped. */
export function writtenInStatement(text: string): string {
  let written = "";
  for (let i = 0; i < text.length; i++) {
    const end = formulaEnd(text, i);
    if (end >= 0) {
      written += text.slice(i, end);
      i = end - 1;
    } else written += /[[\]\\]/u.test(text[i] as string) ? `\\${text[i]}` : text[i];
  }
  return written;
}

/** The texts of a statement's gaps, in order; none if the statement cannot be read. */
export function gapTexts(statement: string): readonly string[] {
  const parsed = parseStatement(statement);
  return parsed.ok ? parsed.value.filter((part) => part.gap).map((part) => part.text) : [];
}

/** Numbers for a new statement's gaps: 1, 2, 3 … */
export const freshGaps = (statement: string): readonly number[] => gapTexts(statement).map((_, i) => i + 1);

/**
 * Gap numbers for a reworded statement. A gap that keeps its text keeps its number, wherever it
 * moved; the rest pair up in order; what is new gets a number never used by this fact (`used`).
 */
export function renumberGaps(
  before: { readonly statement: string; readonly gaps: readonly number[] },
  statement: string,
  used: readonly number[],
): readonly number[] {
  const left = gapTexts(before.statement).map((text, i) => ({ text, number: before.gaps[i] ?? i + 1 }));
  const texts = gapTexts(statement);
  const numbers: (number | undefined)[] = texts.map((text) => {
    const at = left.findIndex((gap) => gap.text === text);
    return at < 0 ? undefined : left.splice(at, 1)[0]?.number;
  });
  let next = Math.max(0, ...before.gaps, ...used) + 1;
  return numbers.map((number) => number ?? left.shift()?.number ?? next++);
}
