// longhold chart: which compartments are visited on which day.
import { found } from "../app/failure.ts";
import { type Chart, compartmentCount, cycleLength, tabCount, visitsOn } from "../core/chart/chart.ts";
import { CHART_OPTIONS, chartFrom } from "./chart-options.ts";
import { type Call, DATA_OPTION, JSON_OPTION, printJson, reading, type Verb } from "./verb.ts";

/** Prints a chart, a day a line. */
export const chartVerb: Verb = {
  name: "chart",
  about: "print which compartments are visited on which day",
  options: {
    ...CHART_OPTIONS,
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
