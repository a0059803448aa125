import { describe, expect, it } from "vitest";
import { type Angle, type Fact, NO_EXTRAS, type PairContent, type StatementContent } from "../facts/fact.ts";
import { BLANK, cardFrom, cardId, cardsOf, EMPTY_SIDE, parseCardId, possibleAngles, sideText } from "./cards.ts";

const PHOTO = "a".repeat(64);
const extras = { ...NO_EXTRAS, note: "the brightest star of Lyra", source: "IAU" };
const base = { ...extras, id: "f1", subject: "sky" };

const vega: Fact & PairContent = {
  ...base,
  kind: "pair",
  prompt: "Vega",
  answer: "Lyra",
  angles: ["forward", "reverse"],
};
const pleiades: Fact & StatementContent = {
  ...base,
  kind: "statement",
  statement: "The [Pleiades] lie in [Taurus].",
  gaps: [4, 2],
  angles: ["gap-4", "gap-2"],
};
const saturn: Fact = {
  ...base,
  kind: "picture",
  name: "Saturn",
  picture: PHOTO,
  angles: ["picture-to-name", "name-to-picture"],
};

const texts = (fact: Fact, angle: Angle) => {
  const { prompt, answer } = cardFrom(fact, angle);
  return [sideText(prompt), sideText(answer)];
};

describe("the cards of a pair", () => {
  it("ask one thing for the other, both ways", () => {
    expect(texts(vega, "forward")).toEqual(["Vega", "Lyra"]);
    expect(texts(vega, "reverse")).toEqual(["Lyra", "Vega"]);
  });

  it("show an illustration with the answer only", () => {
    for (const { prompt, answer } of cardsOf({ ...vega, picture: PHOTO })) {
      expect(prompt.picture).toBeNull();
      expect(answer.picture).toBe(PHOTO);
    }
  });
});

describe("the cards of a statement", () => {
  it("blank one gap each, by its number, and leave the others readable", () => {
    expect(texts(pleiades, "gap-4")).toEqual([`The ${BLANK} lie in Taurus.`, "The Pleiades lie in Taurus."]);
    expect(texts(pleiades, "gap-2")).toEqual([`The Pleiades lie in ${BLANK}.`, "The Pleiades lie in Taurus."]);
  });

  it("mark the answer inside the whole statement", () => {
    const { answer } = cardFrom(pleiades, "gap-2");
    expect(answer.text.filter((part) => part.role === "answer")).toEqual([{ text: "Taurus", role: "answer" }]);
  });

  it("never hold the hidden words on the prompt side", () => {
    for (const card of cardsOf(pleiades)) {
      const hidden = card.answer.text.find((part) => part.role === "answer")?.text ?? "";
      expect(hidden).not.toBe("");
      expect(card.prompt.text.map((part) => part.text)).not.toContain(hidden);
    }
  });

  it("show the words as they stand if the statement cannot be read any more", () => {
    expect(texts({ ...pleiades, statement: "The [Pleiades" }, "gap-4")).toEqual(["The [Pleiades", "The [Pleiades"]);
  });
});

describe("the cards of a picture", () => {
  it("ask the name of the picture and the picture of the name", () => {
    const [named, drawn] = cardsOf(saturn);
    expect([named?.prompt, named?.answer]).toEqual([
      { ...EMPTY_SIDE, picture: PHOTO },
      { ...EMPTY_SIDE, text: [{ text: "Saturn", role: "plain" }] },
    ]);
    expect([drawn?.prompt.picture, drawn?.answer.picture]).toEqual([null, PHOTO]);
  });
});

describe("the cards of a fact", () => {
  it.each([vega, pleiades, saturn])("are one for every angle at first: $kind", (fact) => {
    expect(cardsOf(fact).map((card) => card.angle)).toEqual(possibleAngles(fact));
  });

  it("are only those that were chosen and that its wording allows", () => {
    expect(cardsOf({ ...vega, angles: ["reverse"] }).map((card) => card.angle)).toEqual(["reverse"]);
    expect(cardsOf({ ...pleiades, angles: ["gap-2", "gap-9", "forward"] }).map((card) => card.angle)).toEqual([
      "gap-2",
    ]);
  });

  it("carry note, story and source, and an identity that no rewording changes", () => {
    const reworded: Fact = { ...vega, prompt: "α Lyrae", answer: "the lyre" };
    expect(cardsOf(reworded).map((card) => card.id)).toEqual(cardsOf(vega).map((card) => card.id));
    expect(cardFrom(vega, "forward")).toMatchObject({ note: extras.note, source: "IAU", story: "", fact: "f1" });
  });

  it("have identities that name fact and angle", () => {
    expect(cardId("f1", "gap-2")).toBe("f1:gap-2");
    expect(parseCardId("f1:gap-2")).toEqual({ fact: "f1", angle: "gap-2" });
    expect(parseCardId(cardId("sky:of:north", "name-to-picture"))).toEqual({
      fact: "sky:of:north",
      angle: "name-to-picture",
    });
  });
});
