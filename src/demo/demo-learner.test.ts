import { describe, expect, it } from "vitest";
import { type Card, cardsOf } from "../core/cards/cards.ts";
import { type Fact, NO_EXTRAS } from "../core/facts/fact.ts";
import { createLearner, type Question } from "./demo-learner.ts";

const pairFact = (i: number, prompt: string): Fact => ({
  ...{ kind: "pair", prompt, answer: `answer ${i}`, ...NO_EXTRAS },
  ...{ id: `f${i}`, subject: "s", angles: ["forward"] },
});

const PROMPTS = ["Crv", ...Array.from({ length: 60 }, (_, i) => `prompt ${i}`), "Crt"];
const stock: readonly Card[] = PROMPTS.map((prompt, i) => pairFact(i, prompt)).flatMap(cardsOf);
const learner = createLearner(stock, "seed");
const cardAt = (place: number): string => stock[place]?.id ?? "";

const ask = (card: string, day: number, change: Partial<Question> = {}) =>
  learner({ card, pass: "visit", key: `${card}/${day}`, day, compartment: 1, wait: 1, ...change });

function share(card: string, change: Partial<Question> = {}): number {
  const days = Array.from({ length: 400 }, (_, day) => ask(card, day, change));
  return days.filter(({ answer }) => answer === "recalled").length / days.length;
}

/** Three standard errors of a share of 400. */
const LUCK = 0.075;

describe("the demo's learner", () => {
  it("forgets more after a longer wait and less in a higher compartment", () => {
    expect(share(cardAt(10), { wait: 60 })).toBeLessThan(share(cardAt(10)) - LUCK);
    expect(share(cardAt(10), { wait: 60, compartment: 7 })).toBeGreaterThan(share(cardAt(10), { wait: 60 }) + LUCK);
  });

  it("loses a stubborn card far more often than others", () => {
    const others = [5, 6, 7, 8, 9, 10, 11, 12].map((place) => share(cardAt(place)));
    expect(share(cardAt(3))).toBeLessThan(others.reduce((sum, one) => sum + one) / others.length - LUCK);
  });

  it("confuses two cards that look alike on the same days", () => {
    const last = stock.length - 1;
    const days = Array.from({ length: 100 }, (_, day) => [ask(cardAt(0), day).answer, ask(cardAt(last), day).answer]);
    expect(days.every(([one, other]) => one === other)).toBe(true);
    expect(days.some(([one]) => one === "missed")).toBe(true);
  });

  it("takes between 3 and 25 seconds, longer over what is missed", () => {
    const replies = stock.flatMap(({ id }) => [1, 2, 3, 4, 5, 6, 7, 8].map((day) => ask(id, day)));
    expect(replies.every(({ seconds }) => seconds >= 3 && seconds <= 25)).toBe(true);
    const mean = (answer: string): number => {
      const own = replies.filter((reply) => reply.answer === answer);
      return own.reduce((sum, { seconds }) => sum + seconds, 0) / own.length;
    };
    expect(mean("missed")).toBeGreaterThan(mean("recalled"));
  });

  it("answers the same question in the same way", () => {
    expect(ask(cardAt(20), 4)).toEqual(ask(cardAt(20), 4));
  });
});
