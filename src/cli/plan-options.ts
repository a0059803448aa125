// The options that describe a plan: a box to come or the one in the data folder, the dates ahead, and what cards cost.
import { planView } from "../app/plan-view.ts";
import { changeCalendar, type DateRange, freshCalendar, type MissedDayPolicy } from "../core/calendar/calendar.ts";
import { addDays, daysBetween, isLocalDate, type LocalDate } from "../core/calendar/local-date.ts";
import { compartmentCount } from "../core/chart/chart.ts";
import { DEFAULT_PACE, type Pace } from "../core/load/minutes.ts";
import type { NewCardSchedule } from "../core/load/new-cards.ts";
import { boxByChart, visitsByChart } from "../core/load/plan-by-chart.ts";
import type { Plan } from "../core/load/plan-load.ts";
import { type Beta, betaMean } from "../core/recall/beta.ts";
import { recallPosterior } from "../core/recall/estimate.ts";
import { CHART_OPTIONS, chartFrom } from "./chart-options.ts";
import { decimal, RECALL_OPTION, recallFrom } from "./options.ts";
import { type Call, DATA_OPTION, type Option, reading } from "./verb.ts";

const WEEKDAYS: readonly string[] = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
const POLICIES: Readonly<Record<string, MissedDayPolicy>> = { waits: "chart-waits", "goes-on": "chart-goes-on" };

/** Most dates that a range may hold, and seconds that a card may cost. */
const MOST = { range: 3_650, seconds: 3_600, new: 1_000 } as const;

/** The option that `paceFrom` reads. */
export const SECONDS_OPTION: Option = {
  type: "string",
  about: `for a card recalled, missed and new (${DEFAULT_PACE.recalled},${DEFAULT_PACE.missed},${DEFAULT_PACE.fresh})`,
};

/** The option that `restFrom` reads. */
export const REST_OPTION: Option = {
  type: "string",
  about: "days without practice (none): weekdays, dates, ranges, such as sun,2026-12-24..2026-12-31",
};

/** The options that `planFrom` reads. */
export const PLAN_OPTIONS: Readonly<Record<string, Option>> = {
  ...CHART_OPTIONS,
  recall: RECALL_OPTION,
  seconds: SECONDS_OPTION,
  start: { type: "string", about: "the date of day 1 of a box that is begun empty" },
  rest: REST_OPTION,
  missed: { type: "string", about: "dates and ranges that will be missed though they are no rest days" },
  policy: { type: "string", about: "what a missed day does: the chart waits, or it goes on (waits)" },
  box: {
    type: "boolean",
    about: "begin with the box in the data folder as it is, or moved to the chart that is named",
  },
  data: DATA_OPTION,
};

/** Everything about a plan but its schedule and its length. */
export interface PlanBase extends Omit<Plan, "schedule" | "dates"> {
  readonly recall: readonly number[];
  /** What the box knows of its recall; null where the recall is given. */
  readonly posterior: readonly Beta[] | null;
  /** New cards a day of the box; null for a box to come. */
  readonly newPerDay: number | null;
  /** Whether the dates mean anything: false for a box that begins on no particular date. */
  readonly dated: boolean;
}

/** A date for a plan that begins on no particular one. */
const NO_DATE: LocalDate = "2001-01-01";

/** The plan that the options describe. `start` is where it begins if neither --start nor --box says. */
export async function planFrom(call: Call, start: LocalDate | null = null): Promise<PlanBase> {
  const base = call.values.box ? await planOfBox(call) : planToCome(call, start);
  const own = { restWeekdays: base.calendar.restWeekdays, restDates: base.calendar.restDates };
  const rest = call.values.rest === undefined ? own : restFrom(call);
  const policy = policyFrom(call) ?? base.calendar.policy;
  const missed = datesFrom(call, "missed").flatMap(datesOf);
  if (!base.dated && (call.values.rest !== undefined || missed.length > 0))
    throw call.usage(`--${call.values.rest === undefined ? "missed" : "rest"} needs --start DATE or --box`);
  return { ...base, calendar: changeCalendar(base.calendar, { ...rest, policy }, base.last), missed };
}

function planToCome(call: Call, usual: LocalDate | null): PlanBase {
  if (call.values.data !== undefined) throw call.usage("--data is about --box; a box to come is in no folder yet");
  const start = dateFrom(call, "start") ?? usual;
  const chart = chartFrom(call);
  const calendar = freshCalendar(start ?? NO_DATE);
  return {
    chart,
    waiting: [],
    calendar,
    last: null,
    from: calendar.anchor.date,
    stock: null,
    pace: paceFrom(call) ?? DEFAULT_PACE,
    recall: recallFrom(call, compartmentCount(chart)),
    posterior: null,
    newPerDay: null,
    dated: start !== null,
  };
}

async function planOfBox(call: Call): Promise<PlanBase> {
  if (call.values.start !== undefined)
    throw call.usage("--start is about a box to come; the one that --box names has begun");
  const view = await reading(call, (context) => planView(context, "UTC"));
  if (!view.box) throw call.usage("there is no box in the data folder yet; set one up first");
  const own = view.box.chart;
  const another = Object.keys(CHART_OPTIONS).some((name) => call.values[name] !== undefined);
  const chart = another ? chartFrom(call) : own;
  const count = compartmentCount(chart);
  const visits = visitsByChart(own, chart, view.visits);
  const posterior = call.values.recall === undefined ? recallPosterior(visits, count) : null;
  const { waiting, calendar, last, from } = view;
  return {
    ...boxByChart({ chart: own, waiting, calendar, last, from }, chart),
    stock: view.stock,
    pace: paceFrom(call) ?? view.pace,
    recall: posterior?.map(betaMean) ?? recallFrom(call, count),
    posterior,
    newPerDay: view.box.newPerDay,
    dated: true,
  };
}

/** What a band holds where so much is known of recall. */
export const bandWords = (posterior: PlanBase["posterior"]): string =>
  posterior ? "chance and what is not known of recall" : "chance alone";

/** The options that `scheduleFrom` reads. */
export const SCHEDULE_OPTIONS: Readonly<Record<string, Option>> = {
  new: { type: "string", about: "new cards a day (20, or the box's own), or seven numbers for Monday to Sunday" },
  "new-list": { type: "string", about: "new cards for the first day of practice, the second …, and none after" },
  until: { type: "string", about: "the last date with new cards" },
};

/** The pace of new cards; `usual` a day where the call says nothing. */
export function scheduleFrom(call: Call, dated: boolean, usual: number): NewCardSchedule {
  const list = countsFrom(call, "new-list");
  const each = countsFrom(call, "new");
  const until = dateFrom(call, "until");
  if (list && (each || until)) throw call.usage("--new-list says it all; leave --new and --until out");
  if (list) return { kind: "list", each: list };
  if (until !== null && !dated) throw call.usage("--until needs --start DATE or --box");
  const [steady = usual, ...more] = each ?? [];
  if (more.length === 0) return { kind: "steady", each: steady, until };
  if (each?.length !== 7)
    throw call.usage(`--new takes one number, or seven for Monday to Sunday, not ${each?.length}`);
  if (!dated) throw call.usage("--new with seven numbers needs --start DATE or --box");
  return { kind: "weekdays", each, until };
}

function countsFrom(call: Call, name: string): readonly number[] | undefined {
  const text = call.values[name];
  if (typeof text !== "string") return undefined;
  const several = name === "new" ? "whole number, or seven with commas between," : "list of whole numbers";
  return text.split(",").map((part) => {
    const count = /^\s*\d{1,9}\s*$/.test(part) ? Number(part) : Number.NaN;
    if (!(count <= MOST.new)) throw call.usage(`--${name} takes a ${several} from 0 to ${MOST.new}, not “${text}”`);
    return count;
  });
}

/** Rest days from --rest: weekdays, dates and ranges. */
export function restFrom(call: Call): {
  readonly restWeekdays: readonly number[];
  readonly restDates: readonly DateRange[];
} {
  const parts = partsOf(call, "rest");
  const weekdays = parts.filter((part) => WEEKDAYS.includes(part)).map((part) => WEEKDAYS.indexOf(part) + 1);
  const dates = parts.filter((part) => !WEEKDAYS.includes(part));
  const what = `${WEEKDAYS.join(", ")}, dates and ranges`;
  const restDates = dates.map((part) =>
    rangeFrom(call, part, `--rest takes ${what} with commas between, not “${part}”`),
  );
  const restWeekdays = [...new Set(weekdays)];
  if (restWeekdays.length === WEEKDAYS.length) throw call.usage("--rest must leave at least one weekday for practice");
  return { restWeekdays, restDates };
}

/** The dates and ranges that an option lists; none if the call does not give it. */
function datesFrom(call: Call, name: string): readonly DateRange[] {
  const wrong = (part: string): string => `--${name} takes dates and ranges with commas between, not “${part}”`;
  return partsOf(call, name).map((part) => rangeFrom(call, part, wrong(part)));
}

function partsOf(call: Call, name: string): readonly string[] {
  const text = call.values[name];
  return typeof text === "string" ? text.split(",").map((part) => part.trim().toLowerCase()) : [];
}

function rangeFrom(call: Call, text: string, wrong: string): DateRange {
  const [from = "", to = from, ...more] = text.split("..");
  if (!isLocalDate(from) || !isLocalDate(to) || to < from || more.length > 0) throw call.usage(wrong);
  if (daysBetween(from, to) > MOST.range) throw call.usage(`${text} is longer than ${MOST.range} days`);
  return { from, to };
}

const datesOf = ({ from, to }: DateRange): readonly LocalDate[] =>
  Array.from({ length: daysBetween(from, to) + 1 }, (_, i) => addDays(from, i));

/** The date that an option gives; null if the call does not give it. */
export function dateFrom(call: Call, name: string): LocalDate | null {
  const text = call.values[name];
  if (typeof text !== "string") return null;
  if (!isLocalDate(text)) throw call.usage(`--${name} takes a date such as 2026-03-14, not “${text}”`);
  return text;
}

function policyFrom(call: Call): MissedDayPolicy | null {
  const text = call.values.policy;
  if (typeof text !== "string") return null;
  const policy = POLICIES[text];
  if (!policy) throw call.usage(`--policy takes ${Object.keys(POLICIES).join(" or ")}, not “${text}”`);
  return policy;
}

/** Seconds that cards cost, from --seconds; null if the call does not give them. */
export function paceFrom(call: Call): Pace | null {
  const { seconds } = call.values;
  if (typeof seconds !== "string") return null;
  const [recalled, missed, fresh, ...more] = seconds.split(",").map((part) => decimal(part.trim()));
  const inRange = (n: number | undefined): n is number => n !== undefined && n >= 0 && n <= MOST.seconds;
  if (!inRange(recalled) || !inRange(missed) || !inRange(fresh) || more.length > 0)
    throw call.usage(
      `--seconds takes three numbers from 0 to ${MOST.seconds}: recalled, missed, new; not “${seconds}”`,
    );
  return { recalled, missed, fresh };
}

/** The options that `limitFrom` reads. */
export const LIMIT_OPTIONS: Readonly<Record<string, Option>> = {
  minutes: { type: "string", about: "what a day may take (30)" },
  quantile: { type: "string", about: "on how large a share of such days it may not take longer (0.95)" },
};

/** What a day may cost. */
export function limitFrom(call: Call, pace: Pace) {
  const { minutes = "30", quantile = "0.95" } = call.values;
  const limit = { minutes: decimal(String(minutes)), level: decimal(String(quantile)), pace };
  if (!(limit.minutes > 0 && limit.minutes <= 1_440))
    throw call.usage(`--minutes takes a number above 0 and at most 1440, not “${minutes}”`);
  if (!(limit.level >= 0.5 && limit.level < 1))
    throw call.usage(`--quantile takes a number from 0.5 to below 1, not “${quantile}”`);
  return limit;
}

/** Today's date where this program runs. */
export function todayHere(now: number): LocalDate {
  const here = new Date(now);
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${here.getFullYear()}-${two(here.getMonth() + 1)}-${two(here.getDate())}`;
}
