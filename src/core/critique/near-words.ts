// Finding, among very many texts, those that differ in one word that is itself nearly the same, without comparing each
// with each. Texts that are equal but for one word meet under the hash of the rest; near words meet under the hash of
// what is left when characters are taken out of them (symmetric deletion). Hashes only propose: every pair is verified.
import { hash32 } from "../random.ts";
import { sequenceDistance } from "../text/edit-distance.ts";
import { graphemes } from "../text/graphemes.ts";

/** Two texts by their place in the list, the first place first. */
export type NearPair = readonly [one: number, other: number];

/** Words shorter than this are told apart at a glance, or are too many alike; from `TWO_FROM` on two edits are near. */
const ONE_FROM = 4;
const TWO_FROM = 8;

/** What is longer is no word but an address or a key, and would have too many characters to be left out in pairs. */
const LONGEST = 60;

/** How many edits make two words, of which the shorter has this length, still nearly the same; 0 for none. */
export const nearEdits = (length: number): number =>
  length > LONGEST ? 0 : length >= TWO_FROM ? 2 : length >= ONE_FROM ? 1 : 0;

/** A hash and the place of what has it, in one number, so that sorting brings equal hashes together. */
const PLACES = 2 ** 20;

/** At most so many texts are looked through at once. */
export const MOST_TEXTS = PLACES;

/**
 * Every pair of texts that have the same words but one, where the two words are at most `nearEdits` apart and neither
 * holds a digit. Texts are lists of words, folded already. Exact: it finds what comparing each with each finds.
 * Throws a RangeError for more than `MOST_TEXTS`.
 */
export function nearPairs(texts: readonly (readonly string[])[]): readonly NearPair[] {
  if (texts.length > MOST_TEXTS) throw new RangeError(`more than ${MOST_TEXTS} texts`);
  const pairs: NearPair[] = [];
  for (let place = 0; ; place++) {
    const long = texts.flatMap((words, i) => (words.length > place ? [i] : []));
    if (long.length < 2) break;
    const packed = new Float64Array(long.length);
    for (const [n, i] of long.entries()) packed[n] = hashWithout(texts[i] ?? [], place) * PLACES + i;
    for (const group of equalHashes(packed)) for (const pair of pairsInGroup(texts, group, place)) pairs.push(pair);
  }
  return pairs;
}

const hashWithout = (words: readonly string[], place: number): number =>
  hash32(`${words.length}`, words.map((word, i) => (i === place ? "" : word)).join("\u0001"));

/** Groups of places that share a hash. */
function* equalHashes(packed: Float64Array): Generator<readonly number[]> {
  packed.sort();
  let from = 0;
  for (let i = 1; i <= packed.length; i++) {
    const same =
      i < packed.length && Math.floor((packed[i] ?? 0) / PLACES) === Math.floor((packed[from] ?? 0) / PLACES);
    if (same) continue;
    if (i - from > 1) yield Array.from(packed.subarray(from, i), (key) => key % PLACES);
    from = i;
  }
}

/** Near pairs among texts that are thought to differ in the word at `place` only. */
function pairsInGroup(
  texts: readonly (readonly string[])[],
  group: readonly number[],
  place: number,
): readonly NearPair[] {
  const byWord = new Map<string, number[]>();
  for (const i of group) {
    const word = texts[i]?.[place] ?? "";
    if (word.length < ONE_FROM || /\p{Nd}/u.test(word)) continue;
    const same = byWord.get(word);
    if (same) same.push(i);
    else byWord.set(word, [i]);
  }
  const words = [...byWord.keys()];
  return nearWords(words).flatMap(([a, b]) => {
    const [ones, others] = [byWord.get(words[a] ?? "") ?? [], byWord.get(words[b] ?? "") ?? []];
    return ones.flatMap((i) =>
      others
        .filter((j) => sameButOne(texts[i] ?? [], texts[j] ?? [], place))
        .map((j): NearPair => (i < j ? [i, j] : [j, i])),
    );
  });
}

const sameButOne = (one: readonly string[], other: readonly string[], place: number): boolean =>
  one.length === other.length && one.every((word, i) => i === place || word === other[i]);

/** Pairs of different words that are near each other. */
function nearWords(words: readonly string[]): readonly NearPair[] {
  if (words.length < 2) return [];
  const letters = words.map((word) => graphemes(word));
  const keys: number[] = [];
  for (const [i, word] of letters.entries())
    for (const left of withoutSome(word)) keys.push(hash32("", left) * PLACES + i);
  const seen = new Set<number>();
  const pairs: NearPair[] = [];
  for (const group of equalHashes(Float64Array.from(keys))) {
    for (const [n, a] of group.entries())
      for (const b of group.slice(n + 1)) {
        if (a === b || seen.has(a * PLACES + b)) continue;
        seen.add(a * PLACES + b);
        const [one, other] = [letters[a] ?? [], letters[b] ?? []];
        const most = nearEdits(Math.min(one.length, other.length));
        if (most > 0 && sequenceDistance(one, other, most) <= most) pairs.push([a, b]);
      }
  }
  return pairs;
}

/** The word, and what is left of it without one character, or without two where two edits are near. */
function withoutSome(word: readonly string[]): ReadonlySet<string> {
  const whole = word.join("");
  const left = new Set([whole]);
  // A word that is a little too long can still be near one that is not.
  const most = nearEdits(word.length <= LONGEST + 2 ? Math.min(word.length, LONGEST) : word.length);
  // Where each character begins, and where the word ends.
  const at = [0];
  for (const one of word) at.push((at.at(-1) ?? 0) + one.length);
  for (let i = 0; most >= 1 && i < word.length; i++) {
    const head = whole.slice(0, at[i]);
    left.add(head + whole.slice(at[i + 1]));
    for (let j = i + 1; most >= 2 && j < word.length; j++)
      left.add(head + whole.slice(at[i + 1], at[j]) + whole.slice(at[j + 1]));
  }
  return left;
}
