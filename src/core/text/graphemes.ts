// What a reader takes for one character: extended grapheme clusters after Unicode Standard Annex 29.

const segmenter = new Intl.Segmenter("und", { granularity: "grapheme" });

/** The characters of a text as a reader counts them. */
export const graphemes = (text: string): readonly string[] => Array.from(segmenter.segment(text), (one) => one.segment);
