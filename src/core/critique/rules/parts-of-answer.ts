// An answer taken apart at the signs that stand between things that are listed.
import { runsOn, wordsOf } from "../../text/words-of.ts";

/** "and", "or" before the last of several, by language: English, German, French, Spanish, Italian. */
const LAST = /\s(?:and|or|und|oder|et|ou|y|e|o|u|ed)\s/iu;

/** Signs that divide a list, the strongest first. A comma or point between digits belongs to a number. */
const BETWEEN: readonly RegExp[] = [
  /\s*\n\s*/u,
  /\s*[;；؛]\s*/u,
  /\s*[、،]\s*|\s*[,，](?!\d)\s*|(?<!\d)[,，]\s*/u,
  /\s+[/|·•]\s+/u,
];

/** A bullet or number before an item. */
const MARK = /^\s*(?:[-–—*•·]|\(?\d{1,3}[.)])\s+/u;

/** The items of an answer that is a list; the answer alone if it is none. */
export function listedParts(answer: string): readonly string[] {
  for (const between of BETWEEN) {
    const parts = answer.split(between).flatMap((part, i, all) => (i === all.length - 1 ? part.split(LAST) : [part]));
    const items = parts.map((part) =>
      part
        .replace(MARK, "")
        .replace(/^(?:and|or|und|oder|et|ou|y|o)\s/iu, "")
        .trim(),
    );
    const filled = items.filter((item) => item !== "");
    if (filled.length > 1 && between.test(answer)) return filled;
  }
  return [answer.trim()];
}

/** Whether an item is short enough to be one of a list and no clause of a sentence. */
export const isItem = (item: string): boolean =>
  runsOn(item) ? [...item].length <= 10 : wordsOf(item).length <= 4 && !/[.!?]\s/u.test(item);
