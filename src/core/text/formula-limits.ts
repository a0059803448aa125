// How formulae in TeX notation are read, on screen and for paper alike, so that both refuse the same ones.

/** Longest formula, in UTF-16 code units: more is no formula but an accident, or worse. */
export const LONGEST_FORMULA = 2_000;

/**
 * What the reader of formulae is told. Nothing is taken on trust: no links, no pictures, no classes. Macros unfold 500
 * times at the most, and no space or rule is longer than 20 em.
 */
export const FORMULA_READING = {
  trust: false,
  strict: false,
  throwOnError: true,
  maxExpand: 500,
  maxSize: [20, 20] as [number, number],
};

/** The formula as it is read: one that stands alone has room, so that sums and fractions are set large. */
export const formulaSource = (tex: string, alone: boolean): string => (alone ? `\\displaystyle ${tex}` : tex);
