// A text divided into its sentences.
import { goesOn } from "./abbreviations.ts";

/** A stretch of a text, from one UTF-16 code unit up to another. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Ends of sentences in scripts in which the segmenter knows only some: a danda in Hindi, a blank after Thai clauses is none. */
const LINE = /\n\s*\n|\n(?=\s*(?:[-–*•·]|\(?\d{1,3}[.)])\s)/u;

/**
 * The sentences of a text after Unicode Standard Annex 29, those put together again that an abbreviation has divided;
 * blank lines and bullets divide too. Each without the blanks around it. Every character that is not blank belongs to one.
 */
export function sentences(text: string, language = ""): readonly Stretch[] {
  const segmenter = new Intl.Segmenter(language === "" ? undefined : language, { granularity: "sentence" });
  const found: Stretch[] = [];
  let from = 0;
  for (const block of text.split(LINE)) {
    const start = text.indexOf(block, from);
    from = start + block.length;
    found.push(...inBlock(block, segmenter).map((one) => ({ from: start + one.from, to: start + one.to })));
  }
  return found.flatMap((one) => trimmed(text, one));
}

function inBlock(block: string, segmenter: Intl.Segmenter): readonly Stretch[] {
  const parts: Stretch[] = [];
  let from = 0;
  for (const { segment, index } of segmenter.segment(block)) {
    const to = index + segment.length;
    // The segmenter ends a sentence at every line end; a line that is only wrapped goes on.
    const wrapped = /[^.!?。！？।؟:;\s]\s*\n\s*$/u.test(segment);
    if (to < block.length && (wrapped || goesOn(block.slice(from, to), block.slice(to)))) continue;
    parts.push({ from, to });
    from = to;
  }
  return parts;
}

function trimmed(text: string, { from, to }: Stretch): readonly Stretch[] {
  const words = text.slice(from, to);
  const start = from + (words.length - words.trimStart().length);
  const end = to - (words.length - words.trimEnd().length);
  return end > start ? [{ from: start, to: end }] : [];
}
