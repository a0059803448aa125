import { expect, it } from "vitest";
import { fixed, list, pair, ruleCases, statement } from "../../../../tests/support/critique-cases.ts";

ruleCases(
  "short-answer",
  [
    pair(
      "What is a light year?",
      "the distance that light travels through empty space in one Julian year of 365.25 days",
    ),
    pair(
      "Why do stars twinkle?",
      "Because the air above us is in motion and bends their light now this way and now that",
    ),
    pair("Ecliptic", "The apparent yearly path of the Sun among the stars; the planets never stray far from it"),
    pair(
      "Was ist die Ekliptik?",
      "die scheinbare Bahn, auf der die Sonne im Laufe eines Jahres vor den Sternen dahinzieht",
    ),
    pair(
      "Qu'est-ce que l'écliptique ?",
      "le chemin apparent que suit le Soleil parmi les étoiles au cours d'une année entière",
    ),
    pair("黄道とは", "一年をかけて太陽が星々のあいだを動いていくように見える天球上の大きな円のこと"),
    pair(
      "Что такое эклиптика?",
      "видимый путь Солнца среди звёзд, по которому оно проходит весь круг ровно за один год",
    ),
    pair(
      "Aperture rule",
      "The widest useful magnification in good air is about twice the aperture in millimetres, no more",
    ),
  ],
  [
    pair("Brightest star of Lyra", "Vega"),
    pair("What is the ecliptic?", "the Sun's yearly path among the stars"),
    pair("Light year", "the distance light travels in a year"),
    pair("Was ist die Ekliptik?", "die Bahn der Sonne vor den Sternen"),
    pair("黄道とは", "天球上の太陽の通り道"),
    pair(
      "A question that is long, because it has to say which of the many bright stars of summer is meant here",
      "Vega",
    ),
    statement("The ecliptic is the path of the [Sun] among the stars in the course of a year."),
    pair("Kepler's third law", "\\(\\frac{T_1^2}{T_2^2} = \\frac{a_1^3}{a_2^3} = 1 + 0 + 0 + 0 + 0 + 0 + 0 + 0\\)"),
    pair("Planets outward", "Mercury, Venus, Earth, Mars, Jupiter, Saturn, Uranus, Neptune, and then no more"),
    list("Planets", ["Mercury", "Venus", "Earth"]),
  ],
);

it("keeps the first clause as the answer, and the rest as a note", () => {
  const long = pair(
    "Ecliptic",
    "The Sun's yearly path; the planets never stray far from it, nor does the Moon, by more than a few degrees",
    { note: "Old." },
  );
  expect(fixed(long, "short-answer")).toMatchObject({
    answer: "The Sun's yearly path",
    note: "the planets never stray far from it, nor does the Moon, by more than a few degrees\nOld.",
  });
});

ruleCases(
  "given-away",
  [
    pair("In which constellation is the Lyra star Vega? Lyra or Cygnus", "Lyra"),
    pair("The Pole Star is called Polaris. What is it called?", "Polaris"),
    pair("Welcher Stern heißt auch Wega?", "Wega"),
    pair("Quelle étoile, Véga, est dans la Lyre ?", "véga"),
    pair("北極星は何と呼ばれる?北極星", "北極星"),
    pair("Где Вега? Вега в созвездии", "Вега"),
    pair("M 31, the Andromeda Galaxy, lies in", "Andromeda"),
    statement("[Vega] is the brightest star of Lyra; without Vega it is hard to find."),
    pair("베가는 거문고자리의 별이다. 이름은?", "베가"),
    pair("Halley's comet returns every 76 years: how many?", "76"),
  ],
  [
    pair("Brightest star of Lyra", "Vega"),
    pair("Brightest star of Canis Major", "Sirius"),
    pair("Constellation next to Leo Minor", "Leo Major"),
    pair("Which planet is named after the god of the sea?", "Neptune"),
    pair("Marsh near the observatory", "Mars"),
    pair("Distance 4.25 light years", "4.2"),
    pair("Number of Messier objects: 110", "11"),
    pair("α Lyrae", "α"),
    list("Inner planets", ["Mercury", "Venus", "Mars"]),
    pair("Stern der Leier", "Leier-Delta"),
    pair("金星有没有卫星？", "没有"),
  ],
);

it("takes the answer out of the prompt", () => {
  expect(fixed(pair("The Pole Star, Polaris, is called", "polaris"), "given-away")).toMatchObject({
    prompt: "The Pole Star, …, is called",
  });
});

it("finds its place in a prompt with a formula", () => {
  expect(fixed(pair("\\( a \\) of Mars, a red planet, is called", "red"), "given-away")).toMatchObject({
    prompt: "\\( a \\) of Mars, a … planet, is called",
  });
});

it("leaves formulae as they are in an answer that is shortened", () => {
  const answer = "\\(a^3 / T^2\\) is the same for all; it depends on the mass of the Sun, as was found later by others";
  expect(fixed(pair("Kepler's third law", answer), "short-answer")).toMatchObject({
    answer: "\\(a^3 / T^2\\) is the same for all",
  });
});
