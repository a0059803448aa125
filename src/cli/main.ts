// The command line: one verb, its options, plain words or JSON.
import { parseArgs } from "node:util";
import { FAILURE_CODES, FailureError } from "../app/failure.ts";
import { VERBS, type Verb } from "./verbs.ts";

/** Bad usage, as most shells expect it. */
const USAGE_STATUS = 2;

class UsageError extends Error {}

async function main(words: readonly string[]): Promise<number> {
  const [name, ...rest] = words;
  if (name === undefined || name === "--help" || name === "-h" || name === "help") {
    process.stdout.write(overview());
    return name === undefined ? USAGE_STATUS : 0;
  }
  const verb = VERBS.find((one) => one.name === name);
  if (!verb) throw new UsageError(`there is no verb “${name}”; longhold --help lists them`);
  const { values, positionals } = readOptions(verb, rest);
  if (values.help) {
    process.stdout.write(help(verb));
    return 0;
  }
  return verb.run({
    values,
    positionals,
    usage: (message) => new UsageError(message),
    out: (text) => process.stdout.write(text),
  });
}

function readOptions(verb: Verb, rest: readonly string[]) {
  const options = Object.fromEntries(
    Object.entries({ ...verb.options, help: { type: "boolean", about: "" } as const }).map(([key, { type }]) => [
      key,
      { type },
    ]),
  );
  try {
    const read = parseArgs({ args: [...rest], options, allowPositionals: verb.operand !== undefined, strict: true });
    return { values: read.values as Record<string, string | boolean | undefined>, positionals: read.positionals };
  } catch (error) {
    const said = error instanceof Error ? (error.message.split(/\.\s|\n/)[0] ?? "") : String(error);
    throw new UsageError(`${said}; longhold ${verb.name} --help shows what it takes`);
  }
}

const overview = (): string =>
  [
    "Longhold keeps a card box: facts become cards, cards are practised on the days of a chart.",
    "",
    "usage: longhold <verb> [options]",
    "",
    ...VERBS.map((verb) => `  ${verb.name.padEnd(9)} ${verb.about}`),
    "",
    "longhold <verb> --help shows the options of a verb.",
    "",
  ].join("\n");

const help = (verb: Verb): string =>
  [
    `usage: longhold ${verb.name}${verb.operand ? ` ${verb.operand}` : ""} [options]`,
    "",
    verb.about,
    "",
    ...Object.entries({ ...verb.options, help: { type: "boolean", about: "show this" } }).map(
      ([name, { type, about }]) => `  ${`--${name}${type === "string" ? " …" : ""}`.padEnd(18)} ${about}`,
    ),
    "",
  ].join("\n");

main(process.argv.slice(2)).then(
  (status) => {
    process.exitCode = status;
  },
  (error: unknown) => {
    const line = (text: string): void =>
      void process.stderr.write(`longhold: ${text.replace(/\s*\n\s*/g, " ").replace(/\p{Cc}/gu, "")}\n`);
    if (error instanceof UsageError) {
      line(error.message);
      process.exitCode = USAGE_STATUS;
    } else if (error instanceof FailureError) {
      line(error.failure.message);
      process.exitCode = FAILURE_CODES[error.failure.kind].exit;
    } else {
      line(error instanceof Error ? error.message : String(error));
      process.exitCode = 1;
    }
  },
);

// A reader that has had enough (longhold today | head -1) is no failure.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(0);
  throw error;
});
