// Boxes played with chance, pile by pile, as on paper by the plain chart: a check on the exact load that shares
// nothing with it. The calendar is written out here and piles are only numbers of cards.

/** How many boxes are played, for how many days from day 1, and how. */
export interface SampleQuestion {
  readonly boxes: number;
  readonly days: number;
  readonly newPerDay: number;
  /** Chance of recall in every compartment. */
  readonly recall: number;
  /** How many there are; seven unless it is said. */
  readonly compartments?: number;
  /** A whole number; the same seed gives the same boxes. */
  readonly seed: number;
}

/** The reviews of one day over all boxes. */
export interface DaySample {
  readonly mean: number;
  readonly variance: number;
  /** Fourth central moment. */
  readonly fourth: number;
  /** Share of the boxes with so many reviews or fewer. */
  atMost(count: number): number;
}

/** Compartment 1 every day; k from 2 on on days that leave 2^(k-2) when divided by 2^(k-1). */
const isVisited = (k: number, day: number): boolean => k === 1 || day % 2 ** (k - 1) === 2 ** (k - 2);

/** Uniform 32-bit numbers, the same for one seed: xorshift128, Marsaglia, Xorshift RNGs, Journal of Statistical Software 8 (14), 2003. */
export function xorshift128(seed: number): () => number {
  let [x, y, z, w] = [123_456_789, 362_436_069, 521_288_629, seed | 0];
  return () => {
    const t = x ^ (x << 11);
    x = y;
    y = z;
    z = w;
    w = w ^ (w >>> 19) ^ (t ^ (t >>> 8));
    return w >>> 0;
  };
}

/** Plays the boxes and gives each day's reviews; cost: one random number for every review of every box. */
export function samplePiles(question: SampleQuestion): readonly DaySample[] {
  const { boxes, days, newPerDay, recall, compartments = 7, seed } = question;
  const next = xorshift128(seed);
  const threshold = recall * 2 ** 32;
  const visits = Array.from({ length: days }, (_, i) => {
    const all = Array.from({ length: compartments }, (_, k) => compartments - k);
    return all.filter((k) => isVisited(k, i + 1));
  });
  const reviews = Array.from({ length: days }, () => new Float64Array(boxes));
  for (let box = 0; box < boxes; box++) {
    // piles[k] is compartment k; what is recalled in the last goes to the pile beyond and is never taken up again.
    const piles = new Int32Array(compartments + 2);
    for (let i = 0; i < days; i++) {
      let asked = 0;
      let missed = 0;
      for (const k of visits[i] as number[]) {
        const cards = piles[k] as number;
        let recalled = 0;
        for (let card = 0; card < cards; card++) if (next() < threshold) recalled++;
        piles[k] = 0;
        piles[k + 1] = (piles[k + 1] as number) + recalled;
        asked += cards;
        missed += cards - recalled;
      }
      piles[1] = (piles[1] as number) + missed + newPerDay;
      (reviews[i] as Float64Array)[box] = asked;
    }
  }
  return reviews.map(describeDay);
}

function describeDay(counts: Float64Array): DaySample {
  const meanOf = (value: (count: number) => number): number =>
    counts.reduce((sum, count) => sum + value(count), 0) / counts.length;
  const mean = meanOf((count) => count);
  return {
    mean,
    variance: meanOf((count) => (count - mean) ** 2),
    fourth: meanOf((count) => (count - mean) ** 4),
    atMost: (most) => meanOf((count) => (count <= most ? 1 : 0)),
  };
}
