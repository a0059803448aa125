// The formulae of pages: which there are, how they stand in a line of text, and what is told of those that cannot be drawn.
import { LONGEST_FORMULA } from "../text/formula-limits.ts";
import type { FormulaBox, KitPage, TextRun } from "./page.ts";

/** A formula that pages need drawn. */
export interface WantedFormula {
  readonly tex: string;
  readonly alone: boolean;
  /** Where it stands, as a notice names it. */
  readonly places: ReadonlySet<string>;
}

/**
 * How much larger a formula is set than the text round it. Small letters of the mathematical typeface are 0.82 times as
 * high as those of the text, its capitals 0.96 times: between the two both look of one size.
 */
export const FORMULA_SCALE = 1.12;

/**
 * How far a formula in a line may reach above capitals and below the base line before the lines make room for it, in ems:
 * as far as letters with tails do. One that stands alone is taken as it is, so that it is centred.
 */
export const overhangOf = ({ alone }: Pick<TextRun, "alone">): number => (alone ? 0 : 0.2);

/** Largest width or height of a drawing, in ems: nothing that is meant for a sheet comes near. */
const LARGEST = 500;

/** Under what a formula's drawing is filed. */
export const formulaKey = ({ text, alone }: Pick<TextRun, "text" | "alone">): string =>
  `${alone ? "alone" : "in line"}: ${text}`;

/** Every formula of some pages once, by its key. */
export function formulaeOf(pages: readonly KitPage[]): ReadonlyMap<string, WantedFormula> {
  const wanted = new Map<string, { tex: string; alone: boolean; places: Set<string> }>();
  for (const { items } of pages)
    for (const item of items) {
      if (item.kind !== "text") continue;
      for (const run of item.runs) {
        if (run.look !== "formula") continue;
        const key = formulaKey(run);
        const one = wanted.get(key) ?? { tex: run.text, alone: run.alone === true, places: new Set<string>() };
        wanted.set(key, one);
        one.places.add(item.name);
      }
    }
  return wanted;
}

/** Whether a formula is short enough to be read at all. */
export const isReadable = ({ tex }: WantedFormula): boolean => tex.length <= LONGEST_FORMULA;

/** Whether a drawing is of a size that can be put on a page. */
export const isDrawable = ({ width, ascent, depth }: FormulaBox): boolean =>
  [width, ascent, depth].every(Number.isFinite) &&
  width > 0 &&
  ascent + depth > 0 &&
  width <= LARGEST &&
  ascent + depth <= LARGEST;

/** A sentence about a formula that is set as it was written. */
export function refusedNotice({ tex, places }: WantedFormula): string {
  const [first = "a text", ...more] = places;
  const where = more.length === 0 ? first : `${first} and ${more.length} more`;
  const shown = tex.length > 60 ? `${tex.slice(0, 60)} …` : tex;
  return `A formula in ${where} cannot be drawn, so it is printed as it was written: ${shown}`;
}

/** Joins its neighbours: no line is broken there (Unicode Standard Annex 14, LB11). */
const JOINER = "\u2060";

/**
 * The runs with every drawn formula tied to a letter, figure or dash that touches it, as in "the nth": the engine takes
 * a drawing for something that a line may be broken before and behind (LB20).
 */
export function tieFormulae(runs: readonly TextRun[]): readonly TextRun[] {
  const isDrawn = (run: TextRun | undefined): boolean => run?.box !== undefined;
  return runs.map((run, i) => {
    if (run.look === "formula") return run;
    const before = isDrawn(runs[i - 1]) && /^[\p{L}\p{M}\p{N}\p{Pd}]/u.test(run.text) ? JOINER : "";
    const after = isDrawn(runs[i + 1]) && /[\p{L}\p{M}\p{N}\p{Pd}]$/u.test(run.text) ? JOINER : "";
    return before === "" && after === "" ? run : { ...run, text: `${before}${run.text}${after}` };
  });
}
