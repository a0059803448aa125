// Ready by a date: how many new cards a sitting, and until when, so that as many as possible are known on the day.
import { daysBetween, type LocalDate } from "../calendar/local-date.ts";
import type { Beta } from "../recall/beta.ts";
import { type Limit, staysWithin } from "./affordable-pace.ts";
import { type DatedDay, datedDays } from "./dated-days.ts";
import { type Draw, moments, REVIEWS, sumOf } from "./distribution.ts";
import type { Spread } from "./exact-load.ts";
import { recallSet } from "./mixed-load.ts";
import { type Plan, toBoxDays } from "./plan-load.ts";
import { retentionBy } from "./retention-on.ts";
import { addTo, createTally, mixedSpread } from "./tally.ts";

/** A box, the cards to be learnt, and the date on which they are wanted. The last sitting is on the day before. */
export interface DeadlineQuestion extends Omit<Plan, "dates" | "schedule" | "stock" | "pace"> {
  /** Chance of recall in compartments 1…K, by which the minutes of a day are reckoned. */
  readonly recall: readonly number[];
  /** What is known of these chances; with it the number recalled holds what is not known. Null where they are certain. */
  readonly posterior?: readonly Beta[] | null;
  readonly by: LocalDate;
  /** New cards that should be known; a whole number above 0. */
  readonly cards: number;
  /** What a day may cost, on every date before `by`. */
  readonly limit: Limit;
  /** Levels of the quantiles of the number recalled. */
  readonly quantiles: readonly number[];
}

/** One way to spread the new cards: the same number at every sitting up to a last one. */
export interface DeadlineChoice {
  /** New cards a sitting; the last has what is left. */
  readonly each: number;
  /** Date of the last new card; null if there is no room for any. */
  readonly last: LocalDate | null;
  /** New cards introduced in all. */
  readonly introduced: number;
  /** Of these, the number recalled on the date. */
  readonly recalled: Spread;
}

/** The best way and what it was chosen from. */
export interface DeadlinePlan {
  readonly best: DeadlineChoice;
  /** The slowest pace that has nearly as many cards recalled as the best: `NEARLY` of them. */
  readonly gentle: DeadlineChoice;
  /** The best for each last date looked at, in order. */
  readonly curve: readonly DeadlineChoice[];
  /** Sittings before the date. */
  readonly sittings: number;
  /** False if the cards that wait already pass the limit without any new ones. */
  readonly within: boolean;
}

/** Sittings up to which every last date is looked at; beyond, so many first, and all next to the best of them. */
const FIRST_LOOK = 200;

/** Sets of chances of recall that are mixed: quantiles are then some hundredths of a spread from those of many more. */
const SETS = 64;

/** Share of the best number recalled that counts as nearly as good. */
export const NEARLY = 0.99;

/**
 * For each last date of new cards the largest pace that stays within the limit on every date before `by`, but no
 * faster than the cards need, and of these the one with the most cards recalled on the date; of equals the earliest.
 * A later last date never affords a faster pace, so paces found on both sides of a date leave little to try. Where
 * there are more than `FIRST_LOOK` sittings only some last dates are looked at, and all around the best of these.
 */
export function planDeadline(question: DeadlineQuestion): DeadlinePlan {
  const days = datedDays({ ...question, dates: Math.max(0, daysBetween(question.from, question.by)) });
  const sittings = days.filter(({ kind }) => kind === "sitting");
  const hunt = createHunt(question, days, sittings);
  if (sittings.length === 0 || !hunt.affords(0, 0)) {
    const none = hunt.choice(0, 0);
    return { best: none, gentle: none, curve: [], sittings: sittings.length, within: sittings.length === 0 };
  }
  const step = Math.max(1, Math.ceil(sittings.length / FIRST_LOOK));
  const coarse = Array.from({ length: Math.ceil(sittings.length / step) }, (_, i) => sittings.length - i * step);
  hunt.look(coarse);
  const near = hunt.best();
  hunt.look(
    Array.from({ length: 2 * step - 1 }, (_, i) => near - step + 1 + i).filter((n) => n >= 1 && n <= sittings.length),
  );
  const choices = hunt.counts().map((count) => hunt.choice(count, hunt.pace(count)));
  const curve = choices.filter((one, i) => one.last !== choices[i - 1]?.last);
  const best = curve.reduce((most, one) => (one.recalled.mean > most.recalled.mean ? one : most));
  const good = curve.filter(({ recalled }) => recalled.mean >= NEARLY * best.recalled.mean);
  const gentle = good.reduce((slowest, one) => (one.each < slowest.each ? one : slowest), best);
  return { best, gentle, curve, sittings: sittings.length, within: true };
}

/** Paces found so far, by the number of sittings with new cards. */
function createHunt(question: DeadlineQuestion, days: readonly DatedDay[], sittings: readonly DatedDay[]) {
  const { cards, limit, from } = question;
  const chances = chanceSets(question).map((set) => sittings.map(({ date }) => set[daysBetween(from, date)] ?? 0));
  const meanChance = sittings.map((_, i) => chances.reduce((sum, set) => sum + (set[i] ?? 0), 0) / chances.length);
  const paces = new Map<number, number>();
  const spread = (count: number, each: number): readonly number[] =>
    Array.from({ length: count }, (_, i) => Math.max(0, Math.min(each, cards - i * each)));
  const affords = (count: number, each: number): boolean => {
    const schedule = { kind: "list", each: spread(count, each) } as const;
    const plan = { ...question, pace: limit.pace, dates: days.length, schedule, stock: null, quantiles: [] };
    return staysWithin(toBoxDays(plan, days), limit);
  };
  const value = (count: number): number =>
    spread(count, paces.get(count) ?? 0).reduce((sum, fresh, i) => sum + fresh * (meanChance[i] ?? 0), 0);
  const find = (count: number): void => {
    if (paces.has(count)) return;
    const needed = Math.ceil(cards / count);
    const known = [...paces];
    let low = Math.min(needed, Math.max(0, ...known.filter(([other]) => other > count).map(([, pace]) => pace)));
    let high = Math.min(needed, ...known.filter(([other]) => other < count).map(([, pace]) => pace));
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (affords(count, middle)) low = middle;
      else high = middle - 1;
    }
    paces.set(count, low);
  };
  return {
    affords,
    /** Finds the paces for these numbers of sittings, from the outside in, so that each has neighbours on both sides. */
    look: (counts: readonly number[]): void => {
      for (const count of outsideIn(counts)) find(count);
    },
    counts: (): readonly number[] => [...paces.keys()].sort((a, b) => a - b),
    pace: (count: number): number => paces.get(count) ?? 0,
    best: (): number =>
      [...paces.keys()].sort((a, b) => a - b).reduce((best, count) => (value(count) > value(best) ? count : best)),
    choice: (count: number, each: number): DeadlineChoice => {
      const fresh = spread(count, each);
      const lastAt = fresh.findLastIndex((one) => one > 0);
      return {
        each,
        last: sittings[lastAt]?.date ?? null,
        introduced: fresh.reduce((sum, one) => sum + one, 0),
        recalled: recalledOf(fresh, chances, question.quantiles),
      };
    },
  };
}

/** Chances of recall on the date by date of introduction: one set where recall is certain, else all that are mixed. */
function chanceSets({ posterior, ...question }: DeadlineQuestion): readonly Float64Array[] {
  const retention = retentionBy(question);
  const recalls = posterior ? Array.from({ length: SETS }, (_, i) => recallSet(posterior, i)) : [question.recall];
  return recalls.map((recall) => retention(recall).introducedOn);
}

/** How many are recalled of so many new cards at each sitting, each set of chances being as likely as the others. */
function recalledOf(
  fresh: readonly number[],
  chances: readonly (readonly number[])[],
  levels: readonly number[],
): Spread {
  const tally = createTally();
  for (const set of chances) {
    const draws = fresh.map((count, i): Draw => ({ count, recalled: set[i] ?? 0, missed: 0 }));
    addTo(tally, moments(draws, REVIEWS), sumOf(draws, REVIEWS));
  }
  return mixedSpread(tally, chances.length, levels);
}

/** The same numbers: first, last, and then always the middle of what lies between. */
function outsideIn(counts: readonly number[]): readonly number[] {
  const sorted = [...counts].sort((a, b) => a - b);
  const order: number[] = [];
  const take = (low: number, high: number): void => {
    if (low > high) return;
    const middle = (low + high) >> 1;
    order.push(sorted[middle] as number);
    take(low, middle - 1);
    take(middle + 1, high);
  };
  const [first, ...rest] = sorted;
  if (first === undefined) return [];
  const last = rest.pop();
  order.push(first, ...(last === undefined ? [] : [last]));
  take(1, sorted.length - 2);
  return order;
}
