// Cohorts of exchangeable cards, and the chance that a card of one is asked on each day ahead.
//
// While a card is recalled its visits are fixed by the chart: it climbs from visit to visit without a choice. Only a
// miss branches, and always to compartment 1. So the whole distribution over compartment and due day is held by the
// chance of standing at the foot (in compartment 1) on each day, and one climb from there adds to the days it visits.
import { arrival, type BoxDay, type Chart, compartmentCount } from "../chart/chart.ts";
import type { LoadQuestion } from "./expected.ts";

/** Where a card waits: a compartment from 1 to K, and the box day on which it is asked there. */
export interface CardPlace {
  readonly compartment: number;
  readonly due: BoxDay;
}

/** Cards that stand in the same place and answer independently with the same chances. */
export interface Cohort {
  /** How many cards; a whole number. */
  readonly count: number;
  readonly start: CardPlace;
}

/** The days of an answer: `days` of them, beginning with box day `from`. */
export interface Span {
  readonly from: BoxDay;
  readonly days: number;
}

/** A cohort with the chance, by days after its first due day, that a card of it is asked; no element beyond the span. */
export interface WalkedCohort extends Cohort {
  readonly asked: Float64Array;
}

/** Days that a card waits which arrives in compartment k on day `from` + i, at [k - 1][i]; cost: days × compartments. */
export function waitTables(chart: Chart, { from, days }: Span): readonly Int32Array[] {
  return Array.from({ length: compartmentCount(chart) }, (_, k) =>
    Int32Array.from({ length: days }, (_, i) => arrival(chart, k + 1, from + i).due - from - i),
  );
}

/**
 * Chance, 0 to 1, that a card is asked (its first attempt) on each of `days` box days from `from` on, if it waits at
 * `start`; a card that fell due before `from` is asked on `from`. Exact but for rounding; cost: days × compartments.
 */
export function askedProbability(
  chart: Chart,
  recall: readonly number[],
  start: CardPlace,
  from: BoxDay,
  days: number,
): Float64Array {
  const asked = new Float64Array(days);
  const first = Math.max(0, start.due - from);
  if (first < days)
    asked.set(walk({ recall, waits: waitTables(chart, { from, days }) }, start.compartment, first), first);
  return asked;
}

/**
 * The cards of a question as cohorts, one for each compartment and due day in which cards wait or arrive, earliest
 * first; none for days beyond the question. A number of cards that is not whole, or below 0, is a `RangeError`.
 */
export function cohortsOf({ chart, waiting, from, days, newCards }: LoadQuestion): readonly Cohort[] {
  const byPlace = new Map<string, Cohort>();
  const add = (compartment: number, due: BoxDay, count: number): void => {
    if (!Number.isInteger(count) || count < 0)
      throw new RangeError(`${count} cards; a whole number from 0 on is needed`);
    if (count === 0 || due >= from + days) return;
    const key = `${compartment} ${due}`;
    byPlace.set(key, { count: count + (byPlace.get(key)?.count ?? 0), start: { compartment, due } });
  };
  for (const { compartment, due, count } of waiting) add(compartment, Math.max(due, from), count);
  for (let day = from; day < from + days; day++) add(1, arrival(chart, 1, day).due, newCards(day - from));
  return [...byPlace.values()].sort((a, b) => a.start.due - b.start.due);
}

/**
 * Every cohort of a question with its chances of being asked. Cohorts that start in the same compartment on the same
 * day of the chart's cycle have the same chances, which are worked out once; cost: cycle, or days if fewer, × days ×
 * compartments for new cards, and days × compartments for each place in which cards wait already.
 */
export function walkCohorts(question: LoadQuestion, cycle: number): readonly WalkedCohort[] {
  const rules = { recall: question.recall, waits: waitTables(question.chart, question) };
  const known = new Map<string, Float64Array>();
  return cohortsOf(question).map((cohort) => {
    const { compartment, due } = cohort.start;
    const key = `${compartment} ${due % cycle}`;
    const longest = known.get(key) ?? walk(rules, compartment, due - question.from);
    known.set(key, longest);
    return { ...cohort, asked: longest.subarray(0, question.from + question.days - due) };
  });
}

interface Rules {
  readonly recall: readonly number[];
  readonly waits: readonly Int32Array[];
}

/** Chance of being asked on day `first` of the tables and each later one, for a card that waits in `compartment`. */
function walk({ recall, waits }: Rules, compartment: number, first: number): Float64Array {
  const days = waits[0]?.length ?? 0;
  const asked = new Float64Array(days);
  const atFoot = new Float64Array(days);
  const climb = (from: number, start: number, weight: number): void => {
    let day = start;
    let chance = weight;
    for (let k = from; day < days && chance > 0; k++) {
      const missed = chance * (1 - (recall[k - 1] ?? 0));
      const foot = day + (waits[0]?.[day] ?? 1);
      asked[day] = (asked[day] ?? 0) + chance;
      if (foot < days) atFoot[foot] = (atFoot[foot] ?? 0) + missed;
      chance *= recall[k - 1] ?? 0;
      day += waits[k]?.[day] ?? days;
    }
  };
  climb(compartment, first, 1);
  for (let day = first + 1; day < days; day++) climb(1, day, atFoot[day] ?? 0);
  // Chances that add up to 1 may pass it by a rounding.
  return asked.subarray(first).map((chance) => Math.min(1, chance));
}
