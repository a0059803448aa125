import { describe, expect, it } from "vitest";
import { textLanguage } from "./languages.ts";

describe("the language of one text of a fact", () => {
  it.each([
    ["cygnus", "la", "la"],
    ["Wega ist der hellste Stern der Leier", "de-AT", "de-AT"],
    ["Qual é a estrela mais brilhante da Lira?", "pt-BR", "pt-BR"],
    ["шведски", "sr", "sr"],
    ["3.14", "fr", "fr"],
    ["", "fr", "fr"],
  ])("is what was told: “%s”, %s", (text, told, tag) => {
    expect(textLanguage(text, told)).toBe(tag);
  });

  it("is another one where the script is, or where English asks for a foreign word", () => {
    expect(textLanguage("النسر الواقع", "en")).toBe("ar");
    expect(textLanguage("織女星", "ja")).toBe("ja");
    expect(textLanguage("The Latin name of the Swan", "la")).toBe("en");
  });

  it("is found out where nothing was told, and left open where nothing tells", () => {
    expect(textLanguage("Vega is the brightest star of Lyra", "")).toBe("en");
    expect(textLanguage("星座を知っていますか", "")).toBe("ja");
    expect(textLanguage("Vega", "")).toBe("");
  });
});
