// How many characters must be put in, taken out or replaced to make one text of another (Levenshtein 1966).
import { graphemes } from "./graphemes.ts";

/**
 * The edit distance of two texts in grapheme clusters, if it is at most `most`; otherwise `most` + 1. Only the band of
 * the table that can still come to so little is worked out: time in O(length · most).
 */
export function editDistance(one: string, other: string, most = Number.POSITIVE_INFINITY): number {
  return sequenceDistance(graphemes(one), graphemes(other), most);
}

/** As `editDistance`, for texts that are divided already. */
export function sequenceDistance(one: readonly string[], other: readonly string[], most: number): number {
  const [short, long] = one.length <= other.length ? [one, other] : [other, one];
  const limit = Math.min(most, long.length);
  if (long.length - short.length > limit) return most + 1;
  let row = Array.from({ length: short.length + 1 }, (_, i) => i);
  for (let i = 1; i <= long.length; i++) {
    const next = new Array<number>(short.length + 1).fill(limit + 1);
    const from = Math.max(1, i - limit);
    const to = Math.min(short.length, i + limit);
    if (from === 1) next[0] = i;
    let least = next[from - 1] ?? limit + 1;
    for (let j = from; j <= to; j++) {
      const same = long[i - 1] === short[j - 1] ? 0 : 1;
      const best = Math.min((row[j - 1] ?? 0) + same, (row[j] ?? limit) + 1, (next[j - 1] ?? limit) + 1);
      next[j] = best;
      if (best < least) least = best;
    }
    if (least > limit) return most + 1;
    row = next;
  }
  const distance = row[short.length] ?? 0;
  return distance > limit ? most + 1 : distance;
}
