// longhold afford: how many new cards a day stay within a limit of minutes.
import { addDays } from "../core/calendar/local-date.ts";
import { affordablePace } from "../core/load/affordable-pace.ts";
import { datedDays } from "../core/load/dated-days.ts";
import { toBoxDays } from "../core/load/plan-load.ts";
import { counted } from "../core/words.ts";
import { wholeNumber } from "./options.ts";
import { LIMIT_OPTIONS, limitFrom, PLAN_OPTIONS, planFrom } from "./plan-options.ts";
import { JSON_OPTION, printJson, type Verb } from "./verb.ts";

const MOST_DAYS = 1_100;

/** Prints the largest steady number of new cards, and the day that decides it. */
export const affordVerb: Verb = {
  name: "afford",
  about: "print how many new cards a day can be carried within a limit of minutes",
  options: {
    ...LIMIT_OPTIONS,
    days: { type: "string", about: "how many days ahead (365)" },
    ...PLAN_OPTIONS,
    json: JSON_OPTION,
  },
  async run(call) {
    const { posterior, dated, ...plan } = await planFrom(call);
    const limit = limitFrom(call, plan.pace);
    const dates = wholeNumber(call, "days", { least: 1, most: MOST_DAYS }) ?? 365;
    const question = { ...plan, dates, stock: null, quantiles: [] };
    const days = datedDays(question);
    const found = affordablePace((each) => toBoxDays({ ...question, schedule: { kind: "steady", each } }, days), limit);
    const { each, worst, minutes, within } = found;
    const at = days.findIndex(({ day }) => day !== null && day === worst?.day);
    const date = dated && at >= 0 ? addDays(plan.from, at) : null;
    const share = `${Number((limit.level * 100).toPrecision(4))} %`;
    if (call.values.json) {
      printJson(call, {
        new: each,
        worstDay: worst?.day ?? null,
        ...(date ? { worstDate: date } : {}),
        minutes,
        within,
      });
    } else if (within) {
      call.out(
        `${counted(each, "new card")} a day. The worst day is ${date ?? `day ${worst?.day}`}: at most ` +
          `${minutes.toFixed(1)} minutes with ${share} certainty.\n`,
      );
    } else {
      call.out(
        `No new cards: those in the box already take ${minutes.toFixed(1)} minutes on ${date ?? `day ${worst?.day}`}, ` +
          `with ${share} certainty at most.\n`,
      );
    }
    if (posterior && !call.values.json) call.out("The recall is the mean of what the box has measured.\n");
    return 0;
  },
};
