// longhold paper: results of days on paper, by the numbers of the missed cards.
import { FailureError } from "../app/failure.ts";
import type { PaperDay } from "../app/paper-entry.ts";
import { enterPaper, previewPaper, type UnreadDay } from "../app/paper-results.ts";
import type { PaperDayView } from "../app/views.ts";
import { isLocalDate, type LocalDate } from "../core/calendar/local-date.ts";
import { parseMissed, parseNumbers } from "../core/paper/missed-numbers.ts";
import { decodeText } from "../exchange/decode-text.ts";
import { readPaperDays } from "../exchange/read-paper-days.ts";
import { readFile } from "./read-file.ts";
import { type Call, DATA_OPTION, JSON_OPTION, operand, printJson, type Verb, writing } from "./verb.ts";

/** A day as it was typed; `line` is where it stands in a table. */
interface TypedDay {
  readonly line?: number;
  readonly date?: LocalDate;
  readonly missed: string;
  readonly introduced: string;
  readonly piles: string;
}

/** Enters one day, or a table of days as one step: all that was due, except the missed cards. */
export const paperVerb: Verb = {
  name: "paper",
  about: "enter the results of days on paper: all recalled except the cards named",
  operand: "[FILE]",
  options: {
    date: { type: "string", about: "the day, such as 2026-03-14 (today); without it and the next three, FILE" },
    missed: { type: "string", about: "numbers of the missed cards with their check digits, such as 1042-9,318-2" },
    introduced: { type: "string", about: "numbers of the new cards that came into the box" },
    piles: { type: "string", about: "compartments that were asked, such as 3,1 (all that were due)" },
    "dry-run": { type: "boolean", about: "only say what would be recorded" },
    data: DATA_OPTION,
    json: JSON_OPTION,
  },
  run: (call) => {
    const typed = call.positionals.length > 0 ? daysOfFile(call) : [dayOfOptions(call)];
    return writing(call, async (context) => {
      const days = typed.map((day): UnreadDay => ({ date: day.date, read: (view) => readDay(view, day) }));
      const outcomes = await (call.values["dry-run"] ? previewPaper : enterPaper)(context, days);
      report(call, outcomes);
      return 0;
    });
  },
};

function dayOfOptions(call: Call): TypedDay {
  const text = (name: string): string => {
    const value = call.values[name];
    return typeof value === "string" ? value : "";
  };
  const date = text("date");
  if (date !== "" && !isLocalDate(date)) throw call.usage(`--date takes a day such as 2026-03-14, not “${date}”`);
  const numbers = { missed: text("missed"), introduced: text("introduced"), piles: text("piles") };
  return date === "" ? numbers : { ...numbers, date };
}

/** A table of days. Fails with `invalid-input` naming the line that is wrong. */
function daysOfFile(call: Call): readonly TypedDay[] {
  const file = operand(call, "FILE");
  for (const name of ["date", "missed", "introduced", "piles"])
    if (call.values[name] !== undefined) throw call.usage(`with FILE, ${name} is a column of it and not --${name}`);
  const { text } = decodeText(readFile(file));
  const rows = readPaperDays(text);
  if (!rows.ok) throw new FailureError("invalid-input", `${file}, ${rows.error}.`);
  if (rows.value.length === 0) throw new FailureError("invalid-input", `${file} names no days.`);
  return rows.value;
}

/** A day's numbers against what was due then. */
function readDay(view: PaperDayView, typed: TypedDay): PaperDay {
  const where = typed.line === undefined ? "" : `Line ${typed.line}: `;
  const introduced = numbersIn(parseNumbers(typed.introduced), where);
  const due = view.piles.flatMap((pile) => pile.numbers);
  const missed = numbersIn(parseMissed(typed.missed, new Set([...due, ...introduced])), where);
  return { date: view.date, asked: askedOf(view, typed.piles, where), missed, introduced };
}

interface Numbers {
  readonly numbers: readonly number[];
  readonly problems: readonly { readonly reason: string }[];
}

/** Numbers as they were typed; fails with `invalid-input` naming the first that is wrong. */
function numbersIn({ numbers, problems }: Numbers, where: string): readonly number[] {
  const [first] = problems;
  if (!first) return numbers;
  const reason = first.reason.replace(/\.$/u, "");
  throw new FailureError(
    "invalid-input",
    where === "" ? `${reason.charAt(0).toUpperCase()}${reason.slice(1)}.` : `${where}${reason}.`,
  );
}

/** The cards of these compartments; of all that were due where none is named. */
function askedOf({ piles }: PaperDayView, typed: string, where: string): readonly number[] | undefined {
  const named = typed.split(/[\s,;]+/u).filter((one) => one !== "");
  if (named.length === 0) return undefined;
  const strange = named.find((one) => !piles.some((pile) => String(pile.compartment) === one));
  if (strange !== undefined)
    throw new FailureError("invalid-input", `${where}No pile of compartment ${strange} was due on this day.`);
  return piles.filter(({ compartment }) => named.includes(String(compartment))).flatMap((pile) => pile.numbers);
}

function report(call: Call, outcomes: Awaited<ReturnType<typeof enterPaper>>): void {
  if (call.values.json) {
    printJson(call, call.positionals.length > 0 ? { days: outcomes } : outcomes[0]);
    return;
  }
  for (const { date, recalled, missed, kept, introduced, left, overtaken } of outcomes) {
    const over = overtaken > 0 ? `, answers of later days that no longer count ${overtaken}` : "";
    call.out(
      `${date}: recalled ${recalled}, missed ${missed}, kept ${kept}, introduced ${introduced}, left ${left}${over}\n`,
    );
  }
}
