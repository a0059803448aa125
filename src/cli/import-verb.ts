// longhold import: a list of facts into a subject.
import { dirname } from "node:path";
import { FailureError } from "../app/failure.ts";
import type { ImportChoices } from "../app/views.ts";
import { importList, openParcel, previewImport } from "../exchange/import-list.ts";
import { mediaOf } from "./files-beside.ts";
import { readFile } from "./read-file.ts";
import { type Call, DATA_OPTION, JSON_OPTION, operand, printJson, type Verb, writing } from "./verb.ts";

/** Imports FILE; all good rows or, with --strict, none if any row has a problem. */
export const importVerb: Verb = {
  name: "import",
  about: "add the facts of a CSV or TSV list, or of a zip with its pictures and sounds, to a subject",
  operand: "FILE",
  options: {
    subject: { type: "string", about: "the subject; made if there is none of this name" },
    pictures: { type: "string", about: "folder of the pictures and sounds that the list names (where the list is)" },
    encoding: { type: "string", about: "utf-8, utf-16le, utf-16be or windows-1252 (found out)" },
    "one-way": { type: "boolean", about: "ask pairs from prompt to answer only, pictures for their names only" },
    strict: { type: "boolean", about: "save nothing if any row has a problem" },
    "dry-run": { type: "boolean", about: "only say what would be saved" },
    data: DATA_OPTION,
    json: JSON_OPTION,
  },
  async run(call) {
    const file = operand(call, "FILE");
    const subject = call.values.subject;
    if (typeof subject !== "string" || subject.trim() === "") throw call.usage("--subject NAME is missing");
    const { list: bytes, files } = await openParcel(readFile(file));
    const choices = choicesFrom(call);
    return writing(call, async (context) => {
      const { pictures: folder } = call.values;
      const media = await mediaOf(bytes, files, typeof folder === "string" ? folder : dirname(file));
      const existing = await context.store.read(async ({ library }) =>
        (await library.subjects()).find((one) => one.name === subject.trim()),
      );
      const preview = await previewImport(
        context,
        { bytes, media },
        { ...choices, ...(existing ? { subject: existing.id } : {}) },
      );
      for (const { line, column, reason } of preview.problems)
        process.stderr.write(`longhold: ${file}:${line}:${column}: ${reason}\n`);
      if (preview.problemCount > preview.problems.length) {
        process.stderr.write(`longhold: and ${preview.problemCount - preview.problems.length} more problems\n`);
      }
      if (call.values.strict && preview.problemCount > 0)
        throw new FailureError("conflict", "Nothing was saved, because some rows have problems.");
      if (call.values["dry-run"]) {
        report(call, {
          saved: 0,
          wouldSave: preview.good,
          duplicates: preview.duplicates,
          problems: preview.problemCount,
        });
        return 0;
      }
      const { saved, duplicates, problems, cards } = await importList(context, { bytes, media }, choices, {
        target: { name: subject.trim() },
        oneWay: call.values["one-way"] === true,
      });
      report(call, { saved, cards, duplicates, problems });
      return 0;
    });
  },
};

function report(call: Call, counts: Readonly<Record<string, number>>): void {
  if (call.values.json) printJson(call, counts);
  else
    call.out(
      `${Object.entries(counts)
        .map(([name, count]) => `${name} ${count}`)
        .join(", ")}\n`,
    );
}

function choicesFrom(call: Call): ImportChoices {
  const known = ["utf-8", "utf-16le", "utf-16be", "windows-1252"] as const;
  const given = call.values.encoding;
  if (given === undefined) return {};
  const encoding = known.find((one) => one === given);
  if (!encoding) throw call.usage(`--encoding takes ${known.join(", ")}, not “${given}”`);
  return { encoding };
}
