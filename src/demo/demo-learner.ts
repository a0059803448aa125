// The learner of the demo box: forgets, hesitates and mixes things up, and does so the same way every time.
import { type Card, type CardId, sideText } from "../core/cards/cards.ts";
import type { Answer, Pass } from "../core/log/entry.ts";
import { uniform } from "../core/random.ts";

/** A card that is being asked, and what makes it easy or hard today. */
export interface Question {
  readonly card: CardId;
  readonly pass: Pass;
  /** Names this asking among all others of the history. */
  readonly key: string;
  readonly day: number;
  /** Where the card lies; 0 for a new card. */
  readonly compartment: number;
  /** Box days since it was last asked. */
  readonly wait: number;
}

/** What the learner did, in seconds from prompt to outcome. */
export interface Reply {
  readonly answer: Answer;
  readonly seconds: number;
}

/** Answers a question; equal questions get equal replies. */
export type Learner = (question: Question) => Reply;

/** Places in the stock whose cards the learner keeps losing; early ones, so that there is a history to see. */
const STUBBORN_PLACES = [3, 17, 31, 46, 62, 81];
/** Abbreviations that are easily taken for one another; the two pairs that come up first are. */
const ALIKE = "Crv Crt, Hya Hyi, Sgr Sge, PsA Psc, CrA CrB, Lep Lup, Vel Vul, Col Com, Cap Car, Tri TrA".split(", ");
const CONFUSED_PAIRS = 2;

/**
 * Log-odds of recall: a card of middling difficulty that lies in compartment 1 is recalled about nine
 * times in ten; the odds fall as a power of the wait and rise with each compartment gained.
 */
const ODDS = { base: 2.75, perCompartment: 0.22, perLogWait: 0.5, stubborn: 2.3, confused: 1.7, spread: 0.7 } as const;
const ODDS_OF_NEW = { introduction: 1.2, second: 2 } as const;
const SECONDS = { median: 6, least: 3, most: 25, spread: 0.45, missed: 1.6 } as const;

/** A learner for the cards of a stock, given in the order in which they will be introduced. */
export function createLearner(stock: readonly Card[], seed: string): Learner {
  const stubborn = new Set(STUBBORN_PLACES.map((place) => stock[place]?.id));
  const confused = confusedPairs(stock);
  return (question) => {
    const { card, key, day, pass } = question;
    const pair = confused.get(card);
    const own = stubborn.has(card) ? ODDS.stubborn : ODDS.spread * normal(seed, `hard/${card}`);
    const trouble = pair ? ODDS.confused : own;
    // Two cards that are taken for one another go wrong together: they share their luck of the day.
    const luck = uniform(seed, pair && pass === "visit" ? `${pair}/${day}` : `luck/${key}`);
    const answer = luck < 1 / (1 + Math.exp(-oddsOf(question, trouble))) ? "recalled" : "missed";
    return { answer, seconds: secondsFor(answer, trouble, normal(seed, `time/${key}`)) };
  };
}

/** Log-odds of recall for a card that gives this much trouble. */
function oddsOf({ pass, compartment, wait }: Question, trouble: number): number {
  if (pass !== "visit") return ODDS_OF_NEW[pass] - trouble / 2;
  return ODDS.base + ODDS.perCompartment * (compartment - 1) - ODDS.perLogWait * Math.log(wait) - trouble;
}

/** Log-normal, kept within limits, to a tenth; `chance` is a standard normal number. */
function secondsFor(answer: Answer, trouble: number, chance: number): number {
  const slower = (answer === "missed" ? SECONDS.missed : 1) * Math.exp(SECONDS.spread * chance + trouble / 8);
  const seconds = Math.min(SECONDS.most, Math.max(SECONDS.least, SECONDS.median * slower));
  return Math.round(seconds * 10) / 10;
}

/** The cards of the pairs that both come up first, each with the name of its pair. */
function confusedPairs(stock: readonly Card[]): ReadonlyMap<CardId, string> {
  const placeOf = new Map(stock.map((card, place) => [sideText(card.prompt), place]));
  const placesOf = (pair: string): readonly number[] =>
    pair.split(" ").map((prompt) => placeOf.get(prompt) ?? Number.POSITIVE_INFINITY);
  const lastPlace = (pair: string): number => Math.max(...placesOf(pair));
  const first = [...ALIKE].sort((a, b) => lastPlace(a) - lastPlace(b)).slice(0, CONFUSED_PAIRS);
  const cards = first.flatMap((pair) =>
    placesOf(pair).flatMap((place) => (stock[place] ? [[stock[place].id, pair] as const] : [])),
  );
  return new Map(cards);
}

/** A standard normal number that belongs to a key (Box and Muller 1958). */
function normal(seed: string, key: string): number {
  const radius = Math.sqrt(-2 * Math.log(1 - uniform(seed, `${key}/r`)));
  return radius * Math.cos(2 * Math.PI * uniform(seed, `${key}/a`));
}
