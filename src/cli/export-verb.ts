// longhold export: a subject as a list, with its pictures and sounds beside it.
import { mkdirSync, writeFileSync } from "node:fs";
import { basename, dirname, extname, join } from "node:path";
import { listSubjects } from "../app/facts.ts";
import { exportSubject } from "../exchange/export-subject.ts";
import { chooseSubject } from "./choose-subject.ts";
import { DATA_OPTION, JSON_OPTION, printJson, reading, type Verb } from "./verb.ts";

/** Writes a subject as CSV to a file or the terminal. */
export const exportVerb: Verb = {
  name: "export",
  about: "write a subject as a CSV list that can be imported again",
  options: {
    subject: { type: "string", about: "its name (needed if there are several)" },
    out: { type: "string", about: "the file to write (the terminal); pictures and sounds go into a folder beside it" },
    data: DATA_OPTION,
    json: { ...JSON_OPTION, about: "print the facts as JSON" },
  },
  async run(call) {
    const { out } = call.values;
    await reading(call, async (context) => {
      const subject = chooseSubject(call, await listSubjects(context));
      if (call.values.json) {
        const facts = await context.store.read(({ library }) => collect(library.eachFact(subject)));
        printJson(call, { facts });
        return;
      }
      const result = await exportSubject(context, subject);
      if (typeof out !== "string") {
        call.out(result.table);
        return;
      }
      writeFileSync(out, result.table);
      const folder = join(dirname(out), `${basename(out, extname(out))}-files`);
      const files = [...result.pictures, ...result.sounds];
      if (files.length > 0) mkdirSync(folder, { recursive: true });
      for (const [name, { bytes }] of files) writeFileSync(join(folder, name), bytes);
    });
    return 0;
  },
};

async function collect<T>(items: AsyncIterable<T>): Promise<readonly T[]> {
  const all: T[] = [];
  for await (const item of items) all.push(item);
  return all;
}
