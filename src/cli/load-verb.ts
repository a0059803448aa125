// longhold load: what a box that is begun empty asks from day 1 on.
import { type Chart, compartmentCount } from "../core/chart/chart.ts";
import { type SteadyLoad, steadyLoad } from "../core/chart/steady-load.ts";
import { type ExactDay, exactLoad } from "../core/load/exact-load.ts";
import { chartFrom, chartVerb } from "./chart-verb.ts";
import { type Call, JSON_OPTION, printJson, type Verb } from "./verb.ts";

const MOST = { new: 1_000, days: 3_650 } as const;
const LEVELS = [0.05, 0.95] as const;

/** What describes a chart is said as to `longhold chart`. */
const CHART_OPTIONS = Object.fromEntries(
  Object.entries(chartVerb.options).filter(([name]) =>
    ["compartments", "periods", "bundles", "offsets"].includes(name),
  ),
);

/** Prints mean, spread and 5 % and 95 % quantiles of each day's reviews, and the load in the long run. */
export const loadVerb: Verb = {
  name: "load",
  about: "print how many reviews a box asks, day by day and in the long run",
  options: {
    new: { type: "string", about: "new cards a day (20)" },
    recall: { type: "string", about: "chance of recall, one for all or one for each compartment (0.9)" },
    days: { type: "string", about: "how many days from day 1 on (365)" },
    ...CHART_OPTIONS,
    json: JSON_OPTION,
  },
  run(call) {
    const chart = chartFrom(call);
    const recall = recallFrom(call, chart);
    const newPerDay = wholeFrom(call, "new", { least: 0, usual: 20 });
    const days = wholeFrom(call, "days", { least: 1, usual: 365 });
    const question = { chart, recall, waiting: [], from: 1, days, newCards: () => newPerDay, quantiles: LEVELS };
    const load = exactLoad(question);
    const settled = settledLoad(chart, recall, newPerDay);
    if (call.values.json) printJson(call, asJson(load, settled));
    else call.out(asTable(load, settled));
    return Promise.resolve(0);
  },
};

type Settled = Pick<SteadyLoad, "mean" | "peak" | "peakToMean">;

/** The worst error of a long run that is still printed, as a share of the mean: far less than the digits shown. */
const LONG_RUN_ERROR = 1e-6;

/** The long run at a pace; null where a compartment is never recalled, or where it is not found in reasonable time. */
function settledLoad(chart: Chart, recall: readonly number[], newPerDay: number): Settled | null {
  if (recall.some((p) => p === 0)) return null;
  const { mean, peak, peakToMean, error } = steadyLoad(chart, recall);
  return error > LONG_RUN_ERROR ? null : { mean: mean * newPerDay, peak: peak * newPerDay, peakToMean };
}

function asJson(load: readonly ExactDay[], settled: Settled | null): unknown {
  const days = load.map(({ day, newCards, reviews: { mean, sd, quantiles } }) => ({
    day,
    new: newCards,
    reviews: { mean, sd, q05: quantiles[0], q95: quantiles[1] },
  }));
  return { days, longRun: settled };
}

function asTable(load: readonly ExactDay[], settled: Settled | null): string {
  const row = (cells: readonly (string | number)[]): string =>
    `${cells.map((cell, i) => String(cell).padStart(i < 2 ? 5 : 9)).join("")}\n`;
  const rows = load.map(({ day, newCards, reviews: { mean, sd, quantiles } }) =>
    row([day, newCards, mean.toFixed(1), sd.toFixed(1), ...quantiles]),
  );
  const end = settled
    ? `in the long run ${settled.mean.toFixed(1)} reviews a day, ${settled.peak.toFixed(1)} on the busiest day of the ` +
      `cycle (${settled.peakToMean.toFixed(2)} times the mean)\n`
    : "in the long run the load does not settle, or too slowly to be worked out\n";
  return [row(["day", "new", "mean", "sd", "5 %", "95 %"]), ...rows, end].join("");
}

function recallFrom(call: Call, chart: Chart): readonly number[] {
  const count = compartmentCount(chart);
  const text = call.values.recall ?? "0.9";
  const parts = String(text)
    .split(",")
    .map((part) => part.trim());
  if (parts.length !== 1 && parts.length !== count)
    throw call.usage(`--recall needs one number, or ${count}, one for each compartment, not ${parts.length}`);
  const chances = parts.map((part) => {
    const chance = /^(\d+\.?\d*|\.\d+)$/.test(part) ? Number(part) : Number.NaN;
    if (!(chance >= 0 && chance <= 1)) throw call.usage(`--recall takes chances from 0 to 1, not “${part}”`);
    return chance;
  });
  return Array.from({ length: count }, (_, i) => chances[i] ?? chances[0] ?? 0);
}

function wholeFrom(call: Call, name: "new" | "days", { least, usual }: { least: number; usual: number }): number {
  const text = call.values[name];
  if (typeof text !== "string") return usual;
  const value = /^\d{1,9}$/.test(text) ? Number(text) : Number.NaN;
  if (!(value >= least && value <= MOST[name]))
    throw call.usage(`--${name} takes a whole number from ${least} to ${MOST[name]}, not “${text}”`);
  return value;
}
