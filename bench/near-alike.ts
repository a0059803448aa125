// What it costs to find prompts that are nearly alike among 100,000 cards, and the ratio to comparing each with each
// on 5,000, from one run. Run: npm run bench:alike   (about half a minute)
//
// Prompts are made from real names: the 88 constellations cut into syllables and put together anew, in a few dozen
// sentences as guides write them, so that many prompts share all words but one, which is the hard case.
import { nearEdits, nearPairs } from "../src/core/critique/near-words.ts";
import { uniform } from "../src/core/random.ts";
import { sequenceDistance } from "../src/core/text/edit-distance.ts";
import { foldText } from "../src/core/text/fold-text.ts";
import { graphemes } from "../src/core/text/graphemes.ts";
import { CONSTELLATIONS } from "../src/demo/sky/sky-tables.ts";

const MANY = 100_000;
const FEW = 5_000;
const RUNS = 3;

const SENTENCES = [
  "brightest star of",
  "genitive of",
  "abbreviation of",
  "where to look for",
  "who is shown by",
  "neighbour to the north of",
  "best month to see",
  "story told about",
];

const syllables = CONSTELLATIONS.flatMap(
  ({ name }) => foldText(name).match(/[^aeiou\s]*[aeiou]+(?:[^aeiou\s](?![aeiou]))?/gu) ?? [],
);

function prompts(count: number): readonly (readonly string[])[] {
  return Array.from({ length: count }, (_, i) => {
    const pick = (n: number, all: readonly string[]): string =>
      all[Math.floor(uniform(`${n}`, `${i}`) * all.length)] ?? "";
    const word = [1, 2, 3].map((n) => pick(n, syllables)).join("");
    return [...pick(0, SENTENCES).split(" "), word];
  });
}

/** Each with each, by the same definition and with the same distance. */
function allPairs(texts: readonly (readonly string[])[]): number {
  const letters = texts.map((words) => words.map((word) => graphemes(word)));
  let found = 0;
  for (let i = 0; i < texts.length; i++) {
    for (let j = i + 1; j < texts.length; j++) {
      const [one, other] = [texts[i] ?? [], texts[j] ?? []];
      if (one.length !== other.length) continue;
      let place = -1;
      let differ = 0;
      for (let n = 0; n < one.length && differ < 2; n++)
        if (one[n] !== other[n]) {
          differ++;
          place = n;
        }
      if (differ !== 1) continue;
      const [a, b] = [letters[i]?.[place] ?? [], letters[j]?.[place] ?? []];
      const most = nearEdits(Math.min(a.length, b.length));
      if (most > 0 && sequenceDistance(a, b, most) <= most) found++;
    }
  }
  return found;
}

function quickest<T>(work: () => T): { readonly ms: number; readonly value: T } {
  let best = { ms: Number.POSITIVE_INFINITY, value: work() };
  for (let i = 0; i < RUNS; i++) {
    const begun = performance.now();
    const value = work();
    best = performance.now() - begun < best.ms ? { ms: performance.now() - begun, value } : best;
  }
  return best;
}

const collect = (globalThis as { gc?: () => void }).gc;
if (!collect) throw new Error("Run with --expose-gc, or memory means nothing.");

const many = prompts(MANY);
collect();
const before = process.memoryUsage().rss;
const begun = performance.now();
const pairs = nearPairs(many).length;
const ms = performance.now() - begun;
// The highest that the process ever stood, kept by the system.
const peak = process.resourceUsage().maxRSS * 1024;
console.log(
  `${MANY} cards, index: ${(ms / 1000).toFixed(2)} s, ${pairs} pairs, ${((peak - before) / 2 ** 20).toFixed(0)} MB more memory at the most`,
);

const few = prompts(FEW);
const index = quickest(() => nearPairs(few).length);
const each = quickest(() => allPairs(few));
console.log(`${FEW} cards, index: ${index.ms.toFixed(0)} ms, ${index.value} pairs`);
console.log(`${FEW} cards, each with each: ${each.ms.toFixed(0)} ms, ${each.value} pairs`);
console.log(
  `ratio ${(each.ms / index.ms).toFixed(1)}; found of them ${((100 * index.value) / each.value).toFixed(1)} %`,
);
const minutes = (each.ms * (MANY / FEW) ** 2) / 60_000;
console.log(
  `${MANY} cards each with each would take about ${minutes.toFixed(1)} minutes, ${((minutes * 60_000) / ms).toFixed(0)} times as long`,
);
