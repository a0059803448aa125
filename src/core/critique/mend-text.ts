// Damage that text takes on its way from program to program, and its repair where that is certain.
import { readAgain } from "./misread.ts";
import { unmixLetters } from "./mixed-letters.ts";
import { decodeEntities, dropTags, MEANINGFUL_TAG } from "./web-signs.ts";

/** What is wrong with a text, in words, and the text without it. */
export interface Mended {
  readonly text: string;
  readonly damage: readonly string[];
}

interface Repair {
  readonly damage: string;
  readonly mend: (text: string, language: string) => string;
}

const TAGS = "it holds tags of a web page";

const REPAIRS: readonly Repair[] = [
  { damage: "letters were read in the wrong encoding", mend: readAgain },
  { damage: "it holds signs of a web page, such as &amp;", mend: decodeEntities },
  { damage: TAGS, mend: dropTags },
  { damage: "letters of two alphabets are mixed in one word", mend: unmixLetters },
  { damage: "an accent stands for an apostrophe", mend: (text) => text.replace(/(?<=\p{L})[´`](?=\p{L})/gu, "’") },
  { damage: "letters and their accents are not joined (NFC)", mend: (text) => text.normalize("NFC") },
  { damage: "it holds signs that cannot be seen", mend: dropInvisible },
  { damage: "a blank stands before a sign or twice", mend: tidyBlanks },
];

/** Letters that became question marks or boxes; three question marks and no more may be a blank or a cry. */
const LOST = /\ufffd|□|(?<=\p{L})\?+(?=\p{Ll})|(?<![^\s])\?{4,}(?![^\s])/u;
const ADDRESS = /\w+:\/\/\S+/gu;

/** The text mended, and what was wrong. `language` by its ISO 639-1 code; empty if it is not known. */
export function mendText(text: string, language: string): Mended {
  const damage: string[] = [];
  let mended = text;
  for (const repair of REPAIRS) {
    const next = repair.mend(mended, language);
    if (next !== mended) damage.push(repair.damage);
    mended = next;
  }
  if (MEANINGFUL_TAG.test(mended) && !damage.includes(TAGS)) damage.push(TAGS);
  if (LOST.test(text.replace(ADDRESS, ""))) damage.push("letters are lost");
  return { text: mended, damage };
}

/** Marks that set the direction of writing stay, as far as they are in order; Thai and its neighbours may be divided by U+200B. */
function dropInvisible(text: string): string {
  const seen = text.replace(/[\u2060\ufeff\u00ad\u202d\u202e]/gu, "");
  return /[\p{Script=Thai}\p{Script=Lao}\p{Script=Khmer}\p{Script=Myanmar}]/u.test(seen)
    ? seen
    : seen.replace(/\u200b/gu, "");
}

/** French puts a blank before ; : ! ? and inside « ». */
function tidyBlanks(text: string, language: string): string {
  const once = text
    .replace(/(?<=\S)[ \u00a0]{2,}(?=\S)/gu, " ")
    .replace(/(?<=[\p{L})\]”]) +(?=[,.](?:\s|$))|(?<=\p{N}) +(?=,(?:\s|$))/gu, "");
  if (language === "fr" || language === "") return once;
  return once.replace(/(?<=[\p{L}\p{N})\]”]) +(?=[;:!?](?:\s|$))/gu, "");
}
