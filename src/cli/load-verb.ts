// longhold load: what a box that is begun empty asks from day 1 on.
import { type Chart, compartmentCount } from "../core/chart/chart.ts";
import { type SteadyLoad, steadyLoad } from "../core/chart/steady-load.ts";
import { type ExactDay, exactLoad } from "../core/load/exact-load.ts";
import { CHART_OPTIONS, chartFrom } from "./chart-options.ts";
import { RECALL_OPTION, recallFrom, wholeNumber } from "./options.ts";
import { JSON_OPTION, printJson, type Verb } from "./verb.ts";

const MOST = { new: 1_000, days: 3_650 } as const;
const LEVELS = [0.05, 0.95] as const;

/** Prints mean, spread and 5 % and 95 % quantiles of each day's reviews, and the load in the long run. */
export const loadVerb: Verb = {
  name: "load",
  about: "print how many reviews a box asks, day by day and in the long run",
  options: {
    new: { type: "string", about: "new cards a day (20)" },
    recall: RECALL_OPTION,
    days: { type: "string", about: "how many days from day 1 on (365)" },
    ...CHART_OPTIONS,
    json: JSON_OPTION,
  },
  run(call) {
    const chart = chartFrom(call);
    const recall = recallFrom(call, compartmentCount(chart));
    const newPerDay = wholeNumber(call, "new", { least: 0, most: MOST.new }) ?? 20;
    const days = wholeNumber(call, "days", { least: 1, most: MOST.days }) ?? 365;
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
