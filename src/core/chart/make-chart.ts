// Ready-made charts: the plain one that people draw by hand, and the levelled one a new box gets.
import { type Chart, type ChartCompartment, gcd, step } from "./chart.ts";

/** Doubling periods 1, 2, 4, … for compartments 1…K, in days. */
export const doublingPeriods = (compartments: number): readonly number[] =>
  Array.from({ length: compartments }, (_, i) => 2 ** i);

/**
 * A chart whose offsets spread the visits: from the lowest compartment up, each takes the first day on
 * which the fewest compartments below it are visited. For doubling periods and one bundle each this is
 * the ruler chart: compartment k ≥ 2 on days d ≡ 2^(k-2) (mod 2^(k-1)). The cost grows with the square
 * of the number of compartments times the longest step.
 */
export function spreadChart(periods: readonly number[], bundles: readonly number[] = periods.map(() => 1)): Chart {
  const compartments: ChartCompartment[] = [];
  periods.forEach((period, i) => {
    const count = bundles[i] ?? 1;
    const offset = quietestDay(compartments, period / count) % period;
    compartments.push({ period, bundles: count, offset });
  });
  return { compartments };
}

/** The plain chart for K compartments with doubling periods (K = 7: the 64-day chart). */
export const plainChart = (compartments: number): Chart => spreadChart(doublingPeriods(compartments));

/**
 * The chart of a new box: seven compartments, the three longest divided into 2, 4 and 8 bundles, with
 * offsets that keep the worst day close to the mean (18 tabs).
 */
export const LEVELLED_CHART: Chart = {
  compartments: [
    { period: 1, bundles: 1, offset: 0 },
    { period: 2, bundles: 1, offset: 1 },
    { period: 4, bundles: 1, offset: 3 },
    { period: 8, bundles: 1, offset: 6 },
    { period: 16, bundles: 2, offset: 4 },
    { period: 32, bundles: 4, offset: 0 },
    { period: 64, bundles: 8, offset: 2 },
  ],
};

/** The first day of 1…`size` on which the fewest of `lower` are visited. */
function quietestDay(lower: readonly ChartCompartment[], size: number): number {
  let best = 1;
  let fewest = Number.POSITIVE_INFINITY;
  for (let day = 1; day <= size && fewest > 0; day++) {
    const meetings = lower.reduce((sum, other) => sum + meetingShare(other, day, size), 0);
    if (meetings < fewest - 1e-12) {
      best = day;
      fewest = meetings;
    }
  }
  return best;
}

/** How often, of the days day, day + size, day + 2·size …, the compartment is visited: 0 to 1. */
function meetingShare(compartment: ChartCompartment, day: number, size: number): number {
  const other = step(compartment);
  const common = gcd(size, other);
  return (day - compartment.offset) % common === 0 ? common / other : 0;
}
