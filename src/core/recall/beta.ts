// The Beta distribution: what is known of a chance after so many successes and failures.

/** Parameters of a Beta distribution, both above 0. */
export interface Beta {
  readonly recalled: number;
  readonly missed: number;
}

/** Mean of the distribution. */
export const betaMean = ({ recalled, missed }: Beta): number => recalled / (recalled + missed);

/** Most steps of the continued fraction, and of the search for a quantile; each is far more than is ever needed. */
const STEPS = { fraction: 10_000, search: 200 } as const;

/** Where a fraction or a search has come to rest: a few units in the last place. */
const SETTLED = 4e-16;

/**
 * Regularised incomplete beta function I_x(a, b), the chance of a value up to x. The continued fraction of NIST's
 * Digital Library of Mathematical Functions, 8.17.22, evaluated by Lentz's method (Numerical Recipes, 6.4); right to
 * about 1e-14.
 */
export function betaCdf({ recalled: a, missed: b }: Beta, x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  // Beyond the mean the fraction converges faster from the other side.
  if (x > (a + 1) / (a + b + 2)) return 1 - betaCdf({ recalled: b, missed: a }, 1 - x);
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta(a, b)) / a;
  return front * continuedFraction(a, b, x);
}

/** The value that is reached with chance `level`, 0 to 1, to the last digits of a double. */
export function betaQuantile(beta: Beta, level: number): number {
  if (!(level >= 0 && level <= 1)) throw new RangeError(`a quantile's level lies between 0 and 1, not at ${level}`);
  if (level === 0 || level === 1) return level;
  let low = 0;
  let high = 1;
  for (let i = 0; i < STEPS.search && high - low > SETTLED * high; i++) {
    const middle = (low + high) / 2;
    if (betaCdf(beta, middle) < level) low = middle;
    else high = middle;
  }
  return high;
}

function continuedFraction(a: number, b: number, x: number): number {
  const tiny = 1e-300;
  const away = (value: number): number => (Math.abs(value) < tiny ? tiny : value);
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  const step = (numerator: number): number => {
    d = 1 / away(1 + numerator * d);
    c = away(1 + numerator / c);
    return c * d;
  };
  for (let m = 1; m <= STEPS.fraction; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    fraction *= step(even);
    const change = step(odd);
    fraction *= change;
    if (Math.abs(change - 1) < SETTLED) break;
  }
  return fraction;
}

const logBeta = (a: number, b: number): number => logGamma(a) + logGamma(b) - logGamma(a + b);

/** Coefficients of Lanczos's approximation for g = 7 and nine terms, as computed by Godfrey (cited from memory). */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const;

/** Logarithm of the gamma function above 0. */
function logGamma(z: number): number {
  if (z < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * z)) - logGamma(1 - z);
  const x = z - 1;
  const sum = LANCZOS.reduce<number>((all, term, i) => (i === 0 ? all : all + term / (x + i)), LANCZOS[0]);
  const t = x + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (x + 0.5) * Math.log(t) - t + Math.log(sum);
}
