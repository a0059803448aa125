// The options that describe a chart, the same for every verb that takes one.
import { CHART_LIMITS, type Chart, checkChart } from "../core/chart/chart.ts";
import { doublingPeriods, spreadChart } from "../core/chart/make-chart.ts";
import { wholeNumber, wholeNumbers } from "./options.ts";
import type { Call, Option } from "./verb.ts";

/** What describes a chart. */
export const CHART_OPTIONS = {
  compartments: { type: "string", about: "how many (7)" },
  periods: { type: "string", about: "days from visit to visit, for each compartment (1,2,4,8 …)" },
  bundles: { type: "string", about: "bundles in each compartment (1,1,1 …)" },
  offsets: { type: "string", about: "day on which bundle 1 of each is first visited, modulo its period" },
} as const satisfies Record<string, Option>;

/** The chart that the options describe. */
export function chartFrom(call: Call): Chart {
  const periods = wholeNumbers(call, "periods");
  const bundles = wholeNumbers(call, "bundles");
  const offsets = wholeNumbers(call, "offsets");
  const count = compartmentsFrom(call) ?? periods?.length ?? bundles?.length ?? offsets?.length ?? 7;
  for (const [name, list] of Object.entries({ periods, bundles, offsets })) {
    if (list && list.length !== count)
      throw call.usage(`--${name} needs ${count} numbers, one for each compartment, not ${list.length}`);
  }
  const chosen = {
    periods: periods ?? doublingPeriods(count),
    bundles: bundles ?? Array.from({ length: count }, () => 1),
  };
  const bare: Chart = {
    compartments: chosen.periods.map((period, i) => ({ period, bundles: chosen.bundles[i] ?? 1, offset: 0 })),
  };
  const sound = checkChart(bare);
  if (!sound.ok) throw call.usage(sound.error);
  const spread = spreadChart(chosen.periods, chosen.bundles);
  const chart = offsets
    ? { compartments: spread.compartments.map((one, i) => ({ ...one, offset: offsets[i] ?? 0 })) }
    : spread;
  const checked = checkChart(chart);
  if (!checked.ok) throw call.usage(checked.error);
  return checked.value;
}

/** The number of compartments that a call names, if it does. */
export const compartmentsFrom = (call: Call): number | undefined =>
  wholeNumber(call, "compartments", { least: 1, most: CHART_LIMITS.compartments });
