// What a card asks and what it wants to hear, as the rules look at it.
import { BLANK, type Card, type CardSide, type CardText, cardFrom, possibleAngles } from "../cards/cards.ts";
import type { Angle, Fact } from "../facts/fact.ts";

/**
 * A card in words, formulae between \( and \) as they are written. The answer is only what is asked for, not the
 * sentence around a gap.
 */
export interface Asked {
  readonly card: Card;
  readonly angle: Angle;
  readonly prompt: string;
  readonly answer: string;
}

/** The cards of a fact in words, of the angles that are chosen. */
export function askedOf(fact: Fact): readonly Asked[] {
  const possible = new Set(possibleAngles(fact));
  return fact.angles
    .filter((angle) => possible.has(angle))
    .map((angle) => {
      const card = cardFrom(fact, angle);
      return { card, angle, ...wordsOfPair(fact, angle, wordsOfCard(card)) };
    });
}

type Words = Pick<Asked, "prompt" | "answer">;

/** The words of a pair are exactly those that were written, so that a place in them is a place in the fact. */
function wordsOfPair(fact: Fact, angle: Angle, otherwise: Words): Words {
  if (fact.kind !== "pair") return otherwise;
  const [prompt, answer] = [fact.prompt.trim(), fact.answer.trim()];
  return angle === "reverse" ? { prompt: answer, answer: prompt } : { prompt, answer };
}

const wordsOfCard = ({ prompt, answer }: Card): Words => ({ prompt: written(prompt.text), answer: answerText(answer) });

function answerText(side: CardSide): string {
  const asked = side.text.filter((run) => run.role === "answer" || (run.role === "formula" && run.asked === true));
  return written(asked.length > 0 ? asked : side.text);
}

const written = (text: readonly CardText[]): string =>
  text
    .map((run) => (run.role === "blank" ? BLANK : run.role === "formula" ? `\\(${run.text}\\)` : run.text))
    .join("")
    .trim();

/** A formula in a line, as it is written. */
const FORMULA = /\\\((?:(?!\\[()]).)*\\\)/gsu;

/** The text with a single letter for each formula, to be measured in words. */
export const withoutFormulae = (text: string): string => text.replace(FORMULA, "x");

/** Whether a fact has something beside its words that memory can hold on to. */
export const hasHold = (fact: Fact): boolean =>
  fact.picture !== null || fact.sound !== null || [fact.story, fact.note, fact.why].some((text) => text.trim() !== "");
