// What the wording of a fact must fulfil besides having words at all; the same for pages, lists and the server.
import { LONGEST_FORMULA } from "../text/formula-limits.ts";
import type { FactContent, PictureLabel, Region } from "./fact.ts";
import { parseStatement } from "./gaps.ts";

/** The most parts that a fact can have: items of a list, labels of a picture. */
export const MOST_PARTS = 200;

/** What is wrong with a fact: words that go on from "The list cannot be used:", and where it names a place. */
export interface ContentProblem {
  readonly reason: string;
  /** 1-based position in a statement (UTF-16 code unit). */
  readonly at: number | null;
}

/** Why a fact cannot be asked as it is worded; null if it can. Empty texts are found too, whichever they are. */
export function contentProblem(content: FactContent): ContentProblem | null {
  const empty = emptyField(content);
  if (empty !== null) return problem(`the ${empty} is still empty`);
  switch (content.kind) {
    case "pair":
    case "picture":
    case "sound":
      return null;
    case "statement": {
      const parsed = parseStatement(content.statement);
      return parsed.ok ? null : parsed.error;
    }
    case "list":
      return listProblem(content.items);
    case "formula":
      return content.formula.length > LONGEST_FORMULA
        ? problem(`the formula has more than ${LONGEST_FORMULA.toLocaleString("en-GB")} characters`)
        : null;
    case "spelling":
      return content.clue.trim() === "" && content.sound === null
        ? problem("there is neither a clue nor a sound to ask for the word with")
        : null;
    case "labelled":
      return labelsProblem(content.labels);
  }
}

const problem = (reason: string): ContentProblem => ({ reason, at: null });

/** The first text that is needed and empty. */
function emptyField(content: FactContent): string | null {
  const fields = Object.entries(neededTexts(content));
  return fields.find(([, text]) => text.trim() === "")?.[0] ?? null;
}

function neededTexts(content: FactContent): Readonly<Record<string, string>> {
  switch (content.kind) {
    case "pair":
      return { prompt: content.prompt, answer: content.answer };
    case "statement":
      return { statement: content.statement };
    case "list":
      return { title: content.title };
    case "formula":
      return { name: content.name, formula: content.formula };
    case "spelling":
      return { word: content.word };
    case "picture":
    case "sound":
      return { name: content.name };
    case "labelled":
      return {};
  }
}

function listProblem(items: readonly string[]): ContentProblem | null {
  if (items.length < 2) return problem("a list needs at least two items");
  if (items.length > MOST_PARTS) return problem(`a list has at most ${MOST_PARTS} items: make several of it`);
  const empty = items.findIndex((item) => item.trim() === "");
  if (empty >= 0) return problem(`item ${empty + 1} is empty`);
  const broken = items.findIndex((item) => item.includes("\n"));
  return broken >= 0 ? problem(`item ${broken + 1} has more than one line`) : null;
}

function labelsProblem(labels: readonly PictureLabel[]): ContentProblem | null {
  if (labels.length === 0) return problem("the picture has no label yet");
  if (labels.length > MOST_PARTS) return problem(`a picture has at most ${MOST_PARTS} labels: make several of it`);
  const nameless = labels.findIndex(({ name }) => name.trim() === "");
  if (nameless >= 0) return problem(`label ${nameless + 1} has no name`);
  const broken = labels.findIndex(({ name }) => name.includes("\n"));
  if (broken >= 0) return problem(`the name of label ${broken + 1} has more than one line`);
  const outside = labels.findIndex((label) => !isRegion(label));
  return outside >= 0 ? problem(`the region of label ${outside + 1} does not lie inside the picture`) : null;
}

/** Whether a rectangle has an area and lies inside the picture; room for the last digit of a share is left. */
export const isRegion = ({ x, y, width, height }: Region): boolean =>
  x >= 0 && y >= 0 && width > 0 && height > 0 && x + width <= 1 + ROUNDING && y + height <= 1 + ROUNDING;

/** Shares are often written with three or more digits; two of them added may pass 1 by the last one. */
const ROUNDING = 1e-3;
