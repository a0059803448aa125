// longhold chart: which compartments are visited on which day.
import { found } from "../app/failure.ts";
import {
  CHART_LIMITS,
  type Chart,
  checkChart,
  compartmentCount,
  cycleLength,
  tabCount,
  visitsOn,
} from "../core/chart/chart.ts";
import { doublingPeriods, spreadChart } from "../core/chart/make-chart.ts";
import { type Call, DATA_OPTION, JSON_OPTION, printJson, reading, type Verb } from "./verb.ts";

/** Prints a chart, a day a line. */
export const chartVerb: Verb = {
  name: "chart",
  about: "print which compartments are visited on which day",
  options: {
    compartments: { type: "string", about: "how many (7)" },
    periods: { type: "string", about: "days from visit to visit, for each compartment (1,2,4,8 …)" },
    bundles: { type: "string", about: "bundles in each compartment (1,1,1 …)" },
    offsets: { type: "string", about: "day on which bundle 1 of each is first visited, modulo its period" },
    box: { type: "boolean", about: "the chart of the box in the data folder" },
    data: DATA_OPTION,
    json: JSON_OPTION,
  },
  async run(call) {
    const chart = call.values.box ? await chartOfBox(call) : chartFrom(call);
    const cycle = cycleLength(chart);
    const days = Array.from({ length: cycle }, (_, i) => ({ day: i + 1, visits: visitsOn(chart, i + 1) }));
    if (call.values.json) printJson(call, { cycle, tabs: tabCount(chart), days });
    else {
      call.out(`${compartmentCount(chart)} compartments, ${tabCount(chart)} tabs, ${cycle} days\n`);
      for (const { day, visits } of days)
        call.out(
          `${String(day).padStart(String(cycle).length)}  ${visits.map((visit) => place(chart, visit)).join(", ")}\n`,
        );
    }
    return 0;
  },
};

const place = (chart: Chart, { compartment, bundle }: { compartment: number; bundle: number }): string =>
  (chart.compartments[compartment - 1]?.bundles ?? 1) > 1 ? `${compartment}.${bundle}` : `${compartment}`;

const chartOfBox = (call: Call): Promise<Chart> =>
  reading(
    call,
    async ({ store }) => found(await store.read(({ boxes }) => boxes.box()), "box yet; set one up first").chart,
  );

/** The chart that the options describe. */
export function chartFrom(call: Call): Chart {
  const periods = numbers(call, "periods");
  const bundles = numbers(call, "bundles");
  const offsets = numbers(call, "offsets");
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
export function compartmentsFrom(call: Call): number | undefined {
  const text = call.values.compartments;
  if (typeof text !== "string") return undefined;
  const count = Number(text);
  if (!Number.isInteger(count) || count < 1 || count > CHART_LIMITS.compartments) {
    throw call.usage(`--compartments takes a whole number from 1 to ${CHART_LIMITS.compartments}, not “${text}”`);
  }
  return count;
}

/** The whole numbers, with commas between, that an option lists, if it is given. */
export function numbers(call: Call, name: string): readonly number[] | undefined {
  const text = call.values[name];
  if (typeof text !== "string") return undefined;
  return text.split(",").map((part) => {
    if (!/^\s*\d{1,9}\s*$/.test(part))
      throw call.usage(`--${name} takes whole numbers with commas between, not “${text}”`);
    return Number(part);
  });
}
