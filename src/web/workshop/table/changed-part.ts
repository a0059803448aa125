// Where two texts differ, so that a change can be seen at a glance.

/** A text in three parts; the middle one is what the other text has not. */
export interface ChangedPart {
  readonly before: string;
  readonly changed: string;
  readonly after: string;
}

const segmenter = new Intl.Segmenter(undefined, { granularity: "grapheme" });
const graphemes = (text: string): readonly string[] => [...segmenter.segment(text)].map((part) => part.segment);

/** What two texts have in common at their beginning and end, and what is between in either. */
export function changedParts(one: string, other: string): readonly [ChangedPart, ChangedPart] {
  const [a, b] = [graphemes(one), graphemes(other)];
  const most = Math.min(a.length, b.length);
  let start = 0;
  while (start < most && a[start] === b[start]) start++;
  let end = 0;
  while (end < most - start && a[a.length - 1 - end] === b[b.length - 1 - end]) end++;
  const part = (all: readonly string[]): ChangedPart => ({
    before: all.slice(0, start).join(""),
    changed: all.slice(start, all.length - end).join(""),
    after: all.slice(all.length - end).join(""),
  });
  return [part(a), part(b)];
}
