// longhold design: the bundles and offsets that keep the worst day low.
import { cycleLength } from "../core/chart/chart.ts";
import { type Design, designChart } from "../core/chart/design-chart.ts";
import { doublingPeriods } from "../core/chart/make-chart.ts";
import { CHART_OPTIONS, compartmentsFrom } from "./chart-options.ts";
import { RECALL_OPTION, recallFrom, wholeNumber, wholeNumbers } from "./options.ts";
import { type Call, JSON_OPTION, printJson, type Verb } from "./verb.ts";

/** What is designed for if the call does not say. */
const DEFAULTS = { compartments: 7, tabs: 18, pace: 20 } as const;

/** Far more tabs or new cards than anybody can handle. */
const COUNT = { least: 1, most: 999_999 } as const;

/** Designs a chart and prints it with its load. */
export const designVerb: Verb = {
  name: "design",
  about: "find bundles and offsets that keep the worst day low",
  options: {
    compartments: CHART_OPTIONS.compartments,
    periods: CHART_OPTIONS.periods,
    tabs: { type: "string", about: `most bundles in all (${DEFAULTS.tabs})` },
    recall: RECALL_OPTION,
    new: { type: "string", about: `new cards a day (${DEFAULTS.pace})` },
    json: JSON_OPTION,
  },
  async run(call) {
    const periods = periodsFrom(call);
    const recall = recallFrom(call, periods.length, { above0: true });
    const pace = wholeNumber(call, "new", COUNT) ?? DEFAULTS.pace;
    const designed = designChart({ periods, recall, tabs: wholeNumber(call, "tabs", COUNT) ?? DEFAULTS.tabs });
    if (!designed.ok) throw call.usage(designed.error);
    if (call.values.json) printJson(call, jsonOf(designed.value, pace));
    else call.out(wordsFor(designed.value, pace));
    return 0;
  },
};

function jsonOf({ chart, tabs, mean, peak, peakToMean, exact, evaluations }: Design, pace: number) {
  return {
    periods: chart.compartments.map(({ period }) => period),
    bundles: chart.compartments.map(({ bundles }) => bundles),
    offsets: chart.compartments.map(({ offset }) => offset),
    tabs,
    new: pace,
    mean: mean * pace,
    peak: peak * pace,
    peakToMean,
    exact,
    evaluations,
  };
}

function wordsFor(design: Design, pace: number): string {
  const { chart, tabs, mean, peak, peakToMean, exact } = design;
  const { periods, bundles, offsets } = jsonOf(design, pace);
  const above = Math.max(0, (peakToMean - 1) * 100).toFixed(1);
  return [
    `${periods.length} compartments, ${tabs} tabs, ${cycleLength(chart)} days`,
    `periods  ${periods.join(",")}`,
    `bundles  ${bundles.join(",")}`,
    `offsets  ${offsets.join(",")}`,
    `with ${pace} new cards a day, in the long run: ${(mean * pace).toFixed(1)} reviews on the mean day, ` +
      `${(peak * pace).toFixed(1)} on the worst`,
    `${exact ? "exact: no chart within the tabs has a lower worst day" : "heuristic"}; ` +
      `no chart can be below the mean, this one is ${above} % above`,
    "",
  ].join("\n");
}

function periodsFrom(call: Call): readonly number[] {
  const periods = wholeNumbers(call, "periods");
  const count = compartmentsFrom(call);
  if (periods && count !== undefined && periods.length !== count) {
    throw call.usage(`--periods needs ${count} numbers, one for each compartment, not ${periods.length}`);
  }
  return periods ?? doublingPeriods(count ?? DEFAULTS.compartments);
}
