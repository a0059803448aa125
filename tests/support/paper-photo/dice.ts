// Seeded chance for made photos. The generator is mulberry32 (public domain), good enough to scatter marks and noise.

/** Chance that always falls the same for one seed. */
export interface Dice {
  /** A number from `low` up to `high`. */
  between(low: number, high: number): number;
  /** True in so many cases of one. */
  chance(share: number): boolean;
  pick<T>(choices: readonly T[]): T;
  /** A normal variate with mean 0 and spread 1. */
  normal(): number;
}

/** The dice of a seed. */
export function dice(seed: number): Dice {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    between: (low, high) => low + next() * (high - low),
    chance: (share) => next() < share,
    pick: (choices) => choices[Math.floor(next() * choices.length)] as never,
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  };
}
