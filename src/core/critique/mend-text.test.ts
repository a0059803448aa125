import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { mendText } from "./mend-text.ts";

describe("a text is mended", () => {
  it.each([
    ["étÃ© en Lyre", "été en Lyre"],
    ["CÃ”TE", "CÔTE"],
    ["Ã‰toile", "Étoile"],
    ["cÅ“ur du Lion", "cœur du Lion"],
    ["20 Â°C", "20 °C"],
    ["Ã\u00a0 la Lyre", "à la Lyre"],
    ["Ð’ÐµÐ³Ð°", "Вега"],
    ["Î’Î­Î³Î±", "Βέγα"],
    ["å¤§é™½", "大陽"],
    ["&alpha; Lyrae, f&ecirc;te", "α Lyrae, fête"],
    ["<b>V</b>ega", "Vega"],
    ["10<sup>-8</sup> of H<sub>2</sub>O", "10⁻⁸ of H₂O"],
    ["Вeга и Лиpа", "Вега и Лира"],
    ["M 31 , a galaxy", "M 31, a galaxy"],
  ])("%s", (broken, whole) => expect(mendText(broken, "").text).toBe(whole));
});

describe("a sign that stands behind an accented letter by right is left alone", () => {
  it.each([
    "« été\u00a0»",
    "« voilà\u00a0» dit-il",
    "CAFÉ\u00a0: fermé",
    "il dit à\u00a0“Véga”",
    "CAFÉ—bar",
    "“ÉTÉ” is summer",
    "„MENÜ“ am Hang",
    "NESCAFÉ®",
    "“IRMÃ” is sister",
  ])("%s", (text) => expect(mendText(text, "fr")).toEqual({ text, damage: [] }));
});

it("leaves alone what looks odd and is right", () => {
  for (const text of ["Hα and Hβ lines", "??? is in Lyra", "Really???", "https://hill.example/a?b=c", "ดาว\u200bวีกา"])
    expect(mendText(text, "en")).toEqual({ text, damage: [] });
  expect(mendText("اسم النجم \u2066Vega\u2069 هنا", "ar").damage).toEqual([]);
});

it("says that letters are lost, and changes nothing", () => {
  for (const text of ["Bo?tes", "Gr??e der Sonne", "star ????", "Bo\ufffdtes"])
    expect(mendText(text, "")).toEqual({ text, damage: ["letters are lost"] });
  expect(mendText("x<sup>n</sup>", "")).toEqual({ text: "x<sup>n</sup>", damage: ["it holds tags of a web page"] });
});

it("reads again whatever was written in UTF-8 and read as windows-1252", () => {
  const decoder = new TextDecoder("windows-1252");
  const letter = fc.constantFrom(..."äöüßéèçñíóúãõåøšžğłωβγжшяبنमन星座ベガ");
  fc.assert(
    fc.property(fc.array(letter, { minLength: 1, maxLength: 8 }), (letters) => {
      // A letter before it, as in nearly every word; q is like none of another alphabet.
      const word = `q${letters.join("")}`;
      expect(mendText(decoder.decode(new TextEncoder().encode(word)), "").text).toBe(word);
    }),
  );
});
