// longhold load: what a box asks, day by day and in the long run.
import type { Chart } from "../core/chart/chart.ts";
import { type SteadyLoad, steadyLoad } from "../core/chart/steady-load.ts";
import { datedDays } from "../core/load/dated-days.ts";
import type { Spread } from "../core/load/exact-load.ts";
import { ENOUGH_SETS, mixLoad } from "../core/load/mixed-load.ts";
import type { NewCardSchedule } from "../core/load/new-cards.ts";
import { onDates, type PlanDay, type PlanQuestion, planLoad, toBoxDays } from "../core/load/plan-load.ts";
import type { Beta } from "../core/recall/beta.ts";
import { wholeNumber } from "./options.ts";
import { bandWords, PLAN_OPTIONS, planFrom, SCHEDULE_OPTIONS, scheduleFrom } from "./plan-options.ts";
import { JSON_OPTION, printJson, type Verb } from "./verb.ts";

const MOST_DAYS = 3_650;
const LEVELS = [0.05, 0.95] as const;

/** Prints mean, spread and 5 % and 95 % quantiles of each day's reviews and minutes, and the load in the long run. */
export const loadVerb: Verb = {
  name: "load",
  about: "print how many reviews a box asks, day by day and in the long run",
  options: {
    ...SCHEDULE_OPTIONS,
    days: { type: "string", about: "how many days (365)" },
    ...PLAN_OPTIONS,
    json: JSON_OPTION,
  },
  async run(call) {
    const { posterior, dated, newPerDay, ...plan } = await planFrom(call);
    const schedule = scheduleFrom(call, dated, newPerDay ?? 20);
    const dates = wholeNumber(call, "days", { least: 1, most: MOST_DAYS }) ?? 365;
    const load = loadOf({ ...plan, schedule, dates, quantiles: LEVELS }, posterior);
    const settled = schedule.kind === "steady" ? settledLoad(plan.chart, plan.recall, schedule) : null;
    const bands = bandWords(posterior);
    if (call.values.json) printJson(call, { ...asJson(load, dated), longRun: settled, bands });
    else call.out(asTable(load, dated, [longRunWords(settled, schedule), `the bands hold ${bands}`]));
    return 0;
  },
};

/** The load for known recall, or mixed over what is known of it. */
function loadOf(question: PlanQuestion, posterior: readonly Beta[] | null): readonly PlanDay[] {
  if (!posterior) return planLoad(question);
  const days = datedDays(question);
  const mixture = mixLoad(toBoxDays(question, days), posterior);
  while (mixture.sets() < ENOUGH_SETS) mixture.add();
  return onDates(days, mixture.load(), LEVELS.length);
}

type Settled = Pick<SteadyLoad, "mean" | "peak" | "peakToMean">;

/** The worst error of a long run that is still printed, as a share of the mean: far less than the digits shown. */
const LONG_RUN_ERROR = 1e-6;

/** The long run at a pace; null where a compartment is never recalled, or where it is not found in reasonable time. */
function settledLoad(
  chart: Chart,
  recall: readonly number[],
  { each }: Extract<NewCardSchedule, { kind: "steady" }>,
): Settled | null {
  if (recall.some((p) => p === 0)) return null;
  const { mean, peak, peakToMean, error } = steadyLoad(chart, recall);
  return error > LONG_RUN_ERROR ? null : { mean: mean * each, peak: peak * each, peakToMean };
}

const spreadJson = ({ mean, sd, quantiles }: Spread) => ({ mean, sd, q05: quantiles[0], q95: quantiles[1] });

function asJson(load: readonly PlanDay[], dated: boolean) {
  const days = load.map(({ date, kind, day, newCards, reviews, minutes }) => ({
    day,
    ...(dated ? { date, kind } : {}),
    new: newCards,
    reviews: spreadJson(reviews),
    minutes: spreadJson(minutes),
  }));
  return { days };
}

function asTable(load: readonly PlanDay[], dated: boolean, end: readonly string[]): string {
  const row = (cells: readonly (string | number)[]): string =>
    `${cells.map((cell, i) => String(cell).padStart(i < 2 ? 5 : 9)).join("")}\n`;
  const lead = (date: string, text: string): string => (dated ? `${date.padEnd(10)} ${text}` : text);
  const rows = load.map(({ date, kind, day, newCards, reviews: { mean, sd, quantiles }, minutes }) =>
    kind === "sitting"
      ? lead(date, row([day ?? "", newCards, mean.toFixed(1), sd.toFixed(1), ...quantiles, minutes.mean.toFixed(1)]))
      : lead(date, `${row([day ?? ""]).trimEnd()}  ${kind}\n`),
  );
  const head = lead("date", row(["day", "new", "mean", "sd", "5 %", "95 %", "minutes"]));
  return [head, ...rows, ...end.map((line) => `${line}\n`)].join("");
}

function longRunWords(settled: Settled | null, { kind }: NewCardSchedule): string {
  if (kind !== "steady") return "a long run is only told for a steady number of new cards";
  if (!settled) return "in the long run the load does not settle, or too slowly to be worked out";
  const { mean, peak, peakToMean } = settled;
  return (
    `in the long run ${mean.toFixed(1)} reviews a day, ${peak.toFixed(1)} on the busiest day of the ` +
    `cycle (${peakToMean.toFixed(2)} times the mean)`
  );
}
