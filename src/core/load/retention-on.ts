// The chance that a card is recalled on a given date, by where its walk through the chart may have led it by then.
import type { LocalDate } from "../calendar/local-date.ts";
import { daysBetween } from "../calendar/local-date.ts";
import { compartmentCount } from "../chart/chart.ts";
import { periodBeyond, recallAfter } from "../recall/forgetting.ts";
import { type CardPlace, waitTables } from "./cohorts.ts";
import { type DatedDay, type Dates, datedDays } from "./dated-days.ts";
import type { Plan } from "./plan-load.ts";

/** A box and the date on which its cards are wanted; sittings are held before that date only. */
export interface RetentionQuestion extends Pick<Plan, "chart" | "calendar" | "last" | "from" | "missed"> {
  readonly recall: readonly number[];
  readonly by: LocalDate;
}

/** Chances of recall on the date of the question, 0 to 1. */
export interface Retention {
  /** Of a card introduced on the date that many days after `from`; 0 where there is no sitting, and from `by` on. */
  readonly introducedOn: Float64Array;
  /** Of a card that waits now. */
  readonly ofWaiting: (place: CardPlace) => number;
}

/**
 * Follows cards to the date. A card that was last asked t days before it and waits w days for its next visit, where it
 * is recalled with chance p, is recalled with the chance of `recallAfter`; a card that is kept, as `recallOnceKept`
 * has it. Days of forgetting are dates, rest days included. Cost: dates × compartments for each day of introduction.
 */
export function retentionOn(question: RetentionQuestion): Retention {
  const { chart, recall, from, by } = question;
  const span = Math.max(0, daysBetween(from, by));
  const table = timetableTo(question, span);
  const follow = (compartment: number, first: number, seen: number): number =>
    followCard({ recall, ...table }, compartment, first, seen);
  const introducedOn = Float64Array.from({ length: span }, (_, i) => {
    const at = table.boxDayOf[i] ?? -1;
    return at < 0 ? 0 : follow(1, at + (table.waits[0]?.[at] ?? 1), i);
  });
  const begin = table.from;
  const ofWaiting = ({ compartment, due }: CardPlace): number => {
    if (compartment > compartmentCount(chart)) return 0;
    const first = Math.max(0, due - begin);
    // When it was last asked is not known here: it is taken to have waited its compartment's period by its due day.
    const period = chart.compartments[compartment - 1]?.period ?? 1;
    return follow(compartment, first, (table.dateOf[first] ?? first) - period);
  };
  return { introducedOn, ofWaiting };
}

interface Table {
  /** Box day of the first element of `waits`. */
  readonly from: number;
  readonly waits: readonly Int32Array[];
  /** Dates after `from` of each box day. */
  readonly dateOf: Int32Array;
  /** Place in the table of the box day of each date; -1 where there is no sitting. */
  readonly boxDayOf: Int32Array;
  /** Dates until `by`. */
  readonly end: number;
  readonly beyond: number;
}

/** The table reaches past the date by the longest wait, so that every wait that spans the date is known. */
function timetableTo(question: RetentionQuestion, span: number): Table {
  const { chart } = question;
  const longest = Math.max(...chart.compartments.map(({ period }) => period));
  // Rest days stretch a wait; a table that is a little short only bends the last wait to box days.
  const dates: Dates = { ...question, dates: span + 2 * longest + 14 };
  const days = datedDays(dates);
  const numbered = days.flatMap((day, date) => (day.day === null ? [] : [{ ...day, date }]));
  const from = numbered[0]?.day ?? 1;
  const sits = (i: number): boolean => numbered[i]?.kind === "sitting";
  return {
    from,
    waits: waitTables({ chart, from, days: numbered.length, sits }),
    dateOf: Int32Array.from(numbered, ({ date }) => date),
    boxDayOf: placesOf(days, span),
    end: span,
    beyond: periodBeyond(chart.compartments.map(({ period }) => period)),
  };
}

function placesOf(days: readonly DatedDay[], span: number): Int32Array {
  let next = 0;
  const places = days.map(({ day, kind }) => {
    const at = day === null ? -1 : next++;
    return kind === "sitting" ? at : -1;
  });
  return Int32Array.from(places.slice(0, span));
}

interface Rules extends Table {
  readonly recall: readonly number[];
}

/**
 * Chance of recall at the end for a card whose next visit is at place `first` of the table, in `compartment`, and that
 * was last seen on date `seen`. As in `cohorts.ts`, only a miss branches, always to the foot.
 */
function followCard(rules: Rules, compartment: number, first: number, seen: number): number {
  const { recall, waits, end, beyond } = rules;
  const atFoot = new Float64Array(waits[0]?.length ?? 0);
  let known = 0;
  /** Whether the wait from date `asked` to a place passes the end, where the card is then recalled or not. */
  const ends = (k: number, asked: number, place: number, chance: number): boolean => {
    const next = dateAt(rules, place);
    if (next < end) return false;
    known += chance * recallAfter(recall[k - 1] ?? 0, Math.max(1, next - asked), end - asked);
    return true;
  };
  const climb = (from: number, start: number, weight: number): void => {
    let chance = weight;
    let place = start;
    for (let k = from; chance > 0; k++) {
      const p = recall[k - 1] ?? 0;
      const asked = dateAt(rules, place);
      const foot = place + (waits[0]?.[place] ?? 1);
      const missed = chance * (1 - p);
      if (!ends(1, asked, foot, missed)) atFoot[foot] = (atFoot[foot] as number) + missed;
      chance *= p;
      if (k === recall.length) known += chance * recallAfter(p, beyond, end - asked);
      if (k === recall.length) return;
      place += waits[k]?.[place] ?? 1;
      if (ends(k + 1, asked, place, chance)) return;
    }
  };
  if (!ends(compartment, seen, first, 1)) climb(compartment, first, 1);
  for (let place = first + 1; place < atFoot.length; place++) climb(1, place, atFoot[place] as number);
  return Math.min(1, known);
}

/** Date of a place in the table; beyond its end box days count as dates. */
function dateAt({ dateOf }: Table, place: number): number {
  const last = dateOf.length - 1;
  return place <= last ? (dateOf[place] as number) : (dateOf[last] ?? 0) + place - last;
}
