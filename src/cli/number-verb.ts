// longhold number: card numbers and their check digits.
import { FailureError } from "../app/failure.ts";
import { MOST_CARD_NUMBER, parseCardNumber, printedNumber } from "../core/cards/card-number.ts";
import { type Call, JSON_OPTION, printJson, type Verb } from "./verb.ts";

/** Checks numbers as they are typed from paper, or prints numbers with their check digits. */
export const numberVerb: Verb = {
  name: "number",
  about: "check card numbers typed from paper, or make the check digit of a number",
  operand: "check 1042-9 … | make 1042 …",
  options: { json: JSON_OPTION },
  async run(call) {
    const [what, ...numbers] = call.positionals;
    if (what !== "check" && what !== "make") throw call.usage("say check or make, and the numbers");
    if (numbers.length === 0) throw call.usage(`number ${what} needs a number`);
    return what === "check" ? check(call, numbers) : make(call, numbers);
  },
};

function check(call: Call, typed: readonly string[]): number {
  const read = typed.map((one) => ({ typed: one, result: parseCardNumber(one) }));
  if (call.values.json) {
    const answers = read.map(({ typed, result }) =>
      result.ok ? { typed, number: result.value } : { typed, problem: result.error },
    );
    printJson(call, { numbers: answers });
  } else
    for (const { result } of read)
      call.out(`${result.ok ? `${printedNumber(result.value)} is card ${result.value}` : result.error}\n`);
  return read.every(({ result }) => result.ok) ? 0 : 1;
}

function make(call: Call, numbers: readonly string[]): number {
  const printed = numbers.map((one) => {
    const number = /^\d{1,9}$/.test(one) ? Number(one) : 0;
    if (number >= 1) return printedNumber(number);
    throw new FailureError(
      "invalid-input",
      `A card number is a whole number from 1 to ${MOST_CARD_NUMBER}, not “${one}”.`,
    );
  });
  if (call.values.json) printJson(call, { numbers: printed });
  else call.out(`${printed.join("\n")}\n`);
  return 0;
}
