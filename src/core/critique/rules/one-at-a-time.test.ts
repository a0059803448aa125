import { expect, it } from "vitest";
import { fixed, list, pair, ruleCases, statement } from "../../../../tests/support/critique-cases.ts";

ruleCases(
  "one-thing",
  [
    pair("When and where was Uranus discovered?", "1781, Bath"),
    pair("Who discovered Neptune, and in which year? What is its largest moon?", "Galle; Triton"),
    pair("What is a nova? What is a supernova?", "A flaring star"),
    pair("Wann und wo wurde Uranus entdeckt?", "Bath"),
    pair("Qui et quand a découvert Uranus ?", "Herschel"),
    pair("¿Quién y cuándo descubrió Urano?", "Herschel"),
    pair("Brightest and second star of Lyra", "Vega; Sulafat"),
    pair("Moons of Mars", "Phobos / Deimos"),
    pair("冥王星とは？衛星の数は？", "準惑星"),
    pair("Monde des Mars", "Phobos\nDeimos"),
    pair("Who discovered Uranus, and in which year?", "Herschel, 1781"),
    pair("What is a nova and how often does one occur?", "a flaring star"),
    pair("Wer entdeckte Uranus und wann?", "Herschel, 1781"),
    pair("Qui a découvert Uranus et quand ?", "Herschel, 1781"),
    pair("¿Quién descubrió Urano y cuándo?", "Herschel, 1781"),
    pair("Chi scoprì Urano e quando?", "Herschel, 1781"),
    pair("Где и когда открыт Уран?", "в Бате"),
  ],
  [
    pair("Brightest star of Lyra", "Vega"),
    pair("Which star is both a binary and a variable?", "Algol"),
    pair("What lies between Mars and Jupiter?", "the asteroid belt"),
    pair("What is the magnitude of Sirius?", "-1.46"),
    pair("Who wrote “What is a star?”", "an invented guide"),
    pair("Size of a photographic plate", "8/10"),
    pair("Wie heißt der hellste Stern der Leier?", "Wega"),
    pair("Distance and brightness law", "inverse square"),
    statement("Vega is in [Lyra] and Deneb in [Cygnus]."),
    pair("Which physicist asked “Where is everybody?” at lunch?", "Fermi"),
    pair("Who said « Où sont-ils ? » in French?", "nobody"),
    pair("звезда", "star\n(noun)"),
    pair("What is the time between when the Sun sets and when it is dark?", "dusk"),
    pair("Which star is seen where the river ends and where the ship lies?", "Achernar"),
    pair("Quelle étoile est bleue et qui brille en été ?", "Véga"),
    pair("Wie entstehen Sonne und Mond?", "aus Staub"),
    pair("Étoile la plus brillante de la Lyre ?", "Véga"),
  ],
);

ruleCases(
  "whole-list",
  [
    pair("Summer Triangle", "Vega, Deneb, Altair"),
    pair("Summer Triangle", "Vega, Deneb and Altair"),
    pair("Galilean moons", "Io; Europa; Ganymede; Callisto"),
    pair("Inner planets", "Mercury\nVenus\nEarth\nMars"),
    pair("Sommerdreieck", "Wega, Deneb und Atair"),
    pair("夏の大三角", "ベガ、デネブ、アルタイル"),
    pair("مثلث الصيف", "النسر الواقع، الذنب، النسر الطائر"),
    pair("Giant planets", "1. Jupiter\n2. Saturn\n3. Uranus\n4. Neptune"),
    pair(
      "Life of the Sun",
      "1. The star swells up into a red giant\n2. It sheds its layers into space\n3. A dwarf is left",
    ),
    pair("Galilean moons", "1. Io 2. Europa 3. Ganymede 4. Callisto"),
    pair("Galilean moons", "a) Io b) Europa c) Ganymede"),
    pair("Galilean moons", "Io → Europa → Ganymede → Callisto"),
    pair("Летний треугольник", "Вега, Денеб и Альтаир"),
    pair("类地行星", "水星、金星、地球和火星"),
    pair("Planètes géantes", "Jupiter, Saturne, Uranus et Neptune"),
  ],
  [
    pair("Brightest star of Lyra", "Vega"),
    pair("Stars in the catalogue", "9,110"),
    pair("Distance to the Sun in km", "149,597,870.7"),
    pair("Moons of Mars", "Phobos and Deimos"),
    pair("What does an altazimuth mount do?", "It turns up and down, and round, but does not follow the sky by itself"),
    pair("Home of the club", "Hilltop, Old Mill"),
    list("Inner planets", ["Mercury", "Venus", "Earth", "Mars"]),
    statement("The Summer Triangle is [Vega], Deneb and Altair."),
    pair("Vega, Deneb, Altair", "Summer Triangle"),
    pair("Discovery of Uranus", "Tuesday, March 13, 1781"),
    pair("Entdeckung des Uranus", "Dienstag, 13. März, 1781"),
    pair("Dark nebula", "a cold, dark, dense cloud"),
    pair("Dunkelwolke", "eine kalte, dunkle, dichte Wolke"),
    pair("Nébuleuse obscure", "une zone froide, sombre, dense"),
    pair("Brightest star of Lyra", "Vega (blue, bright, near)"),
    pair("A function of place", "\\(d(x, y, z)\\)"),
    pair("何の星座?", "こと座"),
  ],
);

it("makes a list in order of a list asked whole", () => {
  const made = fixed(pair("Summer Triangle?", "Vega, Deneb and Altair", { tags: ["summer"] }), "whole-list");
  expect(made).toMatchObject({
    kind: "list",
    title: "Summer Triangle",
    items: ["Vega", "Deneb", "Altair"],
    tags: ["summer"],
    angles: ["next-1", "next-2", "next-3"],
  });
});
