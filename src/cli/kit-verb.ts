// longhold kit: cards and everything that goes with them, as a PDF to print.
import { CALENDAR_DAYS } from "../app/calendar-days.ts";
import { FailureError } from "../app/failure.ts";
import { recordPrinted } from "../app/print-record.ts";
import { counted } from "../core/words.ts";
import { printKitInWorker } from "../kit/print-kit-in-worker.ts";
import { printPack } from "../kit/print-pack.ts";
import { PRINT_OPTIONS, printFrom } from "./kit-options.ts";
import { type KitSource, kitSource, SOURCE_OPTIONS } from "./kit-source.ts";
import { wholeNumber } from "./options.ts";
import { type Call, DATA_OPTION, JSON_OPTION, printJson, type Verb, writing } from "./verb.ts";
import { writeWhole } from "./write-whole.ts";

/** Prints a kit of a subject, with the box as it stands, or straight from a list for a box to come. */
export const kitVerb: Verb = {
  name: "kit",
  about: "print cards, dividers, chart, calendar and sitting sheet as a PDF",
  options: {
    out: { type: "string", about: "the PDF to write; with --names also FILE.zip, for a PDF of each name" },
    ...SOURCE_OPTIONS,
    ...PRINT_OPTIONS,
    days: { type: "string", about: `dates in the calendar (${CALENDAR_DAYS.usual})` },
    record: { type: "boolean", about: "record that these cards are printed; --only changed goes by that" },
    data: DATA_OPTION,
    json: JSON_OPTION,
  },
  async run(call) {
    const { out } = call.values;
    if (typeof out !== "string" || out === "") throw call.usage("--out FILE.pdf is missing");
    const choices = printFrom(call);
    const count = wholeNumber(call, "days", { least: 1, most: CALENDAR_DAYS.most }) ?? CALENDAR_DAYS.usual;
    const source = await kitSource(call, choices, count);
    const { plan } = source;
    const record = recordable(call, source);
    if (plan.cards.length > PROGRESS_FROM)
      process.stderr.write(`longhold: setting ${counted(plan.cards.length, "card")} …\n`);
    const { bytes, pages, notices } = await printed(call, out, source);
    writeWhole(out, bytes);
    for (const notice of notices) process.stderr.write(`longhold: ${notice}\n`);
    const recorded = record ? (await writing(call, (context) => recordPrinted(context, source.cards))).id : null;
    if (call.values.json)
      printJson(call, { pages, cards: plan.cards.length, notices, ...(record ? { recorded } : {}) });
    else
      call.out(
        `${saidOf(pages, source, out)}${howTo(plan.turn)}${record ? " The cards are recorded as printed." : ""}\n`,
      );
    return 0;
  },
};

/** Fewer cards than this are set before anybody wonders. */
const PROGRESS_FROM = 500;

/** Whether the printing is recorded. Refuses what could not be. */
function recordable(call: Call, { plan, cards }: KitSource): boolean {
  if (call.values.record !== true) return false;
  if (plan.pack) throw call.usage("--record is about your own paper and does not go with --names");
  if (!plan.parts.has("cards")) throw call.usage("--record needs cards among --parts");
  if (cards.length === 0) throw new FailureError("invalid-input", "There are no cards to print.");
  return true;
}

async function printed(call: Call, out: string, { plan, pictures }: KitSource) {
  if (out.toLowerCase().endsWith(".zip")) {
    if (!plan.pack) throw call.usage("a zip file holds a PDF for each name and needs --names");
    const { zip, pages, notices } = await printPack(plan, pictures);
    return { bytes: zip, pages, notices };
  }
  const { pdf, pages, notices } = await printKitInWorker(plan, pictures);
  return { bytes: pdf, pages, notices };
}

function saidOf(pages: number, { plan }: KitSource, out: string): string {
  const boxes = plan.pack ? ` for each of ${counted(plan.pack.names.length, "name")}` : "";
  return `${counted(pages, "page")} with ${counted(plan.cards.length, "card")}${boxes} written to ${out}.`;
}

const howTo = (turn: string): string =>
  turn === "fold"
    ? " Print one side at actual size, and fold along the dashed lines."
    : ` Print both sides at actual size, turned over the ${turn} edge.`;
