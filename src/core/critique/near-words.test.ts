import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { editDistance } from "../text/edit-distance.ts";
import { graphemes } from "../text/graphemes.ts";
import { type NearPair, nearEdits, nearPairs } from "./near-words.ts";

/** Every pair compared, by the words of the definition. */
function allPairs(texts: readonly (readonly string[])[]): readonly NearPair[] {
  return texts.flatMap((one, i) =>
    texts.slice(i + 1).flatMap((other, n): readonly NearPair[] => {
      const differ = one.flatMap((word, place) => (word === other[place] ? [] : [place]));
      const [place] = differ;
      if (one.length !== other.length || differ.length !== 1 || place === undefined) return [];
      const [a = "", b = ""] = [one[place], other[place]];
      if (/\p{Nd}/u.test(a + b)) return [];
      const most = nearEdits(Math.min(graphemes(a).length, graphemes(b).length));
      return most > 0 && editDistance(a, b) <= most ? [[i, i + 1 + n]] : [];
    }),
  );
}

const sorted = (pairs: readonly NearPair[]): readonly string[] => pairs.map(String).sort();

describe("near pairs", () => {
  it("are what comparing each with each finds", () => {
    const word = fc.string({ unit: fc.constantFrom("a", "b", "c", "1", "ö"), minLength: 1, maxLength: 11 });
    const text = fc.array(word, { minLength: 1, maxLength: 3 });
    // Near ones are made from each other, or there would be none.
    const near = fc
      .tuple(text, fc.nat(), fc.nat(), fc.constantFrom("", "a", "x"))
      .map(([words, n, at, put]) =>
        words.map((one, i) => (i === n % words.length ? one.slice(0, at % 8) + put + one.slice((at % 8) + 1) : one)),
      );
    fc.assert(
      fc.property(fc.array(fc.oneof(text, near), { maxLength: 40 }), (texts) => {
        const doubled = [...texts, ...texts.map((words) => words.map((one, i) => (i === 0 ? `${one}a` : one)))];
        expect(sorted(nearPairs(doubled))).toEqual(sorted(allPairs(doubled)));
      }),
      { numRuns: 300 },
    );
  });

  it("are not looked for among words too long to be words", () => {
    const long = "k".repeat(5_000);
    expect(nearPairs([[long], [`${long}e`], [`${long.slice(1)}`]])).toEqual([]);
    // Beside the limit both ways of finding them agree.
    const texts = [58, 59, 60, 61, 62, 63].map((length) => ["k".repeat(length)]);
    expect(sorted(nearPairs(texts))).toEqual(sorted(allPairs(texts)));
  });

  it("are found among many that share all but one word", () => {
    const texts = Array.from({ length: 3_000 }, (_, i) => [
      "star",
      `k${i.toString(26).replace(/\d/gu, (d) => "qrstuvwxyz"[Number(d)] ?? "")}mmmm`,
    ]);
    expect(sorted(nearPairs(texts.slice(0, 400)))).toEqual(sorted(allPairs(texts.slice(0, 400))));
  });
});
