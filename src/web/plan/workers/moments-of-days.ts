// Mean and spread of every day's work at one go, from the walks of its cards: what `moments` has for one day.
import type { WalkedCohort } from "../../../core/load/cohorts.ts";
import { REVIEWS, type Steps } from "../../../core/load/distribution.ts";
import type { ExactDay, ExactLoadQuestion, Spread } from "../../../core/load/exact-load.ts";
import type { Pace } from "../../../core/load/minutes.ts";

/** Every day of a question, without quantiles. Cost: one pass over the walks. */
export function momentsOfDays(
  box: ExactLoadQuestion,
  cohorts: readonly WalkedCohort[],
  pace: Pace,
): readonly ExactDay[] {
  const reviews = addUp(box, cohorts, REVIEWS);
  const seconds = addUp(box, cohorts, pace);
  const missed = addUp(box, cohorts, { recalled: 0, missed: 1 });
  return Array.from({ length: box.days }, (_, i) => {
    const newCards = !box.sits || box.sits(i) ? box.newCards(i) : 0;
    const { mean, sd } = spreadOn(seconds, i);
    return {
      day: box.from + i,
      newCards,
      reviews: spreadOn(reviews, i),
      missed: missed.mean[i] ?? 0,
      minutes: { mean: (mean + newCards * pace.fresh) / 60, sd: sd / 60, quantiles: [] },
    };
  });
}

interface Sums {
  readonly mean: Float64Array;
  readonly variance: Float64Array;
}

/** Adds the cohorts up: a card that is asked adds a step, recalled or missed. */
function addUp({ from, days }: ExactLoadQuestion, cohorts: readonly WalkedCohort[], steps: Steps): Sums {
  const mean = new Float64Array(days);
  const variance = new Float64Array(days);
  const [up, down] = [steps.recalled, steps.missed];
  for (const { count, start, asked, missed } of cohorts) {
    for (let day = 0, at = start.due - from; day < asked.length; day++, at++) {
      const miss = missed[day] as number;
      const recalled = (asked[day] as number) - miss;
      const one = recalled * up + miss * down;
      // Squares of differences, so that nothing cancels for cards that are sure to be asked.
      const rest = Math.max(0, 1 - recalled - miss);
      mean[at] = (mean[at] as number) + count * one;
      variance[at] =
        (variance[at] as number) + count * (recalled * (up - one) ** 2 + miss * (down - one) ** 2 + rest * one ** 2);
    }
  }
  return { mean, variance };
}

const spreadOn = ({ mean, variance }: Sums, i: number): Spread => ({
  mean: mean[i] ?? 0,
  sd: Math.sqrt(variance[i] ?? 0),
  quantiles: [],
});
