// From a fact to its cards. A card is one fact from one angle; its identity never depends on wording.
import type {
  Angle,
  Fact,
  FactContent,
  ListContent,
  PictureHash,
  Region,
  SoundHash,
  SpellingRule,
  StatementContent,
} from "../facts/fact.ts";
import { parseStatement } from "../facts/gaps.ts";
import { formulaRuns } from "../text/formula-runs.ts";
import { listFrame } from "./list-frame.ts";

/** Identity of a card: its fact and its angle. */
export type CardId = string;

/**
 * A stretch of text on a card; a `blank` shows where the answer belongs and has no text of its own, a `formula` is TeX
 * without delimiters. `asked` marks a formula that belongs to what is asked, as the role `answer` does words.
 */
export interface CardText {
  readonly text: string;
  readonly role: "plain" | "blank" | "answer" | "formula";
  readonly asked?: true;
}

/** One side of a card. */
export interface CardSide {
  readonly text: readonly CardText[];
  readonly picture: PictureHash | null;
  readonly sound: SoundHash | null;
  /** The region of the picture that is asked: covered on the prompt side, outlined on the answer side. */
  readonly cover: Region | null;
}

/** A card ready to be shown. What the fact carries besides belongs to the answer side only. */
export interface Card {
  readonly id: CardId;
  readonly fact: string;
  readonly angle: Angle;
  readonly prompt: CardSide;
  readonly answer: CardSide;
  readonly note: string;
  readonly story: string;
  readonly source: string;
  readonly why: string;
  /** BCP 47, or empty. */
  readonly language: string;
  /** What the picture shows, for who cannot see it. */
  readonly pictureAlt: string;
  readonly pictureSource: string;
  readonly pictureLicence: string;
  /** How the answer is compared where it is typed; null where it is only said. */
  readonly spelling: SpellingRule | null;
}

/** What a blank looks like where only plain text can be shown. */
export const BLANK = "_____";

/** The identity of a fact's card from one angle. */
export const cardId = (fact: string, angle: Angle): CardId => `${fact}:${angle}`;

/** The fact and the angle that a card's identity names. */
export function parseCardId(id: CardId): { readonly fact: string; readonly angle: Angle } {
  const at = id.lastIndexOf(":");
  return { fact: id.slice(0, at), angle: id.slice(at + 1) as Angle };
}

/** Every angle from which a fact of this wording can be asked. */
export function possibleAngles(fact: FactContent): readonly Angle[] {
  switch (fact.kind) {
    case "pair":
      return ["forward", "reverse"];
    case "picture":
      return ["picture-to-name", "name-to-picture"];
    case "statement":
      return fact.gaps.map((n): Angle => `gap-${n}`);
    case "list":
      return [
        ...fact.numbers.map((n): Angle => `next-${n}`),
        // Nothing stands behind the last item to ask for it with.
        ...fact.numbers.slice(0, -1).map((n): Angle => `previous-${n}`),
        ...fact.numbers.map((n): Angle => `position-${n}`),
      ];
    case "formula":
      return ["name-to-formula", "formula-to-name"];
    case "spelling":
      return ["spelling"];
    case "sound":
      return ["sound-to-name", "name-to-sound"];
    case "labelled":
      return fact.labels.map(({ number }): Angle => `label-${number}`);
  }
}

/** The cards of a fact, one for each chosen angle that its wording allows. */
export function cardsOf(fact: Fact): readonly Card[] {
  const possible = new Set(possibleAngles(fact));
  return fact.angles.filter((angle) => possible.has(angle)).map((angle) => cardFrom(fact, angle));
}

/** The words of a side as one string, blanks drawn as underscores. */
export const sideText = (side: CardSide): string =>
  side.text.map((part) => (part.role === "blank" ? BLANK : part.text)).join("");

/** The card of a fact from one angle, chosen or not. */
export function cardFrom(fact: Fact, angle: Angle): Card {
  const { note, story, source, why, language, pictureAlt, pictureSource, pictureLicence } = fact;
  const extras = { note, story, source, why, language, pictureAlt, pictureSource, pictureLicence };
  const spelling = fact.kind === "spelling" ? { accents: fact.accents, letterCase: fact.letterCase } : null;
  const { prompt, answer } = sides(fact, angle);
  return { id: cardId(fact.id, angle), fact: fact.id, angle, prompt, answer, ...extras, spelling };
}

interface Sides {
  readonly prompt: CardSide;
  readonly answer: CardSide;
}

/** A side on which nothing stands. */
export const EMPTY_SIDE: CardSide = { text: [], picture: null, sound: null, cover: null };

const words = (text: string, more: Partial<CardSide> = {}): CardSide => ({
  ...EMPTY_SIDE,
  text: formulaRuns(text),
  ...more,
});

function sides(fact: Fact, angle: Angle): Sides {
  const { picture, sound } = fact;
  // What illustrates a fact comes with its answer; what is the fact itself is on the side that shows it.
  const shown = { picture, sound };
  switch (fact.kind) {
    case "pair": {
      const [asked, told] = angle === "reverse" ? [fact.answer, fact.prompt] : [fact.prompt, fact.answer];
      return { prompt: words(asked), answer: words(told, shown) };
    }
    case "picture":
      return angle === "name-to-picture"
        ? { prompt: words(fact.name), answer: { ...EMPTY_SIDE, ...shown } }
        : { prompt: { ...EMPTY_SIDE, picture }, answer: words(fact.name, { sound }) };
    case "sound":
      return angle === "name-to-sound"
        ? { prompt: words(fact.name), answer: { ...EMPTY_SIDE, ...shown } }
        : { prompt: { ...EMPTY_SIDE, sound }, answer: words(fact.name, { picture }) };
    case "formula": {
      const formula: CardSide = { ...EMPTY_SIDE, text: [{ text: fact.formula, role: "formula" }] };
      return angle === "formula-to-name"
        ? { prompt: formula, answer: words(fact.name, shown) }
        : { prompt: words(fact.name), answer: { ...formula, ...shown } };
    }
    case "spelling":
      return { prompt: words(fact.clue, { sound }), answer: { ...EMPTY_SIDE, text: plain(fact.word), picture } };
    case "labelled": {
      const label = fact.labels.find(({ number }) => angle === `label-${number}`);
      const cover = label ? { x: label.x, y: label.y, width: label.width, height: label.height } : null;
      return { prompt: { ...EMPTY_SIDE, picture, cover }, answer: words(label?.name ?? "", { ...shown, cover }) };
    }
    case "statement":
      return partSides(gapParts(fact, angle), shown);
    case "list":
      return partSides(listParts(fact, angle), shown);
  }
}

const plain = (text: string): readonly CardText[] => (text === "" ? [] : [{ text, role: "plain" }]);

interface Part {
  readonly text: string;
  readonly asked: boolean;
}

/** A text of which one part is asked: blank on the prompt side, marked on the answer side. */
function partSides(parts: readonly Part[], shown: Pick<CardSide, "picture" | "sound">): Sides {
  const told = ({ text, asked }: Part): readonly CardText[] =>
    formulaRuns(text).map((run): CardText => {
      if (!asked) return run;
      return run.role === "formula" ? { ...run, asked } : { ...run, role: "answer" };
    });
  const asked = (part: Part): readonly CardText[] => (part.asked ? [{ text: "", role: "blank" }] : told(part));
  return {
    prompt: { ...EMPTY_SIDE, text: parts.flatMap(asked) },
    answer: { ...EMPTY_SIDE, text: parts.flatMap(told), ...shown },
  };
}

function gapParts(fact: StatementContent, angle: Angle): readonly Part[] {
  const parsed = parseStatement(fact.statement);
  if (!parsed.ok) return [{ text: fact.statement, asked: false }];
  let seen = -1;
  return parsed.value.map(({ text, gap }) => {
    if (gap) seen++;
    return { text, asked: gap && angle === `gap-${fact.gaps[seen]}` };
  });
}

function listParts({ title, items, numbers }: ListContent, angle: Angle): readonly Part[] {
  const [way, number] = angle.split("-") as ["next" | "previous" | "position", string];
  const at = numbers.indexOf(Number(number));
  if (at < 0) return [{ text: [title, ...items].join("\n"), asked: false }];
  const { before, after } = listFrame(items, at, way);
  return [
    { text: `${title}\n${before}`, asked: false },
    { text: items[at] ?? "", asked: true },
    { text: after, asked: false },
  ];
}
