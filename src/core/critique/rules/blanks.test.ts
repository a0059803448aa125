import { expect, it } from "vitest";
import { fixed, pair, ruleCases, statement } from "../../../../tests/support/critique-cases.ts";

ruleCases(
  "blank-size",
  [
    statement("Vega [is] the brightest star of Lyra."),
    statement("[The] Dog Star rises late, in [Canis Major]."),
    statement("Vega is [the brightest star of the constellation Lyra]."),
    statement("[Die] Wega ist der hellste Stern der Leier."),
    statement("Die Wega [ist der hellste Stern der ganzen Leier]."),
    statement("Véga [est] l'étoile la plus brillante de la Lyre."),
    statement("Vega [es] la estrella más brillante de la Lira."),
    statement("ベガは[こと座でいちばん明るく夏に見える星]です。"),
    statement("Vega is in Lyra[.]"),
    statement("[The brightest star of Lyra] is Vega."),
    statement("Wega ist [Hauptstern der Leier und heller Sommerstern] am Himmel."),
    statement("Wega steht [in der] Leier."),
    statement("Saturn hat Ringe [aus] Eis."),
    statement("Луна светит [в] полнолуние всю ночь."),
    statement("土星[の]環は氷でできている。"),
    statement("木星[是]最大的行星。"),
    statement("शनि [के] चारों ओर वलय हैं।"),
  ],
  [
    statement("Vega is the brightest star of [Lyra]."),
    statement("[Vega] shines."),
    statement("The [Small Magellanic Cloud] is a dwarf galaxy."),
    statement("The planet named after the [god of seas] is Neptune."),
    statement("Die Wega steht in der [Leier]."),
    statement("Véga est dans la [Lyre]."),
    statement("ベガは[こと座]の星です。"),
    statement("The chemical sign of helium is [He]."),
    statement("Helium is written [He]."),
    statement("Albireo [A] is a giant star."),
    statement("The [Great Red Spot] is a storm of Jupiter."),
    statement("Der Nebel heißt [Großer Nebel im Orion] bei Gästen."),
    statement("La [Gran Nube de Magallanes] es una galaxia."),
    statement("A group of stars is called a [constellation]."),
    pair("the", "der"),
    statement("木星[の衛星]イオには火山がある。"),
    statement("Звезда [Вега] светит летом."),
  ],
);

it("closes a blank round a small word, and keeps the numbers of the others", () => {
  const made = fixed(statement("[The] brightest star of [Lyra] is [Vega]."), "blank-size");
  expect(made).toMatchObject({
    statement: "The brightest star of [Lyra] is [Vega].",
    gaps: [2, 3],
    angles: ["gap-2", "gap-3"],
  });
});

it("leaves formulae and written brackets as they are when a blank is closed", () => {
  const made = fixed(statement("[The] law \\(a_{[1]}\\) and \\[b\\] are by [Kepler]."), "blank-size");
  expect(made).toMatchObject({ statement: "The law \\(a_{[1]}\\) and \\[b\\] are by [Kepler].", gaps: [2] });
});

ruleCases(
  "several-blanks",
  [
    pair("___ is the brightest star of ___", "Vega, Lyra"),
    pair("____ and ____ are the moons of Mars", "Phobos and Deimos"),
    pair("… ist der hellste Stern der …", "Wega; Leier"),
    pair("[...] est dans la [...]", "Véga, Lyre"),
    pair("( ) は ( ) 座の星", "ベガ、こと"),
    pair("（　）は（　）座の星", "ベガ、こと"),
    pair("＿＿は＿＿座の星", "ベガ、こと"),
    pair("(?) is in (?)", "Vega, Lyra"),
    pair("_ is a star of _", "Vega, Lyra"),
    pair("---- is a star of ----", "Vega, Lyra"),
    pair("_____ está en la _____.", "Vega, Lira"),
    statement("[Mercury], [Venus], [Earth], [Mars] and [Jupiter] are planets."),
    statement("[水星]、[金星]、[地球]、[火星]、[木星]は惑星。"),
  ],
  [
    pair("___ is the brightest star of Lyra", "Vega"),
    pair("Well… which star is that?", "Vega"),
    pair("Brightest star of Lyra", "Vega"),
    pair("Star (of Lyra) that is brightest", "Vega"),
    statement("[Vega] is in [Lyra]."),
    statement("[Mercury], [Venus], [Earth] and [Mars] are the inner planets."),
    pair("Name of the file: sky_map_2", "the map"),
    pair("… ist der hellste Stern der Leier", "Wega"),
    pair("ベガは( )座の星", "こと"),
    pair("What do open() and close() do to the dome?", "move the slit"),
    pair("my_file and __init__", "names"),
  ],
);

it("fills the blanks in as gaps of a statement", () => {
  expect(fixed(pair("___ is the brightest star of ___.", "Vega, Lyra"), "several-blanks")).toMatchObject({
    kind: "statement",
    statement: "[Vega] is the brightest star of [Lyra].",
    gaps: [1, 2],
    angles: ["gap-1", "gap-2"],
  });
});
