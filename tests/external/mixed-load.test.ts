// The load under uncertain recall against the beta-binomial distribution, in the one case that has a closed form: one
// compartment visited daily. Of n cards introduced on day 1 all are asked on day 2, and those that are missed then are
// asked on day 3: n independent misses with a common chance that is Beta distributed.
// Mean n π and variance n π (1 − π) (a + b + n) / (a + b + 1), π the chance of a miss, and the chances
// C(n, k) B(k + b, n − k + a) / B(a, b): Skellam, Journal of the Royal Statistical Society B 10, 1948, 257-261; formulas from memory.
import { describe, expect, it } from "vitest";
import { plainChart } from "../../src/core/chart/make-chart.ts";
import { ENOUGH_SETS, mixLoad } from "../../src/core/load/mixed-load.ts";

const N = 60;

/** Chances of k = 0…N misses by the recursion of their ratios, which needs no gamma function. */
function betaBinomial(recalled: number, missed: number): readonly number[] {
  const weights = [1];
  for (let k = 0; k < N; k++) {
    weights.push(((weights[k] as number) * (N - k) * (k + missed)) / ((k + 1) * (N - k - 1 + recalled)));
  }
  const sum = weights.reduce((all, one) => all + one, 0);
  return weights.map((one) => one / sum);
}

function quantileOf(chances: readonly number[], level: number): number {
  let reached = 0;
  return chances.findIndex((chance) => {
    reached += chance;
    return reached >= level;
  });
}

describe("cards asked a second time, of sixty", () => {
  it.each([
    { recalled: 9, missed: 1 },
    { recalled: 90, missed: 10 },
    { recalled: 30, missed: 20 },
  ])("are beta-binomial where recall is Beta($recalled, $missed)", ({ recalled, missed }) => {
    const levels = [0.05, 0.5, 0.95];
    const question = { chart: plainChart(1), waiting: [], from: 1, days: 3, quantiles: levels };
    const mixture = mixLoad({ ...question, newCards: (i) => (i === 0 ? N : 0) }, [{ recalled, missed }]);
    while (mixture.sets() < ENOUGH_SETS) mixture.add();
    const { mean, sd, quantiles } = mixture.load()[2]?.reviews ?? { mean: 0, sd: 0, quantiles: [] };
    const all = recalled + missed;
    const chance = missed / all;
    const spread = Math.sqrt((N * chance * (1 - chance) * (all + N)) / (all + 1));
    // 128 evenly laid sets leave gaps of about 1/128 of the chances: mean and spread are right to a few hundredths of the spread.
    expect(Math.abs(mean - N * chance)).toBeLessThan(0.03 * spread);
    expect(Math.abs(sd / spread - 1)).toBeLessThan(0.03);
    const exact = betaBinomial(recalled, missed);
    for (const [i, level] of levels.entries()) {
      expect(Math.abs((quantiles[i] ?? -9) - quantileOf(exact, level))).toBeLessThanOrEqual(1);
    }
  });
});
