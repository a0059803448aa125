// longhold today: what is due.

import { todayView } from "../app/today.ts";
import { visitsOn } from "../core/chart/chart.ts";
import { DATA_OPTION, JSON_OPTION, printJson, reading, type Verb } from "./verb.ts";

/** Prints what today asks. */
export const todayVerb: Verb = {
  name: "today",
  about: "print what is due today",
  options: { data: DATA_OPTION, json: JSON_OPTION },
  async run(call) {
    const view = await reading(call, (context) => todayView(context, Intl.DateTimeFormat().resolvedOptions().timeZone));
    if (call.values.json) {
      printJson(call, view);
      return 0;
    }
    if (!view.box) {
      call.out(`${view.facts} facts, and no box set up yet. longhold serve opens the pages; set it up there.\n`);
      return 0;
    }
    const rest = view.restDay ? ", a rest day" : "";
    call.out(`${view.date}, chart day ${view.chartDay} of ${view.cycle}${rest}\n`);
    if (view.missedDays > 0) call.out(`${view.missedDays} days were missed\n`);
    const planned = visitsOn(view.box.chart, view.day).map((visit) => visit.compartment);
    call.out(`compartments to visit: ${[...new Set(planned)].join(", ")}\n`);
    for (const pile of view.piles)
      call.out(`  compartment ${pile.compartment}, bundle ${pile.bundle}: ${pile.count} cards\n`);
    const minutes = Math.max(1, Math.round(view.minutes));
    if (view.due + view.newCards === 0) call.out("nothing is left for today\n");
    else
      call.out(
        `${view.due} cards due, ${view.newCards} new, about ${minutes} ${minutes === 1 ? "minute" : "minutes"}\n`,
      );
    return 0;
  },
};
