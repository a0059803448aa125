// longhold paper: results of days on paper, by the numbers of the missed cards.
import { FailureError } from "../app/failure.ts";
import { enterPaper, type PaperDay, paperDay, previewPaper } from "../app/paper-results.ts";
import { isLocalDate } from "../core/calendar/local-date.ts";
import { parseMissed } from "../core/paper/missed-numbers.ts";
import { type Call, DATA_OPTION, JSON_OPTION, printJson, type Verb, writing } from "./verb.ts";

/** Enters one day: all that was due, except the missed cards. */
export const paperVerb: Verb = {
  name: "paper",
  about: "enter the results of a day on paper: all recalled except the cards named",
  operand: "",
  options: {
    date: { type: "string", about: "the day, such as 2026-03-14 (the latest that can be entered)" },
    missed: { type: "string", about: "numbers of the missed cards with their check digits, such as 1042-9,318-2" },
    introduced: { type: "string", about: "numbers of the new cards that came into the box" },
    "dry-run": { type: "boolean", about: "only say what would be recorded" },
    data: DATA_OPTION,
    json: JSON_OPTION,
  },
  run: (call) =>
    writing(call, async (context) => {
      const { date } = call.values;
      if (date !== undefined && (typeof date !== "string" || !isLocalDate(date)))
        throw call.usage(`--date takes a day such as 2026-03-14, not “${String(date)}”`);
      const view = await paperDay(context, date as PaperDay["date"] | undefined);
      const due = view.piles.flatMap((pile) => pile.numbers);
      const introduced = numbersIn(call.values.introduced, view.newCards);
      const day: PaperDay = {
        date: view.date,
        missed: numbersIn(call.values.missed, [...due, ...introduced]),
        introduced,
      };
      const [outcome] = await (call.values["dry-run"] ? previewPaper : enterPaper)(context, [day]);
      if (!outcome) throw new FailureError("invalid-input", "There is nothing to enter.");
      report(call, outcome);
      return 0;
    }),
};

/** Numbers as they were typed; fails with `invalid-input` naming the first that is wrong. */
function numbersIn(typed: Call["values"][string], due: readonly number[]): readonly number[] {
  const { numbers, problems } = parseMissed(typeof typed === "string" ? typed : "", new Set(due));
  const [first] = problems;
  if (first)
    throw new FailureError("invalid-input", `${first.reason.charAt(0).toUpperCase()}${first.reason.slice(1)}.`);
  return numbers;
}

function report(call: Call, outcome: Awaited<ReturnType<typeof enterPaper>>[number]): void {
  const { date, recalled, missed, kept, introduced, left } = outcome;
  if (call.values.json) printJson(call, outcome);
  else
    call.out(`${date}: recalled ${recalled}, missed ${missed}, kept ${kept}, introduced ${introduced}, left ${left}\n`);
}
