// The exact distribution of a day's work: a sum over cohorts of cards that are asked or not, recalled or missed.
// No simulation and no normal approximation. The sum's characteristic function is a product over the cards; it is
// inverted by a discrete Fourier transform over the window of sums that can matter (the DFT-CF method: Hong, On
// computing the distribution function for the Poisson binomial distribution, 2013; cited from memory).

/** So many cards, each of which is independently asked and recalled, asked and missed, or not asked. */
export interface Draw {
  /** A whole number from 0 on. */
  readonly count: number;
  /** Chance, 0 to 1, of being asked and recalled. */
  readonly recalled: number;
  /** Chance, 0 to 1, of being asked and missed; the two add up to at most 1. */
  readonly missed: number;
}

/** What a recalled and a missed card add to the sum, whole numbers from 0 on, not both 0. */
export interface Steps {
  readonly recalled: number;
  readonly missed: number;
}

/** Every card that is asked counts as one review. */
export const REVIEWS: Steps = { recalled: 1, missed: 1 };

/** Chances of the sums `first`, `first` + 1, …; all other sums together have a chance below `LEFT_OUT`. */
export interface Pmf {
  readonly first: number;
  readonly chances: Float64Array;
}

/** Chance outside the window of a distribution, or weight of the frequencies left out: e^-37 each, and rounding. */
export const LEFT_OUT = 1e-13;

/** Natural logarithm of what is small enough to be left out. */
const NEGLIGIBLE = -37;

/** Mean and standard deviation of the sum. */
export function moments(draws: readonly Draw[], steps: Steps): { readonly mean: number; readonly sd: number } {
  let mean = 0;
  let variance = 0;
  for (const { count, recalled, missed } of draws) {
    const one = recalled * steps.recalled + missed * steps.missed;
    // Σ p x² − (Σ p x)² cancels for cards that are sure to be asked; the squares of differences do not.
    const rest = Math.max(0, 1 - recalled - missed);
    const spread = recalled * (steps.recalled - one) ** 2 + missed * (steps.missed - one) ** 2 + rest * one ** 2;
    mean += count * one;
    variance += count * spread;
  }
  return { mean, sd: Math.sqrt(variance) };
}

/**
 * Distribution of the sum over all cards. Sums stay below 2^31. Cost: about 30 × draws while one spread governs
 * the sum, and the window (some 17 standard deviations) × 30; it grows neither with the number of cards nor with
 * their spread.
 */
export function sumOf(draws: readonly Draw[], steps: Steps): Pmf {
  const { mean, sd } = moments(draws, steps);
  const { first, size } = windowOf(draws, steps, mean, sd);
  const chances = new Float64Array(size).fill(1 / size);
  const damping = dampingOf(draws, steps);
  const groups = groupsOf(draws);
  for (let j = 1; 2 * j <= size; j++) {
    const angle = (2 * Math.PI * j) / size;
    if (damping(angle) < NEGLIGIBLE) continue;
    const { log, turn } = characteristic(groups, steps, angle);
    const weight = ((2 * j === size ? 1 : 2) * Math.exp(log)) / size;
    addWave(chances, weight, turn - angle * first, angle);
  }
  for (let i = 0; i < size; i++) if ((chances[i] as number) < 0) chances[i] = 0;
  return { first, chances };
}

/**
 * The smallest sum whose cumulative probability reaches the level; a level not between 0 and 1 is a `RangeError`.
 * A level that is missed by less than `LEFT_OUT` counts as reached.
 */
export function quantile({ first, chances }: Pmf, level: number): number {
  if (!(level > 0 && level < 1)) throw new RangeError(`a quantile's level lies between 0 and 1, not at ${level}`);
  let reached = 0;
  for (let i = 0; i < chances.length; i++) {
    reached += chances[i] as number;
    if (reached + LEFT_OUT >= level) return first + i;
  }
  return first + chances.length - 1;
}

/** The quantile of each level. */
export const quantilesOf = (pmf: Pmf, levels: readonly number[]): readonly number[] =>
  levels.map((level) => quantile(pmf, level));

/**
 * The sums that can matter. By Bernstein's inequality the chance of a deviation of t or more is at most
 * 2 exp(−t² / (2 σ² + 2 s t / 3)), s the largest step; t is chosen so that this is negligible.
 */
function windowOf(draws: readonly Draw[], steps: Steps, mean: number, sd: number) {
  const largest = Math.max(steps.recalled, steps.missed);
  const third = (-NEGLIGIBLE * largest) / 3;
  const reach = sd === 0 ? 0.5 : third + Math.sqrt(third ** 2 - 2 * NEGLIGIBLE * sd ** 2);
  const most = draws.reduce((sum, { count, recalled, missed }) => {
    const step = Math.max(recalled > 0 ? steps.recalled : 0, missed > 0 ? steps.missed : 0);
    return sum + count * step;
  }, 0);
  const first = Math.max(0, Math.ceil(mean - reach - LEFT_OUT * mean));
  const last = Math.min(most, Math.floor(mean + reach + LEFT_OUT * mean));
  return { first, size: Math.max(1, last - first + 1) };
}

/**
 * An upper bound of the logarithm of the characteristic function's size, by angle. For one card its square is
 * 1 − 2 Σ p q (1 − cos ω(x − y)) over the pairs of what can happen to it, and log(1 − 2 z) ≤ −2 z.
 */
function dampingOf(draws: readonly Draw[], steps: Steps): (angle: number) => number {
  let up = 0;
  let down = 0;
  let apart = 0;
  for (const { count, recalled, missed } of draws) {
    const rest = Math.max(0, 1 - recalled - missed);
    up += count * rest * recalled;
    down += count * rest * missed;
    apart += count * recalled * missed;
  }
  return (angle) =>
    up * (Math.cos(angle * steps.recalled) - 1) +
    down * (Math.cos(angle * steps.missed) - 1) +
    apart * (Math.cos(angle * (steps.recalled - steps.missed)) - 1);
}

/** Draws with the same number of cards, their chances side by side. */
interface Group {
  readonly count: number;
  readonly recalled: Float64Array;
  readonly missed: Float64Array;
}

function groupsOf(draws: readonly Draw[]): readonly Group[] {
  const byCount = new Map<number, Draw[]>();
  for (const draw of draws) {
    const group = byCount.get(draw.count);
    if (group) group.push(draw);
    else if (draw.count > 0) byCount.set(draw.count, [draw]);
  }
  return [...byCount].map(([count, group]) => ({
    count,
    recalled: Float64Array.from(group, (draw) => draw.recalled),
    missed: Float64Array.from(group, (draw) => draw.missed),
  }));
}

/** Logarithm of the size, and the angle, of E exp(i ω sum): one card of each draw is multiplied up, then taken to the power of the count. */
function characteristic(groups: readonly Group[], steps: Steps, angle: number) {
  const up = Math.cos(angle * steps.recalled) - 1;
  const upTurn = Math.sin(angle * steps.recalled);
  const down = Math.cos(angle * steps.missed) - 1;
  const downTurn = Math.sin(angle * steps.missed);
  let log = 0;
  let turn = 0;
  for (const { count, recalled, missed } of groups) {
    let real = 1;
    let imaginary = 0;
    for (let i = 0; i < recalled.length; i++) {
      const q = recalled[i] as number;
      const m = missed[i] as number;
      const a = 1 + q * up + m * down;
      const b = q * upTurn + m * downTurn;
      const next = real * a - imaginary * b;
      imaginary = real * b + imaginary * a;
      real = next;
    }
    log += (count / 2) * Math.log(real * real + imaginary * imaginary);
    turn += count * Math.atan2(imaginary, real);
    if (log < NEGLIGIBLE) break;
  }
  return { log, turn };
}

/** Adds `weight` × cos(start − angle i) to each element. */
function addWave(sums: Float64Array, weight: number, start: number, angle: number): void {
  let real = weight * Math.cos(start);
  let imaginary = weight * Math.sin(start);
  const turn = Math.cos(angle);
  const side = Math.sin(angle);
  for (let i = 0; i < sums.length; i++) {
    sums[i] = (sums[i] as number) + real;
    const next = real * turn + imaginary * side;
    imaginary = imaginary * turn - real * side;
    real = next;
  }
}
