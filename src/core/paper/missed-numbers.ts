// The numbers of missed cards as somebody types them from paper.
import { parseCardNumber, printedNumber } from "../cards/card-number.ts";
import { editDistance } from "../text/edit-distance.ts";

/** What is wrong with a number, and the due cards for which it may stand. */
export interface NumberProblem {
  readonly typed: string;
  /** Where it begins in the text. */
  readonly at: number;
  readonly reason: string;
  readonly near: readonly number[];
}

/** Numbers in the order in which they were typed, each once, and what cannot be one. */
export interface MissedNumbers {
  readonly numbers: readonly number[];
  readonly problems: readonly NumberProblem[];
}

/** A number with its check digit behind a dash, digits in a row, or something else between separators. */
const PIECE = /\d+\s*[-‐‑–−]\s*\d+|[^\s,;.،؛、，；。]+/gu;
const MOST_NEAR = 3;

/** Reads numbers with anything between them. Each must be a card's own, by its check digit, and among those that were due. */
export function parseMissed(text: string, due: ReadonlySet<number>): MissedNumbers {
  const numbers = new Set<number>();
  const problems: NumberProblem[] = [];
  for (const { 0: typed, index: at } of text.matchAll(PIECE)) {
    const parsed = parseCardNumber(typed);
    if (!parsed.ok) problems.push({ typed, at, reason: parsed.error, near: nearest(typed, due) });
    else if (!due.has(parsed.value))
      problems.push({
        typed,
        at,
        reason: `${printedNumber(parsed.value)} was not due on this day`,
        near: nearest(typed, due),
      });
    else numbers.add(parsed.value);
  }
  return { numbers: [...numbers], problems };
}

/** Reads numbers with anything between them; each must be a card's own, by its check digit. */
export function parseNumbers(
  text: string,
): Pick<MissedNumbers, "numbers"> & { readonly problems: readonly Omit<NumberProblem, "near">[] } {
  const read = [...text.matchAll(PIECE)].map(({ 0: typed, index: at }) => ({
    typed,
    at,
    parsed: parseCardNumber(typed),
  }));
  return {
    numbers: [...new Set(read.flatMap(({ parsed }) => (parsed.ok ? [parsed.value] : [])))],
    problems: read.flatMap(({ typed, at, parsed }) => (parsed.ok ? [] : [{ typed, at, reason: parsed.error }])),
  };
}

/** Due cards whose printed number is one slip away: a digit wrong, missing or too many, or two swapped. */
function nearest(typed: string, due: ReadonlySet<number>): readonly number[] {
  const digits = typed.replace(/\D/gu, "").replace(/^0+/u, "");
  if (digits === "") return [];
  return [...due].filter((number) => isOneSlip(digits, printedNumber(number).replace("-", ""))).slice(0, MOST_NEAR);
}

function isOneSlip(typed: string, right: string): boolean {
  if (editDistance(typed, right, 1) <= 1) return true;
  if (typed.length !== right.length) return false;
  const differ = [...typed].flatMap((digit, i) => (digit === right[i] ? [] : [i]));
  const [first = 0, second = 0] = differ;
  return (
    differ.length === 2 && second === first + 1 && typed[first] === right[second] && typed[second] === right[first]
  );
}

/** The text with a due card's number in the place of one that is wrong. */
export const mended = (text: string, { typed, at }: Pick<NumberProblem, "typed" | "at">, number: number): string =>
  text.slice(0, at) + printedNumber(number) + text.slice(at + typed.length);
