// An answer taken apart at the signs that stand between things that are listed.
import { runsOn, wordsOf } from "../../text/words-of.ts";

/** "and", "or" before the last of several: English, German, French, Spanish, Italian, Portuguese, Russian; Chinese without blanks. */
const LAST =
  /\s(?:and|or|und|oder|et|ou|y|e|o|u|ed|и|или)\s|(?<=^[\p{Script=Han}]{2,})(?:和|与|與|以及)(?=[\p{Script=Han}]{2,}$)/iu;
const LAST_ALONE = /^(?:and|or|und|oder|et|ou|y|o|e|ed|и|или)\s/iu;

/** Signs that divide a list, the strongest first. A comma or point between digits belongs to a number. */
const BETWEEN: readonly RegExp[] = [
  /(?<!\s)\s*\n\s*/u,
  /(?<!\s)\s*[;；؛]\s*/u,
  /(?<!\s)\s*(?:→|⟶|⇒|->|=>)\s*/u,
  /(?<!\s)\s*(?:、|[,，،](?!\p{Nd}))\s*|(?<!\p{Nd})[,，،]\s*/u,
  /(?<!\s)\s+[/|·•]\s+/u,
];

/** A bullet, number or letter before an item. */
const MARK = /^\s*(?:[-–—*•·]|\(?(?:\d{1,3}|[a-z])[.)])\s+/u;
/** The same in the middle of a line. */
const NUMBERED = /(?:^|\s)\(?(\d{1,2}|[a-z])[.)]\s+/gu;

/** Stretches that are never divided: formulae, brackets and quotations. */
const WHOLE =
  /\\\((?:(?!\\[()]).)*\\\)|\([^()\n]*\)|（[^（）\n]*）|\[[^[\]\n]*\]|“[^“”\n]*”|„[^„“”\n]*[“”]|«[^«»\n]*»|「[^「」\n]*」/gsu;

/** The items of an answer that is a list; the answer alone if it is none. */
export function listedParts(answer: string): readonly string[] {
  const numbered = numberedParts(answer);
  if (numbered.length > 1) return numbered;
  const kept: string[] = [];
  const held = answer.replace(WHOLE, (stretch) => `\ue000${String.fromCharCode(0xe001 + kept.push(stretch) - 1)}`);
  // More stretches than there are private letters for them: no list of items.
  if (kept.length > 0x1000 || /[\ue000-\uf8ff]/u.test(answer)) return [answer.trim()];
  const whole = (part: string): string =>
    part.replace(/\ue000([\ue001-\uf8ff])/gu, (_, letter: string) => kept[letter.charCodeAt(0) - 0xe001] ?? "");
  for (const between of BETWEEN) {
    if (!between.test(held)) continue;
    const parts = held.split(between).flatMap((part, i, all) => (i === all.length - 1 ? part.split(LAST) : [part]));
    const items = parts.map((part) => whole(part.replace(MARK, "").replace(LAST_ALONE, "").trim()));
    const filled = items.filter((item) => item !== "");
    if (filled.length > 1) return filled;
  }
  return [answer.trim()];
}

/** What is numbered 1, 2, 3 or a, b, c within a line, from its beginning on. */
function numberedParts(answer: string): readonly string[] {
  const marks = [...answer.matchAll(NUMBERED)];
  const names = marks.map((mark) => mark[1] ?? "");
  const inOrder = names.every((name, i) => name === `${i + 1}`) || names.every((name, i) => name === "abcdefghij"[i]);
  if (marks[0]?.index !== 0 || !inOrder) return [];
  return marks.map((mark, i) => answer.slice(mark.index + mark[0].length, marks[i + 1]?.index).trim());
}

/** Whether every item has a bullet or number of its own: such a list may have whole sentences for items. */
export const isMarkedList = (answer: string): boolean =>
  numberedParts(answer).length > 1 ||
  answer
    .split("\n")
    .filter((line) => line.trim() !== "")
    .every((line) => MARK.test(line));

/** Whether an item is short enough to be one of a list and no clause of a sentence. */
export const isItem = (item: string): boolean =>
  runsOn(item) ? [...item].length <= 10 : wordsOf(item).length <= 4 && !/[.!?]\s/u.test(item);

/** "a cold, dark, dense cloud": one thing with several properties, by the indefinite article at its beginning. */
export const isDescription = ([first = "", ...others]: readonly string[]): boolean =>
  /^(?:an?|ein|eine[mnrs]?|une?|una|uno|uma)\s/iu.test(first) &&
  others.every((item) => /^\p{Ll}/u.test(item) && !/^(?:an?|the|ein\w*|une?|des|una|uno|uma)\s/iu.test(item));
