// Seeded pseudo-randomness. Everything random in the core is a pure function of a seed and a key,
// so a shuffle is the same in the browser, the server and the command line, whatever the input order.

/**
 * 32-bit hash of `text` under `seed`: FNV-1a over UTF-16 code units, then the 32-bit finalizer of
 * MurmurHash3 (both public domain). Good enough to shuffle with; not for security.
 */
export function hash32(seed: string, text: string): number {
  let h = 0x811c9dc5;
  const mix = (s: string): void => {
    for (let i = 0; i < s.length; i++) {
      h = Math.imul(h ^ s.charCodeAt(i), 0x01000193);
    }
  };
  mix(seed);
  mix("\u0000");
  mix(text);
  h ^= h >>> 16;
  h = Math.imul(h, 0x85ebca6b);
  h ^= h >>> 13;
  h = Math.imul(h, 0xc2b2ae35);
  h ^= h >>> 16;
  return h >>> 0;
}

/** The seeded uniform number in [0, 1) that belongs to `key`. */
export const uniform = (seed: string, key: string): number => hash32(seed, key) / 2 ** 32;

/** A copy of `items` in the seeded order of their keys; equal hashes fall back to key order. */
export function shuffleByKey<T>(items: readonly T[], seed: string, keyOf: (item: T) => string): T[] {
  return items
    .map((item) => ({ item, key: keyOf(item), order: hash32(seed, keyOf(item)) }))
    .sort((a, b) => a.order - b.order || (a.key < b.key ? -1 : a.key > b.key ? 1 : 0))
    .map((entry) => entry.item);
}
