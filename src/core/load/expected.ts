// What a box is expected to ask on the days ahead: the mean of independent walks through the chart.
import { arrival, type BoxDay, type Chart, compartmentCount } from "../chart/chart.ts";

/** How many cards wait in a compartment for a box day. */
export interface Waiting {
  readonly compartment: number;
  readonly due: BoxDay;
  readonly count: number;
}

/** The question: a chart, the box as it is, and what will be added. */
export interface LoadQuestion {
  readonly chart: Chart;
  /** Chance of recall in compartment 1…K, each 0 to 1. */
  readonly recall: readonly number[];
  readonly waiting: readonly Waiting[];
  /** First box day of the answer; cards that fell due earlier are asked on it. */
  readonly from: BoxDay;
  readonly days: number;
  /** New cards introduced on the day that many days after `from`, if there is a sitting on it. */
  readonly newCards: (daysAfter: number) => number;
  /**
   * Whether somebody sits on the box day that many days after `from`; on every day where this is not given. Cards due
   * on a day without a sitting are asked, once, at the next.
   */
  readonly sits?: (daysAfter: number) => boolean;
}

/** The expected work of one day. */
export interface ExpectedDay {
  readonly day: BoxDay;
  /** Expected first attempts of cards already in the box. */
  readonly reviews: number;
  /** Of these, expected misses. */
  readonly missed: number;
  readonly newCards: number;
}

/**
 * For each day of a span, how many days after `from` the first sitting on or after it is; `days` where there is none
 * within the span. One element more than there are days, so that what lies beyond stays beyond.
 */
export function nextSittings({ days, sits }: Pick<LoadQuestion, "days" | "sits">): Int32Array {
  const next = new Int32Array(days + 1).fill(days);
  for (let i = days - 1; i >= 0; i--) next[i] = !sits || sits(i) ? i : (next[i + 1] as number);
  return next;
}

/**
 * Expected reviews for each of `days` box days. A card recalled in k goes on to k + 1 and waits as the
 * chart says; a missed one goes back to 1; recalled in K it leaves. Exact for the mean, since means of
 * independent cards add; cost: days × compartments.
 */
export function expectedLoad(question: LoadQuestion): readonly ExpectedDay[] {
  const { chart, recall, from, days } = question;
  const top = compartmentCount(chart);
  const sitting = nextSittings(question);
  const due = Array.from({ length: top + 1 }, () => new Float64Array(days));
  const put = (k: number, day: BoxDay, count: number): void => {
    const at = sitting[Math.min(days, Math.max(0, day - from))] as number;
    const queue = due[k];
    if (queue && at < days) queue[at] = (queue[at] ?? 0) + count;
  };
  for (const { compartment, due: day, count } of question.waiting) put(compartment, day, count);
  return Array.from({ length: days }, (_, i) => {
    const day = from + i;
    let reviews = 0;
    let missed = 0;
    for (let k = top; k >= 1; k--) {
      const asked = due[k]?.[i] ?? 0;
      if (asked === 0) continue;
      const up = asked * (recall[k - 1] ?? 0);
      reviews += asked;
      missed += asked - up;
      if (k < top) put(k + 1, arrival(chart, k + 1, day).due, up);
    }
    const fresh = sitting[i] === i ? question.newCards(i) : 0;
    put(1, arrival(chart, 1, day).due, missed + fresh);
    return { day, reviews, missed, newCards: fresh };
  });
}
