// longhold design: the bundles and offsets that keep the worst day low.
import { cycleLength } from "../core/chart/chart.ts";
import { type Design, designChart } from "../core/chart/design-chart.ts";
import { doublingPeriods } from "../core/chart/make-chart.ts";
import { compartmentsFrom, numbers } from "./chart-verb.ts";
import { type Call, JSON_OPTION, printJson, type Verb } from "./verb.ts";

/** What is designed for if the call does not say. */
const DEFAULTS = { compartments: 7, tabs: 18, recall: 0.9, pace: 20 } as const;

/** Designs a chart and prints it with its load. */
export const designVerb: Verb = {
  name: "design",
  about: "find bundles and offsets that keep the worst day low",
  options: {
    compartments: { type: "string", about: `how many (${DEFAULTS.compartments})` },
    periods: { type: "string", about: "days from visit to visit, for each compartment (1,2,4,8 …)" },
    tabs: { type: "string", about: `most bundles in all (${DEFAULTS.tabs})` },
    recall: { type: "string", about: `chance of recall, one for all or one for each compartment (${DEFAULTS.recall})` },
    new: { type: "string", about: `new cards a day (${DEFAULTS.pace})` },
    json: JSON_OPTION,
  },
  async run(call) {
    const periods = periodsFrom(call);
    const recall = recallFrom(call, periods.length);
    const pace = wholeNumber(call, "new") ?? DEFAULTS.pace;
    const designed = designChart({ periods, recall, tabs: wholeNumber(call, "tabs") ?? DEFAULTS.tabs });
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
  const periods = numbers(call, "periods");
  const count = compartmentsFrom(call);
  if (periods && count !== undefined && periods.length !== count) {
    throw call.usage(`--periods needs ${count} numbers, one for each compartment, not ${periods.length}`);
  }
  return periods ?? doublingPeriods(count ?? DEFAULTS.compartments);
}

function recallFrom(call: Call, count: number): readonly number[] {
  const text = call.values.recall;
  if (typeof text !== "string") return Array.from({ length: count }, () => DEFAULTS.recall);
  const chances = text.split(",").map((part) => {
    const chance = /^\s*(\d*\.)?\d{1,15}\s*$/.test(part) ? Number(part) : 0;
    if (!(chance > 0 && chance <= 1)) throw call.usage(`--recall takes numbers above 0 and at most 1, not “${text}”`);
    return chance;
  });
  if (chances.length !== 1 && chances.length !== count) {
    throw call.usage(`--recall needs 1 number or ${count}, one for each compartment, not ${chances.length}`);
  }
  return Array.from({ length: count }, (_, k) => chances[chances.length === 1 ? 0 : k] ?? DEFAULTS.recall);
}

function wholeNumber(call: Call, name: string): number | undefined {
  const text = call.values[name];
  if (typeof text !== "string") return undefined;
  if (!/^\d{1,6}$/.test(text) || Number(text) < 1) {
    throw call.usage(`--${name} takes a whole number from 1 to 999999, not “${text}”`);
  }
  return Number(text);
}
