// The words of a text in any script.

const segmenters = new Map<string, Intl.Segmenter>();

function segmenterOf(language: string): Intl.Segmenter {
  const known = segmenters.get(language);
  if (known) return known;
  const made = new Intl.Segmenter(language === "" ? undefined : language, { granularity: "word" });
  segmenters.set(language, made);
  return made;
}

/** Letters, marks and digits in a row; an apostrophe, point or comma between two of them divides nothing. */
const WORD = /[\p{L}\p{M}\p{N}]+(?:['’.,·_][\p{L}\p{M}\p{N}]+)*/gu;

/** The words of a text; by dictionary (Unicode Standard Annex 29) where nothing stands between words. */
export function wordsOf(text: string, language = "und"): readonly string[] {
  if (!runsOn(text)) return text.match(WORD) ?? [];
  const words: string[] = [];
  for (const { segment, isWordLike } of segmenterOf(language).segment(text)) if (isWordLike) words.push(segment);
  return words;
}

/** Whether a text is written without blanks between its words. */
export const runsOn = (text: string): boolean =>
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Thai}\p{Script=Lao}\p{Script=Khmer}\p{Script=Myanmar}]/u.test(
    text,
  );
