// The load on real dates: rest days, missed days and the pace of new cards laid over the chart.
import type { Chart } from "../chart/chart.ts";
import { type DatedDay, type Dates, datedDays } from "./dated-days.ts";
import { type ExactDay, type ExactLoadQuestion, exactLoad, type Spread } from "./exact-load.ts";
import type { Waiting } from "./expected.ts";
import type { Pace } from "./minutes.ts";
import { introductions, type NewCardSchedule } from "./new-cards.ts";

/** A box, what will be added to it, and the dates it is followed through. */
export interface Plan extends Dates {
  readonly chart: Chart;
  /** Cards in the box now. */
  readonly waiting: readonly Waiting[];
  readonly schedule: NewCardSchedule;
  /** Cards that can still be introduced; null where there is no end of them. */
  readonly stock: number | null;
  readonly pace: Pace;
}

/** What is asked about a plan. */
export interface PlanQuestion extends Plan {
  /** Chance of recall in compartment 1…K. */
  readonly recall: readonly number[];
  /** Levels of the quantiles, or none. */
  readonly quantiles: readonly number[];
}

/** The work of one date. */
export interface PlanDay extends DatedDay {
  readonly newCards: number;
  readonly reviews: Spread;
  /** Of the reviews, expected misses. */
  readonly misses: number;
  readonly minutes: Spread;
}

/** The work of each date, exactly as `exactLoad` has it; nothing on rest days and missed days. */
export function planLoad(question: PlanQuestion): readonly PlanDay[] {
  const days = datedDays(question);
  const load = exactLoad(toBoxDays(question, days));
  return onDates(days, load, question.quantiles.length);
}

/** The question in box days: the numbered dates in order, with nothing happening on those that are missed. */
export function toBoxDays(question: PlanQuestion, days: readonly DatedDay[]): ExactLoadQuestion {
  const { chart, recall, waiting, schedule, stock, quantiles, pace } = question;
  const fresh = introductions(schedule, days, stock);
  const numbered = days.flatMap(({ day, kind }, i) => (day === null ? [] : [{ day, kind, fresh: fresh[i] ?? 0 }]));
  const sits = numbered.every(({ kind }) => kind === "sitting")
    ? {}
    : { sits: (i: number) => numbered[i]?.kind === "sitting" };
  return {
    chart,
    recall,
    waiting,
    from: numbered[0]?.day ?? 1,
    days: numbered.length,
    newCards: (i) => numbered[i]?.fresh ?? 0,
    ...sits,
    quantiles,
    pace,
  };
}

/** The work of box days laid over the dates that bear them. */
export function onDates(days: readonly DatedDay[], load: readonly ExactDay[], levels: number): readonly PlanDay[] {
  const none: Spread = { mean: 0, sd: 0, quantiles: Array.from({ length: levels }, () => 0) };
  let next = 0;
  return days.map((day) => {
    const work = day.day === null ? undefined : load[next++];
    if (!work) return { ...day, newCards: 0, reviews: none, misses: 0, minutes: none };
    const { newCards, reviews, missed, minutes } = work;
    return { ...day, newCards, reviews, misses: missed, minutes: minutes ?? none };
  });
}
