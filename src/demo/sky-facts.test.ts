import { describe, expect, it } from "vitest";
import { cardsOf, sideText } from "../core/cards/cards.ts";
import { contentKey } from "../core/facts/content-key.ts";
import type { Fact } from "../core/facts/fact.ts";
import { gapTexts } from "../core/facts/gaps.ts";
import { constellationOf, FIGURES, NAMED_STARS } from "./sky/sky-tables.ts";
import { demoDrawings, demoSounds, skyFacts } from "./sky-facts.ts";
import { ABBREVIATION_STORIES, FIGURE_STORIES, STAR_STORIES } from "./sky-stories.ts";

const drawings = demoDrawings();
const pictures = new Map(drawings.map(({ name }, i) => [name, i.toString(16).padStart(64, "0")]));
const sounds = new Map(demoSounds().map(({ name }, i) => [name, (1_000 + i).toString(16).padStart(64, "0")]));
const facts = skyFacts({ pictures, sounds });
const cards = facts.flatMap(({ content, angles }, i) =>
  cardsOf({ ...content, id: `f${i}`, subject: "s", angles } as Fact),
);

describe("the night sky", () => {
  it("holds two facts for each of 88 constellations, forty stars, the planets and more than forty pictures", () => {
    const tagged = (tag: string): number => facts.filter(({ content }) => content.tags.includes(tag)).length;
    expect(tagged("abbreviation")).toBe(88);
    expect(tagged("genitive")).toBe(88);
    expect(tagged("star")).toBe(40 + 2);
    expect(tagged("planet")).toBe(12);
    expect(tagged("figure")).toBe(FIGURES.length);
    expect(FIGURES.length).toBeGreaterThan(40);
  });

  it("never states the same thing twice", () => {
    expect(new Set(facts.map(({ content }) => contentKey(content))).size).toBe(facts.length);
  });

  it("never asks the same question for two different answers", () => {
    const answers = new Map<string, string>();
    for (const { prompt, answer, id } of cards) {
      const question = JSON.stringify([sideText(prompt), prompt.picture, prompt.sound, prompt.cover]);
      expect(question, `${id} repeats a prompt`).not.toSatisfy((one: string) => answers.has(one));
      answers.set(question, `${sideText(answer)}\u001f${answer.picture ?? ""}`);
    }
    expect(answers.size).toBe(cards.length);
  });

  it("never asks a card whose answer is its own prompt", () => {
    for (const { prompt, answer } of cards) {
      expect([sideText(prompt), prompt.picture, prompt.cover]).not.toEqual([
        sideText(answer),
        answer.picture,
        answer.cover,
      ]);
    }
  });

  it("asks every fact from an angle that its wording allows", () => {
    for (const { content, angles } of facts) {
      expect(angles.length).toBeGreaterThan(0);
      const made = cardsOf({ ...content, id: "f", subject: "s", angles } as Fact);
      expect(made.map((card) => card.angle)).toEqual(angles);
    }
  });

  it("names a source for every fact, and only stories that belong to something", () => {
    for (const { content } of facts) expect(content.source).not.toBe("");
    const figures = new Set(FIGURES.map(({ constellation }) => constellation));
    expect(Object.keys(FIGURE_STORIES).filter((abbreviation) => !figures.has(abbreviation))).toEqual([]);
    expect(Object.keys(ABBREVIATION_STORIES).map((one) => constellationOf(one).abbreviation)).toEqual(
      Object.keys(ABBREVIATION_STORIES),
    );
    const told = facts.filter(({ content }) => content.tags.includes("star") && content.story !== "");
    expect(told).toHaveLength(Object.keys(STAR_STORIES).length);
  });

  it("gives each star the letter and the magnitude of the catalogue", () => {
    for (const { content } of facts) {
      if (content.kind !== "statement" || !content.tags.includes("star")) continue;
      const [name, letter, constellation] = gapTexts(content.statement);
      const star = NAMED_STARS.find((one) => one.name === name);
      expect(letter).toBe(star?.letter);
      expect(constellation).toBe(constellationOf(star?.constellation ?? "").name);
      expect(content.note).toContain(`Magnitude ${String(star?.magnitude).replace("-", "−")} `);
      expect(content.note.includes("brightest")).toBe(star?.brightest);
    }
  });

  it("uses every drawing once as a picture to be named", () => {
    const shown = facts.filter(({ content }) => content.kind === "picture").map(({ content }) => content.picture);
    expect([...shown].sort()).toEqual([...pictures.values()].sort());
  });

  it("cannot be made without its pictures and sounds", () => {
    expect(() => skyFacts({ pictures: new Map(), sounds })).toThrow(RangeError);
    expect(() => skyFacts({ pictures, sounds: new Map() })).toThrow(RangeError);
  });
});
