// What the command line prints: a subject with its box as it stands, or a list for a box to come.
import { basename, dirname, extname } from "node:path";
import { FailureError } from "../app/failure.ts";
import { type BoxKit, boxKitToCome, type LibraryCard, picturesOf } from "../app/kit.ts";
import type { PictureRecord } from "../app/ports.ts";
import { type PrintChoices, planKit } from "../app/print-plan.ts";
import { BOX_DEFAULTS } from "../app/set-up.ts";
import { localDateAt } from "../core/calendar/local-date.ts";
import type { KitCard } from "../core/kit/card-faces.ts";
import { parseNames } from "../core/kit/class-names.ts";
import type { ClassPack, KitPlan } from "../core/kit/kit-pages.ts";
import { openParcel } from "../exchange/import-list.ts";
import { listKit } from "../exchange/list-kit.ts";
import { CHART_OPTIONS, chartFrom } from "./chart-options.ts";
import { chooseSubject } from "./choose-subject.ts";
import { mediaOf } from "./files-beside.ts";
import { dateFrom, REST_OPTION, restFrom } from "./plan-options.ts";
import { readFile } from "./read-file.ts";
import { type Call, type Option, reading } from "./verb.ts";

/** What is said of a kit for a box that is yet to be begun. */
const TO_COME = { ...CHART_OPTIONS, rest: REST_OPTION } as const;

/** The options that say what is printed. */
export const SOURCE_OPTIONS = {
  subject: { type: "string", about: "the subject to print (needed if there are several)" },
  only: { type: "string", about: "changed: only cards that are new, changed, lost or damaged since they were printed" },
  file: { type: "string", about: "print a list straight away, with cards numbered from 1, instead of a subject" },
  names: { type: "string", about: "a file with a name on each line: a box for each of them" },
  "names-on-cards": { type: "boolean", about: "with --names: write the name on the cards too" },
  ...TO_COME,
  start: { type: "string", about: "with --file or --names: the date of the first sitting (today)" },
} as const satisfies Record<string, Option>;

/** What is printed, its pictures, and which cards of the library it holds; a list holds none. */
export interface KitSource {
  readonly plan: KitPlan;
  readonly pictures: ReadonlyMap<string, PictureRecord>;
  readonly cards: readonly LibraryCard[];
}

/** Finds what the call names; `days` dates in its calendars. */
export async function kitSource(call: Call, choices: PrintChoices, days: number): Promise<KitSource> {
  const { file, only } = call.values;
  if (only !== undefined && only !== "changed") throw call.usage(`--only takes changed, not “${only}”`);
  const pack = packFrom(call);
  if (typeof file === "string") return listSource(call, choices, { file, days, pack });
  const given = Object.keys(TO_COME).find((name) => call.values[name] !== undefined);
  if (given) throw call.usage(`--${given} is about a box to come and goes with --file; a subject has its own box`);
  if (call.values.start !== undefined && !pack) throw call.usage("--start goes with --file or --names");
  if (only !== undefined && pack) throw call.usage("--only is about your own paper and does not go with --names");
  const start = dateFrom(call, "start") ?? null;
  return reading(call, async (context) => {
    const subjects = await context.store.read(({ library }) => library.subjects());
    const { plan, cards } = await planKit(context, {
      ...choices,
      subjects: [chooseSubject(call, subjects)],
      only: only === "changed" ? "changed" : "all",
      days,
      timeZone: hereZone(),
      ...(pack ? { pack: { ...pack, start } } : {}),
    });
    if (only === "changed" && cards.length === 0 && plan.parts.has("cards") && plan.parts.size === 1)
      throw new FailureError("invalid-input", "No card is new, changed, lost or damaged: the paper is up to date.");
    return { plan, cards, pictures: await picturesOf(context, plan.cards) };
  });
}

async function listSource(
  call: Call,
  choices: PrintChoices,
  { file, days, pack }: { readonly file: string; readonly days: number; readonly pack: ClassPack | null },
): Promise<KitSource> {
  if (call.values.subject !== undefined) throw call.usage("a kit is of a --subject or of a --file, not of both");
  for (const name of ["data", "only", "record"])
    if (call.values[name] !== undefined) throw call.usage(`--file needs no data folder; leave --${name} out`);
  const { title, cards, pictures } = await kitOfFile(file);
  const { sheet, card, turn, parts, offset, bleed, mark, language } = choices;
  const style = { title, mark, language };
  const box = boxToCome(call, days);
  return {
    plan: { sheet, card, turn, parts, offset, bleed, style, cards, ...box, ...(pack ? { pack } : {}) },
    pictures,
    cards: [],
  };
}

function packFrom(call: Call): ClassPack | null {
  const { names: file } = call.values;
  const onCards = call.values["names-on-cards"] === true;
  if (typeof file !== "string") {
    if (onCards) throw call.usage("--names-on-cards goes with --names");
    return null;
  }
  const names = parseNames(new TextDecoder().decode(readFile(file)));
  if (!names.ok) throw new FailureError("invalid-input", `${file}: ${names.error}.`);
  if (names.value.length === 0) throw new FailureError("invalid-input", `There are no names in ${file}.`);
  return { names: names.value, onCards };
}

const hereZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone;

/** Chart and calendar of a box that is begun empty, and a blank sheet. */
function boxToCome(call: Call, days: number): BoxKit {
  const start = dateFrom(call, "start") ?? localDateAt(Date.now(), hereZone(), BOX_DEFAULTS.rollOverHour);
  return boxKitToCome({ chart: chartFrom(call), start, ...restFrom(call) }, days);
}

/** The cards of a list with the pictures beside it or in its zip file; rows with problems are named and left out. */
async function kitOfFile(file: string): Promise<{
  readonly title: string;
  readonly cards: readonly KitCard[];
  readonly pictures: ReadonlyMap<string, PictureRecord>;
}> {
  const { list: bytes, files } = await openParcel(readFile(file));
  const media = await mediaOf(bytes, files, dirname(file));
  const { cards, problems } = listKit({ bytes, media });
  for (const { line, column, reason } of problems)
    process.stderr.write(`longhold: ${file}:${line}:${column}: ${reason}\n`);
  if (cards.length === 0) throw new FailureError("invalid-input", `There are no cards in ${file}.`);
  return {
    title: basename(file, extname(file)),
    cards,
    pictures: new Map([...media.pictures.values()].map((picture) => [picture.hash, picture])),
  };
}
