// A fact as the cells of a row: the way back from `read-content.ts`.
import type { Column } from "../app/views.ts";
import type { Fact, FactContent, PictureHash, PictureLabel, SoundHash } from "../core/facts/fact.ts";
import { anglesCell } from "./angle-cells.ts";

type Cells = Partial<Record<Column, string>>;

/** A fact as it is written; without angles it is asked as a new one would be. */
export type WrittenFact = FactContent & Partial<Pick<Fact, "angles">>;

/** The cells of a fact; those left out are empty. `fileName` names the file of a picture or sound, by its hash. */
export const factCells = (fact: WrittenFact, fileName: (hash: PictureHash | SoundHash) => string): Cells => ({
  ...statingCells(fact),
  note: fact.note,
  source: fact.source,
  story: fact.story,
  why: fact.why,
  tags: fact.tags.join("; "),
  language: fact.language,
  picture: fact.picture === null ? "" : fileName(fact.picture),
  "picture description": fact.pictureAlt,
  "picture source": fact.pictureSource,
  "picture licence": fact.pictureLicence,
  sound: fact.sound === null ? "" : fileName(fact.sound),
  angles: fact.angles ? anglesCell(fact, fact.angles) : "",
});

/** The kind is written where the other cells do not tell it. */
function statingCells(fact: FactContent): Cells {
  switch (fact.kind) {
    case "pair":
      return { prompt: fact.prompt, answer: fact.answer };
    case "statement":
      return { statement: fact.statement };
    case "picture":
      return { answer: fact.name };
    case "list":
      return { kind: fact.kind, prompt: fact.title, list: fact.items.join("\n") };
    case "formula":
      return { kind: fact.kind, prompt: fact.name, formula: fact.formula };
    case "spelling":
      return { kind: fact.kind, prompt: fact.clue, spelling: fact.word, ...ruleCells(fact) };
    case "sound":
      return { kind: fact.kind, answer: fact.name };
    case "labelled":
      return { kind: fact.kind, regions: fact.labels.map(regionLine).join("\n") };
  }
}

const ruleCells = (fact: Extract<FactContent, { kind: "spelling" }>): Cells => ({
  accents: fact.accents === "count" ? "" : fact.accents,
  capitals: fact.letterCase === "count" ? "" : fact.letterCase,
});

const regionLine = ({ x, y, width, height, name }: PictureLabel): string => `${x} ${y} ${width} ${height} ${name}`;
