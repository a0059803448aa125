import { expect, it } from "vitest";
import {
  fixed,
  list,
  PICTURE,
  pair,
  ruleCases,
  spelling,
  statement,
} from "../../../../tests/support/critique-cases.ts";

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
  ],
);

it("takes the answer out of the prompt", () => {
  expect(fixed(pair("The Pole Star, Polaris, is called", "polaris"), "given-away")).toMatchObject({
    prompt: "The Pole Star, …, is called",
  });
});

ruleCases(
  "yes-no",
  [
    pair("Is Vega in Lyra?", "Yes"),
    pair("Is Pluto a planet?", "No, a dwarf planet"),
    pair("True or false: Venus has a moon", "False"),
    pair("Ist Wega ein Stern der Leier?", "Ja"),
    pair("Vénus a-t-elle une lune ?", "Non"),
    pair("¿Es Vega una estrella?", "Sí."),
    pair("ベガはこと座の星ですか", "はい"),
    pair("织女星在天琴座吗？", "是"),
    pair("هل للزهرة قمر؟", "لا"),
    pair("क्या शुक्र का चंद्रमा है?", "नहीं"),
  ],
  [
    pair("Is Vega or Deneb brighter?", "Vega"),
    pair("Symbol of nobelium", "No"),
    pair("Which planet has no moon?", "Venus"),
    pair("Who answered?", "Yesenia"),
    pair("Which word means not any?", "none"),
    pair("Gibt es auf Venus Wasser?", "nur als Dampf"),
    pair("Yes in Japanese", "はい"),
    pair("Où est Véga ?", "dans la Lyre"),
    statement("Venus has [no] moon."),
  ],
);

ruleCases(
  "bare-number",
  [
    pair("Year in which Uranus was discovered", "1781"),
    pair("Magnitude of Sirius", "-1.46"),
    pair("Discovery of Neptune", "23 September 1846"),
    pair("Entdeckung des Uranus", "13. März 1781"),
    pair("Diámetro de Marte", "6.779 km"),
    pair("Messier objects", "110"),
    pair("नक्षत्रों की संख्या", "८८"),
    statement("There are [88] constellations."),
    pair("海王星の発見", "1846年"),
    spelling("the Herdsman's constellation, with its mark", "Boötes"),
  ],
  [
    pair("Year in which Uranus was discovered", "1781", { story: "Seventeen guests sat at eighty-one tables." }),
    pair("Magnitude of Sirius", "-1.46", { note: "The brightest star of the night." }),
    pair("Messier objects", "110", { picture: PICTURE }),
    pair("Moons of Mars", "2"),
    pair("Great cluster in Hercules", "M13"),
    pair("Seven Sisters", "Pleiades"),
    pair("First catalogue", "NGC 7000 and others"),
    statement("There are [eighty-eight] constellations."),
    pair("1781", "discovery of Uranus", { angles: ["forward"] }),
    list("Planets", ["Mercury", "Venus"], { angles: ["position-1"] }),
    spelling("the brightest star of Lyra", "Vega"),
  ],
);
