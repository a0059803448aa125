// Numbers, dates and accents with nothing beside them that memory could hold on to.
import type { Fact } from "../../facts/fact.ts";
import { type Asked, hasHold } from "../asked.ts";
import type { Remark } from "../note.ts";
import { isDate } from "./dates.ts";

const ABOUT =
  "(?:(?:ca?\\.|about|around|nearly|almost|some|in|im|etwa|rund|fast|knapp|environ|vers|presque|circa|quasi|unos|casi|около|почти|в)\\s+|[约約]|[~≈±<>≤≥$€£]\\s*)?";
const DIGITS = "[+\\-−–]?\\s*\\p{Nd}[\\p{Nd}\\s.,:'’/·×^⁺⁻⁰¹²³⁴-⁹–−-]*";
/** Names of units that do not look like one: longer than three letters, or with a capital at the beginning. */
const NAMED_UNITS =
  "[kM]pc|Jy|Hz|Pa|Ma|Ga|Gyr|Myr|Mio|Mrd|Chr|Std|percent|Prozent|Grad|Jahren?|Tagen?|Wochen?|Monaten?|Stunden?|Minuten?|Sekunden?|Metern?|Kilometern?|Lichtjahren?|Millionen|Milliarden|Sternen?|Monden?|Planeten|Sternbilder";
/** One to three letters, but not as in 61 Cyg; or a word without a capital, as in 79 moons; or of a script without capitals. */
const UNIT = `(?:e[+-]?\\d+|[%‰′″]|[°º]\\s?[CFK]?|(?:${NAMED_UNITS})|(?!\\p{Lu}\\p{Ll}{1,2}(?!\\p{L}))\\p{L}{1,3}(?:\\/\\p{L}{1,3})?[²³]?|\\p{Ll}[\\p{Ll}-]+|[\\p{Lo}\\p{M}]+)(?!\\p{L})\\.?`;
const NUMBER = new RegExp(`^${ABOUT}${DIGITS}(?:\\s*${UNIT}){0,3}$`, "u");
/** Times and angles in parts: 18h 36m 56s, +38° 47′. */
const IN_PARTS =
  /^[+\-−–]?\s*(?:\p{Nd}+(?:[.,]\p{Nd}+)?\s*(?:h|m|s|min|sec|sek|std|d|°|º|′|″|'|")\.?\s*){2,}$|^\p{Nd}{1,2}\s*h\s*\p{Nd}{1,2}$/iu;

/** What is longer holds more than a number, a date or a time, in UTF-16 code units. */
const LONGEST_NUMBER = 100;

/** `bare-number`: a number or a date, or a word spelt with accents, with neither story nor picture nor note. */
export function bareNumber(fact: Fact, asked: readonly Asked[]): readonly Remark[] {
  if (hasHold(fact)) return [];
  return asked.flatMap(({ angle, answer }): readonly Remark[] => {
    const accents =
      fact.kind === "spelling" && fact.accents === "count" && /\p{Script=Latin}\p{M}/u.test(fact.word.normalize("NFD"));
    if (angle === "reverse" || fact.kind === "formula" || /^position-/u.test(angle)) return [];
    if (!accents && !isNumber(answer)) return [];
    const what = accents ? "The word has accents" : "The answer is a number";
    const message = `${what}, and nothing stands beside it. Add a story or a picture in which it occurs.`;
    return [{ rule: "bare-number", angle, message, about: answer, fix: null }];
  });
}

/** A single digit is a handful of things and can be pictured, unless it belongs to a date. */
function isNumber(answer: string): boolean {
  if (answer.length > LONGEST_NUMBER) return false;
  const digits = answer.match(/\p{Nd}/gu)?.length ?? 0;
  if (digits === 0) return false;
  if (isDate(answer)) return digits > 1 || /\p{L}/u.test(answer);
  return digits > 1 && (NUMBER.test(answer) || IN_PARTS.test(answer));
}
