// longhold critique: what could be better about the cards of a list.
import { RULE_TEXTS } from "../core/critique/note.ts";
import { critiqueList, type RowNote } from "../exchange/critique-list.ts";
import { openParcel } from "../exchange/import-list.ts";
import { readFile } from "./read-file.ts";
import { type Call, JSON_OPTION, operand, printJson, type Verb } from "./verb.ts";

/** Notes about the rows of FILE; nothing is saved. */
export const critiqueVerb: Verb = {
  name: "critique",
  about: "say what could be better about the cards of a list, row by row",
  operand: "FILE",
  options: { json: JSON_OPTION },
  async run(call) {
    const file = operand(call, "FILE");
    const { list } = await openParcel(readFile(file));
    const { notes, problems } = critiqueList(list);
    for (const { line, column, reason } of problems)
      process.stderr.write(`longhold: ${file}:${line}:${column}: ${reason}\n`);
    if (call.values.json) printJson(call, notes.map(toJson));
    else printNotes(call, notes);
    return 0;
  },
};

const toJson = ({ row, note: { rule, severity, message, angle, fix } }: RowNote) => ({
  row,
  rule,
  severity,
  message,
  fix: fix?.label ?? RULE_TEXTS[rule].title,
  angle,
  reason: RULE_TEXTS[rule].reason,
  source: RULE_TEXTS[rule].source,
});

function printNotes(call: Call, notes: readonly RowNote[]): void {
  if (notes.length === 0) call.out("Nothing to say: no rule speaks about these cards.\n");
  for (const { row, note } of notes) call.out(`row ${row}, ${note.rule}: ${note.message}\n`);
}
