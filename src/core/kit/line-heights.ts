// What is known of lines before they are set: their heights, and the sizes in which a text is tried.
import type { TextItem } from "./page.ts";

/** Sizes to try, in points, each list from large to small. */
export interface SizeTrial {
  /** Without hyphens; the first that fits is taken. */
  readonly whole: readonly number[];
  /** Taken without a trial if none of these fits: at this size the text fits for certain. */
  readonly sure: number | null;
  /** With hyphens, if there is no size that is sure. */
  readonly hyphenated: readonly number[];
  /** Up to this size the longest word is certain to fit on a line. */
  readonly wordFits: number;
}

/** Points in a millimetre. */
export const POINTS = 72 / 25.4;

/** Between two lines, in ems: from a base line to the top of the next line's capitals. */
const LEADING = 0.55;
/** Where signs stand below and above the letters, so that those of two lines do not meet. Found by looking at pages. */
const LEADING_OF: Readonly<Record<string, number>> = {
  ...{ hi: 0.85, mr: 0.85, ne: 0.85, sa: 0.85 },
  ...{ ar: 0.7, fa: 0.7, ur: 0.7, ps: 0.7, ckb: 0.7 },
  ...{ th: 0.8, zh: 0.7, ja: 0.7, ko: 0.7 },
};

/** The space between two lines of a language, in ems. */
export const leadingOf = (language: string): number => LEADING_OF[language] ?? LEADING;

/** Sizes go down by half a point. */
const STEP = 0.5;

/** Every size between the largest and the least of a text, both included. */
export function sizesOf({ most, least }: TextItem): readonly number[] {
  const count = Math.max(0, Math.ceil((most - least) / STEP));
  return [...Array.from({ length: count }, (_, i) => most - i * STEP), least];
}

/** How high so many lines are, in ems: from the top of the first capitals to the last base line. */
export function heightOf(counts: readonly number[], capital: number, leading: number): number {
  const count = counts.reduce((sum, one) => sum + one, 0);
  return count * capital + Math.max(0, count - 1) * leading;
}
