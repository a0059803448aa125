import { expect, it } from "vitest";
import {
  fixed,
  list,
  PICTURE,
  pair,
  picture,
  ruleCases,
  spelling,
  statement,
} from "../../../../tests/support/critique-cases.ts";

const forward = { angles: ["forward"] as const };

ruleCases(
  "one-sided",
  [
    pair("Brightest star of Lyra", "Vega", forward),
    pair("Hellster Stern der Leier", "Wega", forward),
    pair("こと座の一等星", "ベガ", forward),
    pair("Самая яркая звезда Лиры", "Вега", forward),
    pair("Swan", "Cygnus", { angles: ["reverse"] }),
    picture("Lyra", { angles: ["picture-to-name"] }),
    picture("Leier", { angles: ["name-to-picture"] }),
    pair("المع نجوم القيثارة", "النسر الواقع", forward),
  ],
  [
    pair("Brightest star of Lyra", "Vega"),
    picture("Lyra"),
    pair("Messier objects", "110", forward),
    pair("Discovery of Uranus", "13 March 1781", forward),
    pair(
      "What would you tell a guest who asks in the dark which of the many stars up there is called Vega?",
      "the blue one",
      forward,
    ),
    pair("Why do stars twinkle?", "the air in front of them is never at rest", forward),
    statement("Vega is in [Lyra]."),
    list("Planets", ["Mercury", "Venus"]),
    spelling("brightest star of Lyra", "Vega"),
    pair("First letter of the Greek alphabet", "α", forward),
    pair("Is Vega in Lyra?", "Yes", forward),
    pair("Venus hat einen Mond.", "falsch", forward),
    [pair("Constellation of Vega", "Lyra", forward), pair("Constellation of Sheliak", "Lyra", forward)],
    pair("Why is Mars red?", "rust in its dust", forward),
    pair("Warum funkeln Sterne?", "unruhige Luft", forward),
    pair("Почему Марс красный?", "ржавчина", forward),
    pair("流れ星が光るのはなぜ？", "空気", forward),
  ],
);

it("asks the other way round too", () => {
  expect(fixed(pair("Swan", "Cygnus", forward), "one-sided").angles).toEqual(["forward", "reverse"]);
});

ruleCases(
  "bare-translation",
  [
    pair("star", "звезда"),
    pair("Stern", "星"),
    pair("étoile", "αστέρι"),
    pair("moon", "ירח"),
    pair("चाँद", "moon"),
    pair("German: star", "Stern"),
    pair("star in French", "étoile"),
    pair("Stern (en)", "star"),
    pair("ดาว", "star"),
    pair("How do you say star in French?", "étoile"),
    pair("Wie heißt „Stern“ auf Englisch?", "star"),
    pair("Comment dit-on « étoile » en anglais ?", "star"),
    pair("별", "star"),
  ],
  [
    pair("star", "звезда", { picture: PICTURE }),
    pair("star", "звезда", { story: "A star over a zvelt tower." }),
    pair("Brightest star of Lyra", "Vega"),
    pair("Bayer letter of Vega", "α"),
    pair("α", "alpha"),
    pair("織姫星はどの星座にありますか、夏の夜に", "Lyra"),
    pair("Abbreviation of Lyra", "Lyr"),
    pair("What does the Greek word planetes mean to a guest?", "wanderer"),
    statement("Star is [звезда] in Russian."),
    pair("M 31", "галактика"),
    pair("Which book is written in Latin?", "Almagest"),
  ],
);
