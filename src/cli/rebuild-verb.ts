// longhold rebuild: placement worked out again from the log.
import { rebuild } from "../app/rebuild.ts";
import { DATA_OPTION, JSON_OPTION, printJson, type Verb, writing } from "./verb.ts";

/** Recomputes the cached places and says what differed. */
export const rebuildVerb: Verb = {
  name: "rebuild",
  about: "work out every card's place again from the log, and report differences",
  options: { data: DATA_OPTION, json: JSON_OPTION },
  async run(call) {
    const report = await writing(call, rebuild);
    if (call.values.json) printJson(call, report);
    else {
      call.out(`${report.entries} entries replayed: ${report.cards} cards, ${report.sittings} sittings\n`);
      for (const { what, id } of report.differences) call.out(`put right: ${what} ${id}\n`);
      call.out(
        report.differences.length === 0
          ? "no differences\n"
          : `${report.differences.length} differences, all put right\n`,
      );
    }
    return 0;
  },
};
