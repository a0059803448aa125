// Reading numbers from the options of a call. Every function throws the call's usage error for what it cannot take.
import type { Call, Option } from "./verb.ts";

/** The whole number that an option gives, from `least` to `most`; undefined if the call does not give it. */
export function wholeNumber(
  call: Call,
  name: string,
  { least, most }: { readonly least: number; readonly most: number },
): number | undefined {
  const text = call.values[name];
  if (typeof text !== "string") return undefined;
  const value = /^\d{1,9}$/.test(text) ? Number(text) : Number.NaN;
  if (!(value >= least && value <= most))
    throw call.usage(`--${name} takes a whole number from ${least} to ${most}, not “${text}”`);
  return value;
}

/** The whole numbers, with commas between, that an option lists; undefined if the call does not give it. */
export function wholeNumbers(call: Call, name: string): readonly number[] | undefined {
  const text = call.values[name];
  if (typeof text !== "string") return undefined;
  return text.split(",").map((part) => {
    if (!/^\s*\d{1,9}\s*$/.test(part))
      throw call.usage(`--${name} takes whole numbers with commas between, not “${text}”`);
    return Number(part);
  });
}

/** The chance of recall where a call says nothing. */
const USUAL_RECALL = 0.9;

/** The option that `recallFrom` reads. */
export const RECALL_OPTION: Option = {
  type: "string",
  about: `chance of recall, one for all or one for each compartment (${USUAL_RECALL})`,
};

/**
 * Chance of recall in compartment 1…`count`, from --recall: one for all or one for each. With `above0` a
 * compartment that is never recalled is refused.
 */
export function recallFrom(call: Call, count: number, { above0 = false } = {}): readonly number[] {
  const text = call.values.recall;
  if (typeof text !== "string") return Array.from({ length: count }, () => USUAL_RECALL);
  const parts = text.split(",").map((part) => part.trim());
  if (parts.length !== 1 && parts.length !== count)
    throw call.usage(`--recall needs one number, or ${count}, one for each compartment, not ${parts.length}`);
  const chances = parts.map((part) => {
    const chance = decimal(part);
    if (!(chance <= 1 && (above0 ? chance > 0 : chance >= 0)))
      throw call.usage(`--recall takes chances ${above0 ? "above 0 and at most 1" : "from 0 to 1"}, not “${part}”`);
    return chance;
  });
  return Array.from({ length: count }, (_, k) => chances[chances.length === 1 ? 0 : k] ?? USUAL_RECALL);
}

/** A number such as 8, 0.9 or .9, without sign or exponent; NaN for anything else. */
export const decimal = (text: string): number => (/^(\d+\.?\d*|\.\d+)$/.test(text) ? Number(text) : Number.NaN);
