// The names of a class, as they are pasted or read from a file: one a line.
import { cleanText } from "../facts/clean-text.ts";
import { fail, ok, type Result } from "../result.ts";

/** Most names of one class pack, and characters of one name. */
export const NAME_LIMITS = { names: 200, characters: 80 } as const;

const order = new Intl.Collator("en", { numeric: true });

/** Names in their order. Empty lines are passed over; says what is wrong with a name that is too long, or stands twice. */
export function parseNames(text: string): Result<readonly string[], string> {
  const names = text
    .split(/\r\n|[\r\n\u2028\u2029]/u)
    .map((line) => cleanText(line).replace(/\s+/gu, " ").trim())
    .filter((name) => name !== "");
  const long = names.find((name) => name.length > NAME_LIMITS.characters);
  if (long !== undefined)
    return fail(`“${long.slice(0, 30)}…” is longer than ${NAME_LIMITS.characters} characters: one name a line, please`);
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice !== undefined) return fail(`“${twice}” stands there twice: add something by which the two are told apart`);
  if (names.length > NAME_LIMITS.names)
    return fail(`at most ${NAME_LIMITS.names} names make one class pack, not ${names.length}`);
  return ok(names.toSorted(order.compare));
}
