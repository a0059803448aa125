// The chance that a card is recalled on a given date, by where its walk through the chart may have led it by then.
import type { LocalDate } from "../calendar/local-date.ts";
import { daysBetween } from "../calendar/local-date.ts";
import { compartmentCount } from "../chart/chart.ts";
import { meanWaits } from "../chart/mean-waits.ts";
import { recallAfter, waitBeyond } from "../recall/forgetting.ts";
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
 * has it. Days of forgetting are dates, rest days included. Cost: dates × compartments.
 */
export const retentionOn = (question: RetentionQuestion): Retention => retentionBy(question)(question.recall);

/** The same for whatever chances of recall in compartments 1…K; the dates are laid out once. */
export function retentionBy(question: Omit<RetentionQuestion, "recall">): (recall: readonly number[]) => Retention {
  const { chart, from, by } = question;
  const span = Math.max(0, daysBetween(from, by));
  const table = timetableTo(question, span);
  const begin = table.from;
  return (recall) => {
    const rules = { recall, foot: footChances({ recall, ...table }), ...table };
    const introducedOn = Float64Array.from({ length: span }, (_, i) => {
      const at = table.boxDayOf[i] ?? -1;
      return at < 0 ? 0 : Math.min(1, rules.foot[at] ?? 0);
    });
    const ofWaiting = ({ compartment, due }: CardPlace): number => {
      if (compartment > compartmentCount(chart)) return 0;
      const place = Math.max(0, due - begin);
      // When it was last asked is not known here: it is taken to have waited its compartment's period by its due day.
      const period = chart.compartments[compartment - 1]?.period ?? 1;
      const seen = (table.dateOf[place] ?? place) - period;
      return Math.min(1, climb(rules, { compartment, place, seen }));
    };
    return { introducedOn, ofWaiting };
  };
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
function timetableTo(question: Omit<RetentionQuestion, "recall">, span: number): Table {
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
    beyond: waitBeyond(meanWaits(chart)),
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

/** Chance of recall at the end for a card that was sent to compartment 1 at each place of the table, the last first. */
function footChances(rules: Rules): Float64Array {
  const waits = rules.waits[0] ?? new Int32Array(0);
  const foot = new Float64Array(waits.length);
  for (let place = waits.length - 1; place >= 0; place--) {
    const next = place + (waits[place] as number);
    foot[place] = climb({ ...rules, foot }, { compartment: 1, place: next, seen: dateAt(rules, place) });
  }
  return foot;
}

/** A card that was last asked on date `seen` and is next visited at a place of the table. */
interface Climber {
  readonly compartment: number;
  readonly place: number;
  readonly seen: number;
}

/**
 * Chance of recall at the end. As in `cohorts.ts`, only a miss branches, always to the foot, whose chances at later
 * places are known already; the rest is one climb.
 */
function climb(rules: Rules & { readonly foot: Float64Array }, card: Climber): number {
  const { recall, waits, end, beyond, foot } = rules;
  let known = 0;
  let chance = 1;
  let { place, seen } = card;
  for (let k = card.compartment; chance > 0; k++) {
    const p = recall[k - 1] ?? 0;
    const next = dateAt(rules, place);
    // The wait passes the end, where the card is then recalled or not.
    if (next >= end) return known + chance * recallAfter(p, Math.max(1, next - seen), end - seen);
    known += chance * (1 - p) * (foot[place] ?? 0);
    chance *= p;
    seen = next;
    if (k === recall.length) return known + chance * recallAfter(p, beyond, end - seen);
    place += waits[k]?.[place] ?? 1;
  }
  return known;
}

/** Date of a place in the table; beyond its end box days count as dates. */
function dateAt({ dateOf }: Table, place: number): number {
  const last = dateOf.length - 1;
  return place <= last ? (dateOf[place] as number) : (dateOf[last] ?? 0) + place - last;
}
