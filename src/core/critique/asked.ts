// What a card asks and what it wants to hear, as the rules look at it.
import { type Card, type CardSide, cardFrom, possibleAngles, sideText } from "../cards/cards.ts";
import type { Angle, Fact } from "../facts/fact.ts";

/** A card in words. The answer is only what is asked for, not the sentence around a gap. */
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
      return { card, angle, prompt: sideText(card.prompt).trim(), answer: answerText(card.answer) };
    });
}

function answerText(side: CardSide): string {
  const asked = side.text.filter((run) => run.role === "answer" || (run.role === "formula" && run.asked === true));
  return (asked.length > 0 ? asked : side.text)
    .map((run) => run.text)
    .join("")
    .trim();
}

/** Whether a fact has something beside its words that memory can hold on to. */
export const hasHold = (fact: Fact): boolean =>
  fact.picture !== null || fact.sound !== null || [fact.story, fact.note, fact.why].some((text) => text.trim() !== "");
