// What a row of a list states: which kind of fact its cells make, and what is missing or too much.
import type { Column } from "../app/views.ts";
import { contentProblem } from "../core/facts/check-content.ts";
import type { FactContent, FactExtras, PictureLabel } from "../core/facts/fact.ts";
import { freshGaps } from "../core/facts/gaps.ts";
import { freshNumbers } from "../core/facts/list-numbers.ts";
import { fail, ok, type Result } from "../core/result.ts";

/** Why a row is no fact, in the column where that can be mended; `inStatement` if there is a place in the statement. */
export interface ContentRefusal {
  readonly field: Column | null;
  readonly reason: string;
  readonly inStatement: boolean;
}

type Kind = FactContent["kind"];
type Cells = Readonly<Record<Column, string>>;
type Read = Result<FactContent, ContentRefusal>;

/** The columns that state a fact of each kind; where a name may stand in either, both. */
const OWN_COLUMNS: Readonly<Record<Kind, readonly Column[]>> = {
  pair: ["prompt", "answer"],
  statement: ["statement"],
  picture: ["prompt", "answer"],
  list: ["prompt", "list"],
  formula: ["prompt", "answer", "formula"],
  spelling: ["prompt", "spelling", "accents", "capitals"],
  sound: ["prompt", "answer"],
  labelled: ["regions"],
};

/** All columns of which a kind may have one and another not. */
const STATING: readonly Column[] = [...new Set(Object.values(OWN_COLUMNS).flat())];

/** The kind that a cell names, null if it is empty, undefined if it names none. */
export function kindNamed(cell: string): Kind | null | undefined {
  const name = cell.trim().toLowerCase();
  if (name === "") return null;
  return Object.hasOwn(OWN_COLUMNS, name) ? (name as Kind) : undefined;
}

/** The fact that the cells of a row make, together with what every fact may carry. */
export function readContent(cells: Cells, extras: FactExtras): Read {
  const named = kindNamed(cells.kind);
  if (named === undefined)
    return refuse("kind", `“${cells.kind}” is not a kind of fact: use ${Object.keys(OWN_COLUMNS).join(", ")}`);
  const kind = named ?? kindOf(cells);
  if (kind === null) return refuseMissing(cells);
  const other = STATING.find((column) => cells[column] !== "" && !OWN_COLUMNS[kind].includes(column));
  if (other !== undefined) return refuseOther(kind, other);
  const content = readKind(kind, cells, extras);
  return content.ok ? check(content.value) : content;
}

const refuse = (field: Column | null, reason: string, inStatement = false): Result<never, ContentRefusal> =>
  fail({ field, reason, inStatement });

/** The kind of a row that does not name it. */
function kindOf(cells: Cells): Kind | null {
  if (cells.statement !== "") return "statement";
  if (cells.list !== "") return "list";
  if (cells.formula !== "") return "formula";
  if (cells.spelling !== "") return "spelling";
  if (cells.regions !== "") return "labelled";
  if (cells.prompt !== "" && cells.answer !== "") return "pair";
  if (cells.prompt === "" && cells.answer === "") return null;
  if (cells.picture !== "") return "picture";
  return cells.sound !== "" ? "sound" : null;
}

function refuseMissing({ prompt, answer, picture, sound }: Cells): Read {
  if (prompt !== "") return refuse("answer", "the answer is missing: write the answer that belongs to this prompt");
  if (answer !== "") return refuse("prompt", "the prompt is missing: write the prompt that asks for this answer");
  if (picture !== "") return refuse("answer", "the picture has no name: write what it shows as the answer");
  if (sound !== "") return refuse("answer", "the sound has no name: write what it is as the answer");
  return refuse(
    null,
    "there is nothing to learn in this row: write a prompt and an answer, or a statement with a [gap]",
  );
}

function refuseOther(kind: Kind, other: Column): Read {
  const reason =
    kind === "statement"
      ? `a row is either a statement or a prompt with an answer: clear the ${other}, or the statement`
      : `a fact of the kind “${kind}” has no ${other}: clear that cell, or use a row of its own`;
  return refuse(other, reason);
}

function readKind(kind: Kind, cells: Cells, extras: FactExtras): Read {
  const { prompt, answer, statement, formula, spelling, regions } = cells;
  switch (kind) {
    case "pair":
      return ok({ ...extras, kind, prompt, answer });
    case "statement":
      return ok({ ...extras, kind, statement, gaps: freshGaps(statement) });
    case "list": {
      const items = linesOf(cells.list);
      return ok({ ...extras, kind, title: prompt, items, numbers: freshNumbers(items) });
    }
    case "spelling":
      return readSpelling(cells, { ...extras, kind, clue: prompt, word: spelling });
    case "labelled":
      return readLabels(regions, extras);
  }
  if (prompt !== "" && answer !== "")
    return refuse("answer", `a fact of the kind “${kind}” has one name: clear the prompt or the answer`);
  const name = prompt || answer;
  switch (kind) {
    case "formula":
      return ok({ ...extras, kind, name, formula });
    case "picture":
      return needed("picture", extras.picture, (picture) => ({ ...extras, kind, name, picture }));
    case "sound":
      return needed("sound", extras.sound, (sound) => ({ ...extras, kind, name, sound }));
  }
}

/** A file that the kind cannot do without; one that was named and not found has been reported already. */
const needed = (field: "picture" | "sound", hash: string | null, make: (hash: string) => FactContent): Read =>
  hash === null ? refuse(field, `there is no ${field} here that could be asked`) : ok(make(hash));

function readSpelling(
  cells: Cells,
  spelling: Omit<Extract<FactContent, { kind: "spelling" }>, "accents" | "letterCase">,
): Read {
  const ruled = (["accents", "capitals"] as const).map((column) => ({ column, rule: ruleIn(cells[column]) }));
  const odd = ruled.find(({ rule }) => rule === null);
  if (odd) return refuse(odd.column, `write “count” or “ignore”, or leave the cell empty, which means “count”`);
  const [accents, letterCase] = ruled.map(({ rule }) => rule ?? "count");
  return ok({ ...spelling, accents: accents ?? "count", letterCase: letterCase ?? "count" });
}

function ruleIn(cell: string): "count" | "ignore" | null {
  const word = cell.toLowerCase();
  if (word === "" || word === "count") return "count";
  return word === "ignore" ? "ignore" : null;
}

function readLabels(regions: string, extras: FactExtras): Read {
  const labels: PictureLabel[] = [];
  for (const [i, line] of linesOf(regions).entries()) {
    const [, x, y, width, height, name] = /^(\S+) (\S+) (\S+) (\S+) (.+)$/u.exec(line) ?? [];
    const numbers = [x, y, width, height].map(Number);
    if (name === undefined || numbers.some(Number.isNaN))
      return refuse(
        "regions",
        `line ${i + 1} of the regions is not four numbers and a name, such as 0.1 0.25 0.2 0.1 Vega: left, top, width and height as shares of the picture`,
      );
    const [left, top, wide, high] = numbers as [number, number, number, number];
    labels.push({ number: i + 1, name, x: left, y: top, width: wide, height: high });
  }
  return needed("picture", extras.picture, (picture) => ({ ...extras, kind: "labelled", picture, labels }));
}

const linesOf = (cell: string): readonly string[] =>
  cell
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "");

/** Where what is still wrong with a fact of each kind can be mended. */
const MENDED_IN: Readonly<Record<Kind, Column>> = {
  pair: "answer",
  statement: "statement",
  picture: "answer",
  list: "list",
  formula: "formula",
  spelling: "spelling",
  sound: "answer",
  labelled: "regions",
};

function check(content: FactContent): Read {
  const problem = contentProblem(content);
  if (!problem) return ok(content);
  const noGap = content.kind === "statement" && !/[[\]]/u.test(content.statement);
  const advice =
    content.kind === "statement" && !noGap
      ? ": write [ ] round what is to be asked, and \\[ or \\] where a bracket is only a bracket"
      : "";
  return refuse(MENDED_IN[content.kind], problem.reason + advice, problem.at !== null);
}
