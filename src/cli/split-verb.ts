// longhold split: cards that could be made of a text.
import { FailureError } from "../app/failure.ts";
import { LONGEST_TEXT, type Proposal, splitText } from "../core/splitting/split-text.ts";
import { decodeText } from "../exchange/decode-text.ts";
import { readFile } from "./read-file.ts";
import { type Call, JSON_OPTION, operand, printJson, type Verb } from "./verb.ts";

/** Proposals for the text in FILE; nothing is saved. */
export const splitVerb: Verb = {
  name: "split",
  about: "propose cards for a text: blanks in its sentences, or a list from item to item",
  operand: "FILE",
  options: {
    language: { type: "string", about: "the language of the text: en, de, ja … (found out)" },
    json: JSON_OPTION,
  },
  async run(call) {
    const { text: raw } = decodeText(readFile(operand(call, "FILE")));
    const text = raw.replace(/\r\n?/gu, "\n").normalize("NFC");
    if (text.length > LONGEST_TEXT) {
      const most = LONGEST_TEXT.toLocaleString("en-GB");
      throw new FailureError("too-large", `The text has more than ${most} characters. Split a part of it at a time.`);
    }
    const language = typeof call.values.language === "string" ? call.values.language : "";
    const proposals = splitText(text, language);
    if (call.values.json)
      printJson(
        call,
        proposals.map((one) => toJson(text, one)),
      );
    else for (const one of proposals) printProposal(call, text, one);
    return 0;
  },
};

const toJson = (text: string, one: Proposal) =>
  one.kind === "list"
    ? one
    : { ...one, blanks: one.blanks.map((blank) => ({ ...blank, text: text.slice(blank.from, blank.to) })) };

function printProposal(call: Call, text: string, one: Proposal): void {
  if (one.kind === "list") {
    call.out(
      `list${one.title === "" ? "" : `: ${one.title}`}\n${one.items.map((item, i) => `  ${i + 1}. ${item}\n`).join("")}`,
    );
    return;
  }
  call.out(`${one.text.replace(/\s+/gu, " ")}\n`);
  for (const { from, to, why } of one.blanks) call.out(`  ${why}: ${text.slice(from, to)}\n`);
}
