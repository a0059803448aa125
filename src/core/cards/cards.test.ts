import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyContent, asFact } from "../../../tests/support/any-fact.ts";
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

describe("the cards of a list", () => {
  const planets: Fact = {
    ...base,
    kind: "list",
    title: "Outward from the Sun",
    items: ["Mercury", "Venus", "Earth"],
    numbers: [3, 1, 7],
    angles: ["next-3", "next-1", "next-7", "previous-3", "position-7"],
  };

  it("ask one item each, by its number, under the title of the list", () => {
    expect(texts(planets, "next-3")).toEqual([`Outward from the Sun\n1. ${BLANK}`, "Outward from the Sun\n1. Mercury"]);
    expect(texts(planets, "next-7")[0]).toBe(`Outward from the Sun\n… Venus\n${BLANK}`);
    expect(texts(planets, "previous-3")[0]).toBe(`Outward from the Sun\n${BLANK}\nVenus …`);
    expect(texts(planets, "position-7")[0]).toBe(`Outward from the Sun\n3 / 3\n${BLANK}`);
  });

  it("show the whole list if the item is no longer there", () => {
    expect(texts(planets, "next-2")[0]).toBe("Outward from the Sun\nMercury\nVenus\nEarth");
  });
});

describe("the cards of a formula", () => {
  const kepler: Fact = {
    ...base,
    kind: "formula",
    name: "Kepler's third law, \\(T\\) in years",
    formula: "T^2 = a^3",
    angles: ["name-to-formula", "formula-to-name"],
  };

  it("ask the formula of its name and the name of the formula", () => {
    const [named, told] = cardsOf(kepler);
    expect(named?.answer.text).toEqual([{ text: "T^2 = a^3", role: "formula" }]);
    expect(told?.prompt.text).toEqual([{ text: "T^2 = a^3", role: "formula" }]);
    expect(named?.prompt.text.map((part) => part.role)).toEqual(["plain", "formula", "plain"]);
  });

  it("have a formula in a gap marked as asked, and nothing of it on the prompt side", () => {
    const gap: Fact = { ...pleiades, statement: "[\\(T^2\\)] grows as \\(a^3\\), not \\(\\sqrt[3]{a}\\)", gaps: [1] };
    const { prompt, answer } = cardFrom(gap, "gap-1");
    expect(answer.text[0]).toEqual({ text: "T^2", role: "formula", asked: true });
    expect(prompt.text.map((part) => part.role)).toEqual(["blank", "plain", "formula", "plain", "formula"]);
    expect(prompt.text.at(-1)?.text).toBe("\\sqrt[3]{a}");
  });
});

describe("the card of a spelling", () => {
  const spelling: Fact = {
    ...base,
    ...{ kind: "spelling", clue: "α² Librae", word: "Zubenelgenubi", accents: "ignore", letterCase: "count" },
    sound: PHOTO,
    angles: ["spelling"],
  };

  it("is asked with clue and sound, and says how what is typed is compared", () => {
    const [card] = cardsOf(spelling);
    expect(card?.prompt).toMatchObject({ sound: PHOTO, text: [{ text: "α² Librae" }] });
    expect(card?.answer.text).toEqual([{ text: "Zubenelgenubi", role: "plain" }]);
    expect(card?.spelling).toEqual({ accents: "ignore", letterCase: "count" });
    expect(cardFrom(vega, "forward").spelling).toBeNull();
  });
});

describe("the cards of a sound", () => {
  it("ask the name of the sound and the sound of the name", () => {
    const chirp: Fact = {
      ...base,
      ...{ kind: "sound", name: "a meteor heard by radio", sound: PHOTO, angles: ["sound-to-name", "name-to-sound"] },
    };
    const [named, heard] = cardsOf(chirp);
    expect([named?.prompt.sound, named?.answer.sound]).toEqual([PHOTO, null]);
    expect([heard?.prompt.sound, heard?.answer.sound]).toEqual([null, PHOTO]);
  });
});

describe("the cards of a labelled picture", () => {
  it("cover one region each and outline it beside its name", () => {
    const region = { x: 0.1, y: 0.2, width: 0.3, height: 0.4 };
    const orion: Fact = {
      ...base,
      kind: "labelled",
      picture: PHOTO,
      labels: [
        { number: 4, name: "Rigel", ...region },
        { number: 2, name: "Betelgeuse", ...region, x: 0.6 },
      ],
      angles: ["label-4", "label-2"],
    };
    const [rigel, betelgeuse] = cardsOf(orion);
    expect(rigel?.prompt).toEqual({ ...EMPTY_SIDE, picture: PHOTO, cover: region });
    expect(rigel?.answer).toMatchObject({ picture: PHOTO, cover: region, text: [{ text: "Rigel" }] });
    expect(betelgeuse?.prompt.cover?.x).toBe(0.6);
  });
});

describe("what a fact carries besides", () => {
  const words = { note: "NOTE", source: "SOURCE", story: "STORY", why: "WHY", pictureAlt: "", pictureSource: "CREDIT" };
  const letters = fc.string({
    unit: fc.constantFrom("a", "b", "[", "]", "\\", "(", ")", " "),
    minLength: 1,
    maxLength: 8,
  });
  const any = anyContent(
    {
      text: letters,
      filled: letters,
      line: letters,
      statement: fc.constant("[a] and [b]"),
      tag: letters,
      picture: PHOTO,
    },
    () => [1, 2],
  );

  it("is never on the prompt side, of any kind from any angle", () => {
    fc.assert(
      fc.property(any, (content) => {
        const fact = asFact({ ...content, ...words, pictureLicence: "LICENCE", tags: ["TAG"] }, "f", "s");
        for (const card of cardsOf(fact)) {
          expect(JSON.stringify(card.prompt)).not.toMatch(/NOTE|SOURCE|STORY|WHY|CREDIT|LICENCE|TAG/);
          expect(card).toMatchObject(words);
        }
      }),
    );
  });

  it("as a picture or a sound comes with the answer, unless it is what is asked", () => {
    fc.assert(
      fc.property(any, (content) => {
        const asks = { picture: ["picture-to-name"], sound: ["sound-to-name", "spelling"] };
        for (const { angle, prompt } of cardsOf(asFact({ ...content, picture: PHOTO }, "f", "s"))) {
          if (prompt.picture !== null) expect(angle.startsWith("label-") || asks.picture.includes(angle)).toBe(true);
          if (prompt.sound !== null) expect(asks.sound).toContain(angle);
        }
      }),
    );
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
