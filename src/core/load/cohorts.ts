// Cohorts of exchangeable cards, and the chance that a card of one is asked on each day ahead.
//
// While a card is recalled its visits are fixed by the chart: it climbs from visit to visit without a choice. Only a
// miss branches, and always to compartment 1. So the whole distribution over compartment and due day is held by the
// chance of standing at the foot (in compartment 1) on each day, and one climb from there adds to the days it visits.
import { arrival, type BoxDay, compartmentCount, cycleLength } from "../chart/chart.ts";
import { type LoadQuestion, nextSittings } from "./expected.ts";

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

/** Chances of one card by days after its first due day: that it is asked, and that it is asked and missed. */
export interface Walk {
  readonly asked: Float64Array;
  readonly missed: Float64Array;
}

/** A cohort with the walk of one card of it; no element beyond the span. */
export interface WalkedCohort extends Cohort, Walk {}

/** The chart and the sittings of a question: all that decides how long a card waits. */
type Waits = Pick<LoadQuestion, "chart" | "from" | "days" | "sits">;

/** What decides the walk of a card. */
type WalkQuestion = Waits & Pick<LoadQuestion, "recall">;

/**
 * Days that a card waits which arrives in compartment k on day `from` + i, at [k - 1][i]: to the first sitting on or
 * after its due day, or past the span if there is none. Cost: days × compartments.
 */
export function waitTables(question: Waits): readonly Int32Array[] {
  const { chart, from, days } = question;
  const sitting = nextSittings(question);
  return Array.from({ length: compartmentCount(chart) }, (_, k) =>
    Int32Array.from({ length: days }, (_, i) => {
      const due = arrival(chart, k + 1, from + i).due - from;
      return (due < days ? (sitting[due] as number) : due) - i;
    }),
  );
}

/**
 * Chances, 0 to 1, for each of `days` box days from `from` on, of one card that waits at `start`; a card that fell due
 * before `from`, or on a day without a sitting, is asked at the next. Exact but for rounding; cost: days × compartments.
 */
export function walkCard(question: WalkQuestion, start: CardPlace): Walk {
  const { recall, from, days } = question;
  const asked = new Float64Array(days);
  const missed = new Float64Array(days);
  const first = nextSittings(question)[Math.min(days, Math.max(0, start.due - from))] as number;
  if (first < days) {
    const walked = walk({ recall, waits: waitTables(question) }, start.compartment, first);
    asked.set(walked.asked, first);
    missed.set(walked.missed, first);
  }
  return { asked, missed };
}

/**
 * The cards of a question as cohorts, one for each compartment and day of asking in which cards wait or arrive,
 * earliest first; none for days beyond the question. A number of cards that is not whole, or below 0, is a `RangeError`.
 */
export function cohortsOf(question: LoadQuestion): readonly Cohort[] {
  const { chart, waiting, from, days, newCards } = question;
  const sitting = nextSittings(question);
  const byPlace = new Map<string, Cohort>();
  const add = (compartment: number, day: BoxDay, count: number): void => {
    if (!Number.isInteger(count) || count < 0)
      throw new RangeError(`${count} cards; a whole number from 0 on is needed`);
    const at = sitting[Math.min(days, Math.max(0, day - from))] as number;
    if (count === 0 || at >= days) return;
    const due = from + at;
    const key = `${compartment} ${due}`;
    byPlace.set(key, { count: count + (byPlace.get(key)?.count ?? 0), start: { compartment, due } });
  };
  for (const { compartment, due, count } of waiting) add(compartment, due, count);
  for (let i = 0; i < days; i++) if (sitting[i] === i) add(1, arrival(chart, 1, from + i).due, newCards(i));
  return [...byPlace.values()].sort((a, b) => a.start.due - b.start.due);
}

/**
 * Every cohort of a question with its walk. Cohorts that start in the same compartment on the same day of the chart's
 * cycle walk alike if nobody misses a day, and their chances are worked out once; cost: cycle, or days if fewer, × days
 * × compartments for new cards, and days × compartments for each place in which cards wait already.
 */
export function walkCohorts(question: LoadQuestion): readonly WalkedCohort[] {
  const rules = { recall: question.recall, waits: waitTables(question) };
  const cycle = question.sits ? Number.POSITIVE_INFINITY : cycleLength(question.chart);
  const known = new Map<string, Walk>();
  return cohortsOf(question).map((cohort) => {
    const { compartment, due } = cohort.start;
    const key = `${compartment} ${due % cycle}`;
    const longest = known.get(key) ?? walk(rules, compartment, due - question.from);
    known.set(key, longest);
    const days = question.from + question.days - due;
    return { ...cohort, asked: longest.asked.subarray(0, days), missed: longest.missed.subarray(0, days) };
  });
}

interface Rules {
  readonly recall: readonly number[];
  readonly waits: readonly Int32Array[];
}

/** The walk from day `first` of the tables on, for a card that waits in `compartment` and is asked on it. */
function walk({ recall, waits }: Rules, compartment: number, first: number): Walk {
  const days = waits[0]?.length ?? 0;
  const asked = new Float64Array(days);
  const missed = new Float64Array(days);
  const atFoot = new Float64Array(days);
  const climb = (from: number, start: number, weight: number): void => {
    let day = start;
    let chance = weight;
    for (let k = from; day < days && chance > 0; k++) {
      const miss = chance * (1 - (recall[k - 1] ?? 0));
      const foot = day + (waits[0]?.[day] ?? 1);
      asked[day] = (asked[day] ?? 0) + chance;
      missed[day] = (missed[day] ?? 0) + miss;
      if (foot < days) atFoot[foot] = (atFoot[foot] ?? 0) + miss;
      chance *= recall[k - 1] ?? 0;
      day += waits[k]?.[day] ?? days;
    }
  };
  climb(compartment, first, 1);
  for (let day = first + 1; day < days; day++) climb(1, day, atFoot[day] ?? 0);
  return { asked: fromDay(asked, first), missed: fromDay(missed, first) };
}

/** Chances that add up to 1 may pass it by a rounding. */
const fromDay = (chances: Float64Array, first: number): Float64Array =>
  chances.subarray(first).map((chance) => Math.min(1, chance));
