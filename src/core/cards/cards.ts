// From a fact to its cards. A card is one fact from one angle; its identity never depends on wording.
import type { Angle, Fact, FactContent, PictureHash } from "../facts/fact.ts";
import { parseStatement } from "../facts/gaps.ts";

/** Identity of a card: its fact and its angle. */
export type CardId = string;

/** A stretch of text on a card; a `blank` shows where the answer belongs and has no text of its own. */
export interface CardText {
  readonly text: string;
  readonly role: "plain" | "blank" | "answer";
}

/** One side of a card. */
export interface CardSide {
  readonly text: readonly CardText[];
  readonly picture: PictureHash | null;
}

/** A card ready to be shown. Notes, story, source and illustration belong to the answer side only. */
export interface Card {
  readonly id: CardId;
  readonly fact: string;
  readonly angle: Angle;
  readonly prompt: CardSide;
  readonly answer: CardSide;
  readonly note: string;
  readonly story: string;
  readonly source: string;
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

/** Every angle from which a fact of this wording can be asked; the first use of a fact asks them all. */
export function possibleAngles(fact: FactContent): readonly Angle[] {
  switch (fact.kind) {
    case "pair":
      return ["forward", "reverse"];
    case "picture":
      return ["picture-to-name", "name-to-picture"];
    case "statement":
      return fact.gaps.map((n): Angle => `gap-${n}`);
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
  const { prompt, answer } = sides(fact, angle);
  return {
    id: cardId(fact.id, angle),
    fact: fact.id,
    angle,
    prompt,
    answer,
    note: fact.note,
    story: fact.story,
    source: fact.source,
  };
}

const plain = (text: string, picture: PictureHash | null = null): CardSide => ({
  text: text === "" ? [] : [{ text, role: "plain" }],
  picture,
});

function sides(fact: Fact, angle: Angle): { prompt: CardSide; answer: CardSide } {
  switch (fact.kind) {
    case "pair":
      return angle === "reverse"
        ? { prompt: plain(fact.answer), answer: plain(fact.prompt, fact.picture) }
        : { prompt: plain(fact.prompt), answer: plain(fact.answer, fact.picture) };
    case "picture":
      return angle === "name-to-picture"
        ? { prompt: plain(fact.name), answer: plain("", fact.picture) }
        : { prompt: plain("", fact.picture), answer: plain(fact.name) };
    case "statement":
      return gapSides(fact, Number(angle.slice("gap-".length)));
  }
}

function gapSides(
  fact: { readonly statement: string; readonly gaps: readonly number[]; readonly picture: PictureHash | null },
  number: number,
): { prompt: CardSide; answer: CardSide } {
  const parsed = parseStatement(fact.statement);
  const parts = parsed.ok ? parsed.value : [{ text: fact.statement, gap: false }];
  let seen = -1;
  const marked = parts.map((part): CardText => {
    if (part.gap) seen++;
    const asked = part.gap && fact.gaps[seen] === number;
    return { text: part.text, role: asked ? "answer" : "plain" };
  });
  return {
    prompt: {
      text: marked.map((part) => (part.role === "answer" ? { text: "", role: "blank" } : part)),
      picture: null,
    },
    answer: { text: marked, picture: fact.picture },
  };
}
