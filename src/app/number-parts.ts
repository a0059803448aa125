// Numbers of a fact's parts (gaps, items, labels) when it comes from outside. Only the store knows every number that a
// fact ever had, so numbers that come with a draft only say which angle is meant by which part.
import type { Angle, Fact, FactContent } from "../core/facts/fact.ts";
import { freshGaps, renumberGaps } from "../core/facts/gaps.ts";
import { renumberLabels } from "../core/facts/label-numbers.ts";
import { freshNumbers, renumberItems } from "../core/facts/list-numbers.ts";

type Unnumbered<K extends FactContent["kind"], N extends string> = Omit<Extract<FactContent, { kind: K }>, N> & {
  readonly [P in N]?: readonly number[] | undefined;
};

/** A fact as it comes from outside: gaps of a statement and items of a list are numbered here. */
export type FactDraft =
  | Exclude<FactContent, { kind: "statement" | "list" }>
  | Unnumbered<"statement", "gaps">
  | Unnumbered<"list", "numbers">;

/** A new fact with the numbers 1, 2, 3 … */
export function withFreshNumbers(draft: FactDraft): FactContent {
  switch (draft.kind) {
    case "statement":
      return { ...draft, gaps: freshGaps(draft.statement) };
    case "list":
      return { ...draft, numbers: freshNumbers(draft.items) };
    case "labelled":
      return { ...draft, labels: renumberLabels([], draft.labels, []) };
    default:
      return draft;
  }
}

/** A reworded fact: parts keep their numbers, new ones get numbers that none of its cards (`asked`) ever had. */
export function withNumbersAfter(before: Fact, asked: readonly Angle[], draft: FactDraft): FactContent {
  const used = asked.flatMap((angle) => {
    const number = /-(\d+)$/.exec(angle)?.[1];
    return number === undefined ? [] : [Number(number)];
  });
  switch (draft.kind) {
    case "statement": {
      const gaps = before.kind === "statement" ? before : { statement: "", gaps: [] };
      return { ...draft, gaps: renumberGaps(gaps, draft.statement, used) };
    }
    case "list": {
      const list = before.kind === "list" ? before : { items: [], numbers: [] };
      return { ...draft, numbers: renumberItems(list, draft.items, used) };
    }
    case "labelled": {
      const numbers = before.kind === "labelled" ? before.labels.map((label) => label.number) : [];
      return { ...draft, labels: renumberLabels(numbers, draft.labels, used) };
    }
    default:
      return draft;
  }
}

/** Angles chosen by the numbers in the draft, as the same parts are numbered in `content`. */
export function translateAngles(draft: FactDraft, content: FactContent, angles: readonly Angle[]): readonly Angle[] {
  const from = numbersOf(draft);
  const to = numbersOf(content);
  if (from.length !== to.length) return angles;
  const known = new Map(from.map((number, i) => [number, to[i]]));
  return angles.map((angle) => angle.replace(/\d+$/, (number) => `${known.get(Number(number)) ?? number}`) as Angle);
}

function numbersOf(draft: FactDraft): readonly number[] {
  switch (draft.kind) {
    case "statement":
      return draft.gaps ?? [];
    case "list":
      return draft.numbers ?? [];
    case "labelled":
      return draft.labels.map((label) => label.number);
    default:
      return [];
  }
}
