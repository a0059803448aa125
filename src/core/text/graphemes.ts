// What a reader takes for one character: extended grapheme clusters after Unicode Standard Annex 29.

const segmenter = new Intl.Segmenter("und", { granularity: "grapheme" });

/** Printable characters of which none joins another: Basic Latin to IPA Extensions. */
const SINGLE = /^[ -~\u00a0-\u02af]*$/u;

/** The characters of a text as a reader counts them. */
export const graphemes = (text: string): readonly string[] =>
  SINGLE.test(text) ? text.split("") : Array.from(segmenter.segment(text), (one) => one.segment);
