// The distribution of a day's reviews by plain convolution: the alternative that the benchmark runs beside the exact load.
// Positive numbers only; the counts are taken in binary digits as Horner's rule does it, so that the distribution so far
// is doubled for each digit and one card is added for each term whose count has that digit.
import type { Pmf } from "../src/core/load/distribution.ts";

/** How many of `count` cards are asked, each independently with the same chance from 0 to 1. */
export interface BinomialTerm {
  readonly count: number;
  readonly chance: number;
}

/** Chance that is cut off from both ends of a distribution, in total over all steps of its making. */
const LEFT_OUT = 1e-15;

/**
 * Distribution of the sum of independent binomial counts; less than `LEFT_OUT` of it is cut away. Counts are below
 * 2^31. Cost: some 300 × (variance of the sum) for the convolutions, and terms × width for each binary digit of the
 * counts; it does not grow with the square of the number of cards.
 *
 * A binomial count is a sum of as many single cards, so the generating function is the product of (1 − q + q s)^n.
 * With n in binary digits this is done as Horner's rule does it: for each digit, from the highest, the distribution
 * so far is doubled (convolved with itself) and one card is added for each term whose n has that digit.
 */
export function sumOfBinomials(terms: readonly BinomialTerm[]): Pmf {
  const digits = 32 - Math.clz32(terms.reduce((most, { count }) => Math.max(most, count), 0));
  let sum = certain(0);
  for (let digit = digits - 1; digit >= 0; digit--) {
    const chances = terms.filter(({ count }) => (count >>> digit) & 1).map(({ chance }) => chance);
    // Two ends are cut for each card and each convolution; later doublings double what is cut now.
    const cut = LEFT_OUT / (2 ** digit * digits * 2 * (chances.length + 2));
    const doubled = sum.chances.length > 1 ? normalised(trim(convolve(sum, sum), cut)) : certain(2 * sum.first);
    sum = trim(convolve(doubled, sumOfCards(chances, cut)), cut);
  }
  return sum;
}

const certain = (count: number): Pmf => ({ first: count, chances: Float64Array.of(1) });

/** Single cards, added one by one within the window of counts whose chances are kept. */
function sumOfCards(asked: readonly number[], cut: number): Pmf {
  const chances = new Float64Array(asked.length + 1);
  let low = 0;
  let high = 0;
  chances[0] = 1;
  for (const q of asked) {
    high++;
    for (let i = high; i > low; i--) chances[i] = (chances[i] as number) * (1 - q) + (chances[i - 1] as number) * q;
    chances[low] = (chances[low] as number) * (1 - q);
    if ((chances[high] as number) < cut) chances[high--] = 0;
    if ((chances[low] as number) < cut) chances[low++] = 0;
  }
  return { first: low, chances: chances.subarray(low, high + 1) };
}

/** The same chances, adding up to 1, so that no later doubling doubles an error of their sum. */
function normalised({ first, chances }: Pmf): Pmf {
  const sum = chances.reduce((all, one) => all + one, 0);
  return { first, chances: chances.map((one) => one / sum) };
}

function convolve(a: Pmf, b: Pmf): Pmf {
  const [inner, outer] = a.chances.length > b.chances.length ? [a.chances, b.chances] : [b.chances, a.chances];
  const chances = new Float64Array(inner.length + outer.length - 1);
  for (let i = 0; i < outer.length; i++) {
    const weight = outer[i] as number;
    for (let j = 0; j < inner.length; j++) chances[i + j] = (chances[i + j] as number) + weight * (inner[j] as number);
  }
  return { first: a.first + b.first, chances };
}

/** Cuts less than `cut` from each end. */
function trim({ first, chances }: Pmf, cut: number): Pmf {
  let low = 0;
  let high = chances.length;
  for (let lost = chances[low] ?? 1; lost < cut; lost += chances[low] ?? 1) low++;
  for (let lost = chances[high - 1] ?? 1; lost < cut; lost += chances[high - 1] ?? 1) high--;
  return { first: first + low, chances: chances.subarray(low, high) };
}
