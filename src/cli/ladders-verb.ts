// longhold ladders: how many compartments, and how fast their days grow, side by side.
import { LADDERS, type LadderFigures, searchLadders } from "../core/chart/search-ladders.ts";
import { decimal, wholeNumber } from "./options.ts";
import { type Call, JSON_OPTION, printJson, type Verb } from "./verb.ts";

/** What ladders are compared for if the call does not say. */
const DEFAULTS = { tabs: 18, recall: 0.9, pace: 20 } as const;

/** Far more new cards than anybody can learn. */
const MOST = { tabs: 1_000, new: 1_000 } as const;

const TRIED = `${LADDERS.compartments[0]} to ${LADDERS.compartments.at(-1)}`;

/** Prints what each ladder of periods costs, with a chart designed for it. */
export const laddersVerb: Verb = {
  name: "ladders",
  about: "compare ladders: how many compartments, and how fast their days grow",
  options: {
    tabs: { type: "string", about: `most bundles in all (${DEFAULTS.tabs})` },
    recall: { type: "string", about: `chance of recall in every compartment of every ladder (${DEFAULTS.recall})` },
    new: { type: "string", about: `new cards a day (${DEFAULTS.pace})` },
    compartments: { type: "string", about: `only ladders of so many (${TRIED})` },
    json: JSON_OPTION,
  },
  async run(call) {
    const pace = wholeNumber(call, "new", { least: 1, most: MOST.new }) ?? DEFAULTS.pace;
    const only = wholeNumber(call, "compartments", { least: 1, most: LADDERS.cycle });
    const tabs =
      wholeNumber(call, "tabs", { least: only ?? LADDERS.compartments[0], most: MOST.tabs }) ?? DEFAULTS.tabs;
    const found = searchLadders({ recall: recallOf(call), tabs, ...(only ? { compartments: [only] } : {}) });
    if (!found.ok) throw call.usage(found.error);
    if (found.value.length === 0) throw call.usage(`no ladder of ${only} compartments comes round within a year`);
    if (call.values.json) printJson(call, { new: pace, ladders: found.value.map((one) => jsonOf(one, pace)) });
    else call.out(asTable(found.value, pace));
    return 0;
  },
};

function recallOf(call: Call): number {
  const { recall = String(DEFAULTS.recall) } = call.values;
  const chance = decimal(String(recall));
  if (!(chance > 0 && chance <= 1))
    throw call.usage(`--recall takes one chance above 0 and at most 1, not “${recall}”`);
  return chance;
}

function jsonOf({ chart, reviewsPerCard, peakToMean, ...figures }: LadderFigures, pace: number) {
  return {
    ...figures,
    bundles: chart.compartments.map(({ bundles }) => bundles),
    offsets: chart.compartments.map(({ offset }) => offset),
    reviewsPerCard,
    mean: reviewsPerCard * pace,
    peak: reviewsPerCard * peakToMean * pace,
    peakToMean,
  };
}

function asTable(ladders: readonly LadderFigures[], pace: number): string {
  const row = (periods: string, cells: readonly (string | number)[]): string =>
    `${periods.padEnd(30)}${cells.map((cell) => String(cell).padStart(9)).join("")}\n`;
  const rows = ladders.map((one) =>
    row(one.periods.join(","), [
      one.ratio,
      one.tabs,
      one.reviewsPerCard.toFixed(1),
      Math.round(one.daysUntilKept),
      Math.round(one.reviewsPerCard * one.peakToMean * pace),
      `${Math.max(0, 100 * (one.peakToMean - 1)).toFixed(1)} %`,
      one.longestWait,
      `${Math.round(100 * one.recallAYearOn)} %`,
      one.exact ? "yes" : "no",
    ]),
  );
  const head = row("days from visit to visit", [
    "growth",
    "tabs",
    "askings",
    "kept",
    "worst",
    "above",
    "wait",
    "year on",
    "best",
  ]);
  return [head, ...rows, ...MEANINGS.map((line) => `${line}\n`)].join("");
}

const MEANINGS = [
  "askings of a card until it is kept, days until then, cards on the worst day and how far it is above the mean, longest",
  "wait in days, chance of recall a year after a card was kept (a prediction), whether the chart is proved the best of",
  "its ladder; where it is not the search was heuristic, and no worst day can be below the mean. Recall is taken to be",
  "the same on every ladder, though longer waits cost recall.",
] as const;
