// The names of the 88 constellations and the places of the named stars, checked against two sources that
// the demo subject was not made from: the boundary table of astronomy-engine (names and abbreviations)
// and a separately compiled list (names, abbreviations and genitives; see the fixture's header).
import { readFileSync } from "node:fs";
import * as Astronomy from "astronomy-engine";
import { describe, expect, it } from "vitest";
import { CONSTELLATIONS, NAMED_STARS } from "../../src/demo/sky/sky-tables.ts";
import { demoSounds, skyFacts } from "../../src/demo/sky-facts.ts";

/** Names in astronomy-engine 2.1.19 that differ from the list of the IAU, which decides. */
const SOURCE_SLIPS: Readonly<Record<string, string>> = {
  Antila: "Antlia",
  Camelopardis: "Camelopardalis",
  "Pisces Austrinus": "Piscis Austrinus",
};

/** Steps fine enough to meet the smallest constellation, which is more than five degrees wide. */
const GRID_DEGREES = 1.5;

/** Without accents: astronomy-engine writes Bootes. */
const plain = (text: string): string => text.normalize("NFD").replace(/\p{M}/gu, "");

function namesBySymbol(): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (let dec = -89.5; dec < 90; dec += GRID_DEGREES) {
    for (let ra = 0; ra < 360; ra += GRID_DEGREES) {
      const { symbol, name } = Astronomy.Constellation(ra / 15, dec);
      names.set(symbol, SOURCE_SLIPS[name] ?? name);
    }
  }
  return names;
}

function listedRows(): readonly { abbreviation: string; name: string; genitive: string }[] {
  const text = readFileSync(new URL("./fixtures/constellation-names.txt", import.meta.url), "utf8");
  const lines = text.split("\n").filter((line) => line !== "" && !line.startsWith("#"));
  return lines.map((line) => {
    const [abbreviation = "", name = "", genitive = ""] = line.split("\t");
    return { abbreviation, name, genitive };
  });
}

describe("the 88 constellations", () => {
  it("have the abbreviations and names that tile the whole sky in astronomy-engine", () => {
    const found = namesBySymbol();
    const ours = new Map(CONSTELLATIONS.map(({ abbreviation, name }) => [abbreviation, plain(name)]));
    expect(found.size).toBe(88);
    expect(Object.fromEntries(ours)).toEqual(Object.fromEntries(found));
  });

  it("have the abbreviations, names and genitives of the independent list, accents included", () => {
    const ours = CONSTELLATIONS.map(({ abbreviation, name, genitive }) => ({ abbreviation, name, genitive }));
    expect(ours).toEqual(listedRows());
  });

  it("stand on the cards as the independent list has them", () => {
    const answers = new Map<string, string>();
    const pictures = new Map(CONSTELLATIONS.map(({ name }) => [name, "0".repeat(64)]));
    const sounds = new Map(demoSounds().map(({ name }) => [name, "1".repeat(64)]));
    for (const { content } of skyFacts({ pictures, sounds })) {
      if (content.kind === "pair") answers.set(content.prompt, content.answer);
    }
    for (const { abbreviation, name, genitive } of listedRows()) {
      expect(answers.get(`Abbreviation of ${name}`)).toBe(abbreviation);
      expect(answers.get(`Genitive of ${name}`)).toBe(genitive);
    }
  });
});

describe("the named stars", () => {
  it("lie inside the boundaries of the constellation that they are said to belong to", () => {
    const elsewhere = NAMED_STARS.filter(
      (star) => Astronomy.Constellation(star.ra / 15, star.dec).symbol !== star.constellation,
    );
    expect(elsewhere).toEqual([]);
  });
});
