// longhold kit: cards and everything that goes with them, as a PDF to print.
import { readdirSync, readFileSync, statSync } from "node:fs";
import { basename, dirname, extname, join } from "node:path";
import { CALENDAR_DAYS, daysToCome } from "../app/calendar-days.ts";
import { FailureError } from "../app/failure.ts";
import { type BoxKit, boxKit, printedDays, type SubjectKit, subjectKit } from "../app/kit.ts";
import { BOX_DEFAULTS } from "../app/set-up.ts";
import { localDateAt } from "../core/calendar/local-date.ts";
import { compartmentCount } from "../core/chart/chart.ts";
import { DEFAULT_PACE } from "../core/load/minutes.ts";
import { counted } from "../core/words.ts";
import { openParcel, usablePictures } from "../exchange/import-list.ts";
import { listKit } from "../exchange/list-kit.ts";
import { printKitInWorker } from "../kit/print-kit-in-worker.ts";
import { normalisePicture } from "../media/normalise-picture.ts";
import { CHART_OPTIONS, chartFrom } from "./chart-options.ts";
import { PRINT_OPTIONS, printFrom } from "./kit-options.ts";
import { wholeNumber } from "./options.ts";
import { dateFrom, REST_OPTION, restFrom } from "./plan-options.ts";
import { readFile } from "./read-file.ts";
import { type Call, DATA_OPTION, JSON_OPTION, printJson, reading, type Verb } from "./verb.ts";
import { writeWhole } from "./write-whole.ts";

/** What is said of a kit for a box that is yet to be begun. */
const TO_COME = {
  ...CHART_OPTIONS,
  start: { type: "string", about: "with --file: the date of the first sitting (today)" },
  rest: REST_OPTION,
} as const;

/** Prints a kit of a subject, with the box as it stands, or straight from a list for a box to come. */
export const kitVerb: Verb = {
  name: "kit",
  about: "print cards, dividers, chart, calendar and sitting sheet as a PDF",
  options: {
    out: { type: "string", about: "the PDF to write" },
    subject: { type: "string", about: "the subject to print (needed if there are several)" },
    file: { type: "string", about: "print a list straight away, with cards numbered from 1, instead of a subject" },
    ...PRINT_OPTIONS,
    days: { type: "string", about: `dates in the calendar (${CALENDAR_DAYS.usual})` },
    ...TO_COME,
    data: DATA_OPTION,
    json: JSON_OPTION,
  },
  async run(call) {
    const { out } = call.values;
    if (typeof out !== "string" || out === "") throw call.usage("--out FILE.pdf is missing");
    const choices = printFrom(call);
    const count = wholeNumber(call, "days", { least: 1, most: CALENDAR_DAYS.most }) ?? CALENDAR_DAYS.usual;
    const { cards, pictures, title, ...box } = await whatToPrint(call, count);
    const { sheet, card, turn, parts, offset, mark, language } = choices;
    if (cards.length > PROGRESS_FROM) process.stderr.write(`longhold: setting ${counted(cards.length, "card")} …\n`);
    const style = { title, mark, language };
    const kit = await printKitInWorker({ sheet, card, turn, parts, offset, style, cards, ...box }, pictures);
    writeWhole(out, kit.pdf);
    for (const notice of kit.notices) process.stderr.write(`longhold: ${notice}\n`);
    if (call.values.json) printJson(call, { pages: kit.pages, cards: cards.length, notices: kit.notices });
    else
      call.out(
        `${counted(kit.pages, "page")} with ${counted(cards.length, "card")} written to ${out}.${howTo(turn)}\n`,
      );
    return 0;
  },
};

/** Fewer cards than this are set before anybody wonders. */
const PROGRESS_FROM = 500;

const howTo = (turn: string): string =>
  turn === "fold"
    ? " Print one side at actual size, and fold along the dashed lines."
    : ` Print both sides at actual size, turned over the ${turn} edge.`;

async function whatToPrint(call: Call, days: number): Promise<SubjectKit & BoxKit> {
  const { file } = call.values;
  if (typeof file !== "string") {
    const given = Object.keys(TO_COME).find((name) => call.values[name] !== undefined);
    if (given) throw call.usage(`--${given} is about a box to come and goes with --file; a subject has its own box`);
    return reading(call, async (context) => {
      const subjects = await context.store.read(({ library }) => library.subjects());
      const kit = await subjectKit(context, chooseSubject(call, subjects));
      return { ...kit, ...((await boxKit(context, days)) ?? boxToCome(call, days)) };
    });
  }
  if (call.values.subject !== undefined) throw call.usage("a kit is of a --subject or of a --file, not of both");
  if (call.values.data !== undefined) throw call.usage("--file needs no data folder; leave --data out");
  return { ...(await kitOfFile(file)), ...boxToCome(call, days) };
}

function chooseSubject(call: Call, subjects: readonly { readonly id: string; readonly name: string }[]): string {
  const name = call.values.subject;
  const [only, second] = subjects;
  const chosen =
    typeof name === "string" ? subjects.find((subject) => subject.name === name) : second ? undefined : only;
  if (chosen) return chosen.id;
  const list = subjects.map((subject) => `“${subject.name}”`).join(", ") || "none yet";
  throw typeof name === "string"
    ? new FailureError("not-found", `There is no subject “${name}”. The subjects are: ${list}.`)
    : call.usage(`name one with --subject; the subjects are: ${list}`);
}

/** Chart and calendar of a box that is begun empty, and a blank sheet. */
function boxToCome(call: Call, count: number): BoxKit {
  const chart = chartFrom(call);
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const start = dateFrom(call, "start") ?? localDateAt(Date.now(), zone, BOX_DEFAULTS.rollOverHour);
  const recall = Array.from({ length: compartmentCount(chart) }, () => 1);
  const box = { chart, start, ...restFrom(call), newPerDay: 0, recall, pace: DEFAULT_PACE };
  const sitting = { title: "Sitting of ____________, chart day ______", piles: [] };
  return { chart, days: printedDays(chart, daysToCome(box, count)), sitting };
}

/** The cards of a list with the pictures beside it or in its zip file; rows with problems are named and left out. */
async function kitOfFile(file: string): Promise<SubjectKit> {
  const { list: bytes, pictures: packed } = await openParcel(readFile(file));
  const pictures = await usablePictures([...packed, ...picturesBeside(file, bytes)], normalisePicture);
  const { cards, problems } = listKit({ bytes, pictures });
  for (const { line, column, reason } of problems)
    process.stderr.write(`longhold: ${file}:${line}:${column}: ${reason}\n`);
  if (cards.length === 0) throw new FailureError("invalid-input", `There are no cards in ${file}.`);
  return {
    title: basename(file, extname(file)),
    cards,
    pictures: new Map([...pictures.values()].map((picture) => [picture.hash, picture])),
  };
}

/** Pictures in the list's folder whose names occur in it. */
function picturesBeside(file: string, bytes: Uint8Array): readonly (readonly [name: string, bytes: Uint8Array])[] {
  const text = new TextDecoder().decode(bytes).normalize("NFC").toLowerCase();
  return readdirSync(dirname(file)).flatMap((name) => {
    const path = join(dirname(file), name);
    const named = /\.(png|jpe?g|webp|gif|svg|avif)$/i.test(name) && text.includes(name.normalize("NFC").toLowerCase());
    return named && statSync(path).isFile() ? [[name, new Uint8Array(readFileSync(path))] as const] : [];
  });
}
