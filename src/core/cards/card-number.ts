// Numbers on paper cards. The check digit is Damm's: H. M. Damm, "Total anti-symmetrische Quasigruppen",
// dissertation, Marburg 2004. It catches every single wrong digit and every swap of two neighbours.
import { fail, ok, type Result } from "../result.ts";

/** Damm's quasigroup of order 10: the row is the digit carried so far, the column the digit that comes. */
const QUASIGROUP = [
  "0317598642",
  "7092154863",
  "4206871359",
  "1750983426",
  "6123045978",
  "3674209581",
  "5869720134",
  "8945362017",
  "9438617205",
  "2581436790",
] as const;

/** The largest card number that can be printed and typed. */
export const MOST_CARD_NUMBER = 999_999_999;

/** The check digit of a row of digits; a row that ends with its own check digit gives 0. */
export function checkDigit(digits: string): number {
  let carried = 0;
  for (const digit of digits) carried = Number(QUASIGROUP[carried]?.[Number(digit)]);
  return carried;
}

/** A card number as it is printed: 1042 is "1042-9". 1 ≤ `number` ≤ 999999999. */
export const printedNumber = (number: number): string => `${number}-${checkDigit(String(number))}`;

/**
 * The card number in what somebody typed, check digit included: "1042-9", "1042 9" or "10429". Says what is wrong
 * with anything else; of a wrong number it never says which digit would be right, since the slip may be anywhere.
 */
export function parseCardNumber(typed: string): Result<number, string> {
  const [, digits, check] = /^\s*0*(\d{1,9})\s*[-‐‑–−]?\s*(\d)\s*$/.exec(typed) ?? [];
  if (digits === undefined || check === undefined)
    return fail(`a card number is up to nine digits and a check digit, such as ${printedNumber(1042)}, not “${typed}”`);
  const number = Number(digits);
  if (number < 1) return fail(`card numbers begin at 1, so “${typed}” is none`);
  if (checkDigit(digits) !== Number(check))
    return fail(`“${typed.trim()}” is no card number: the last digit does not agree with the others. Look again.`);
  return ok(number);
}
