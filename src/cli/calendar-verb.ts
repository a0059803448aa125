// longhold calendar: the coming days as a calendar file, of the box in the data folder or of one to come.
import { CALENDAR_DAYS, type CalendarPlan, calendarDays, daysToCome } from "../app/calendar-days.ts";
import { BOX_DEFAULTS } from "../app/set-up.ts";
import { addDays, type LocalDate } from "../core/calendar/local-date.ts";
import { compartmentCount } from "../core/chart/chart.ts";
import { cleanText } from "../core/facts/clean-text.ts";
import { DEFAULT_PACE } from "../core/load/minutes.ts";
import { counted } from "../core/words.ts";
import { CALENDAR_TITLE, calendarFile } from "../exchange/calendar-file.ts";
import { calendarPath } from "../server/calendar-routes.ts";
import { CHART_OPTIONS, chartFrom } from "./chart-options.ts";
import { RECALL_OPTION, recallFrom, wholeNumber } from "./options.ts";
import { dateFrom, paceFrom, REST_OPTION, restFrom, SECONDS_OPTION } from "./plan-options.ts";
import { type Call, DATA_OPTION, JSON_OPTION, type Option, printJson, reading, type Verb } from "./verb.ts";
import { writeWhole } from "./write-whole.ts";

const MOST = { new: 1_000, title: 120 } as const;

/** What is said of a box that is yet to be begun; one that is there knows it all itself. */
const TO_COME: Readonly<Record<string, Option>> = {
  ...CHART_OPTIONS,
  new: { type: "string", about: `new cards a day (${BOX_DEFAULTS.newPerDay})` },
  recall: RECALL_OPTION,
  seconds: SECONDS_OPTION,
  rest: REST_OPTION,
};

/** Writes the coming days as an iCalendar file, or prints them. */
export const calendarVerb: Verb = {
  name: "calendar",
  about: "write the coming days, with what is due, as a calendar file",
  options: {
    out: { type: "string", about: "the file to write; - prints it" },
    days: { type: "string", about: `how many dates (${CALENDAR_DAYS.usual})` },
    title: { type: "string", about: `what the calendar is called (${CALENDAR_TITLE})` },
    start: { type: "string", about: "a date: plan a box that is begun empty on it, instead of the one there is" },
    ...TO_COME,
    data: DATA_OPTION,
    json: { ...JSON_OPTION, about: "print the days as JSON" },
  },
  async run(call) {
    const out = outFrom(call);
    const title = titleFrom(call);
    const count = wholeNumber(call, "days", { least: 1, most: CALENDAR_DAYS.most }) ?? CALENDAR_DAYS.usual;
    const toCome = planToCome(call, title, count);
    const plan = toCome ?? (await reading(call, (context) => calendarDays(context, count)));
    const text = calendarFile(plan, { title, stamp: Date.now() });
    const subscription = toCome ? null : calendarPath(plan.id);
    if (out === "-") call.out(text);
    else if (out !== null) writeWhole(out, text);
    if (call.values.json) printJson(call, { subscription, days: plan.days });
    else if (out !== null && out !== "-") call.out(wordsFor(plan, out, subscription));
    return 0;
  },
};

function wordsFor({ days }: CalendarPlan, out: string, subscription: string | null): string {
  const practice = days.filter((day) => !day.rest).length;
  const rest = practice < days.length ? `, ${counted(days.length - practice, "rest day")} left out` : "";
  const lines = [`${counted(practice, "day")} of practice written to ${out}${rest}.`];
  if (subscription !== null)
    lines.push(`To subscribe instead, from this machine: the address that longhold serve prints, and ${subscription}`);
  return `${lines.join("\n")}\n`;
}

function outFrom(call: Call): string | null {
  const { out, json } = call.values;
  if (out === "") throw call.usage("--out needs the name of a file, or - to print");
  if (out === "-" && json) throw call.usage("--json and --out - would print two things at once");
  if (typeof out === "string") return out;
  if (!json) throw call.usage("--out FILE is missing; --out - prints the calendar");
  return null;
}

function titleFrom(call: Call): string {
  const { title } = call.values;
  if (typeof title !== "string") return CALENDAR_TITLE;
  const clean = cleanText(title).replace(/\s+/g, " ");
  if (clean === "" || clean.length > MOST.title) throw call.usage(`--title takes 1 to ${MOST.title} characters`);
  return clean;
}

/** The plan of a box to come; null if the call is about the box in the data folder. Its title is its name. */
function planToCome(call: Call, title: string, count: number): CalendarPlan | null {
  const start = startFrom(call, count);
  if (start === null) return null;
  const chart = chartFrom(call);
  const newPerDay = wholeNumber(call, "new", { least: 0, most: MOST.new }) ?? BOX_DEFAULTS.newPerDay;
  const recall = recallFrom(call, compartmentCount(chart));
  const box = { chart, start, ...restFrom(call), newPerDay, recall, pace: paceFrom(call) ?? DEFAULT_PACE };
  return { id: title, chart, days: daysToCome(box, count) };
}

function startFrom(call: Call, count: number): LocalDate | null {
  const start = dateFrom(call, "start");
  if (start === null) {
    const given = Object.keys(TO_COME).find((name) => call.values[name] !== undefined);
    if (given)
      throw call.usage(`--${given} is about a box that is begun on --start DATE; the one there is has its own`);
    return null;
  }
  if (start > addDays("9999-12-31", 1 - count)) throw call.usage("--start is too late: no year after 9999 has a name");
  if (call.values.data !== undefined)
    throw call.usage("--start plans a box that is in no folder yet; leave --data out");
  return start;
}
