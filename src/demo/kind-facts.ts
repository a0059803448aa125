// Facts of the demo subject that are more than pairs, statements and pictures: lists in order, labelled pictures, formulae,
// spellings and sounds.
import { defaultAngles } from "../core/cards/default-angles.ts";
import { type FactContent, NO_EXTRAS, type PictureLabel, type SpellingRule } from "../core/facts/fact.ts";
import { freshNumbers } from "../core/facts/list-numbers.ts";
import type { DemoFact, DemoHashes } from "./demo-fact.ts";
import { drawingFrame } from "./sky/draw-constellation.ts";
import { PULSARS } from "./sky/pulsar-clicks.ts";
import { constellationOf, FIGURES, NAMED_STARS } from "./sky/sky-tables.ts";
import { FIGURE_STORIES } from "./sky-stories.ts";

/** The Sun's way: by the boundaries of the IAU, so with Ophiuchus. */
export const SUNS_WAY =
  "Pisces, Aries, Taurus, Gemini, Cancer, Leo, Virgo, Libra, Scorpius, Ophiuchus, Sagittarius, Capricornus, Aquarius".split(
    ", ",
  );

const LISTS = [
  {
    title: "Constellations that the Sun passes through, from the March equinox on",
    items: SUNS_WAY,
    source: "Constellation boundaries of the IAU",
    note: "Ophiuchus is one of them, though it is no sign of the zodiac.",
  },
  {
    title: "Large moons of Jupiter, from the innermost outwards",
    items: ["Io", "Europa", "Ganymede", "Callisto"],
    source: "NASA Planetary Fact Sheet",
    note: "The four that Galileo saw in 1610.",
  },
  {
    title: "Spectral classes of stars, from the hottest to the coolest",
    items: ["O", "B", "A", "F", "G", "K", "M"],
    source: "Harvard spectral classification",
    note: "The Sun is a star of class G, Vega one of class A.",
  },
] as const;

const FORMULAE = [
  {
    name: "Magnification of a telescope",
    formula: "V = \\frac{f_\\text{objective}}{f_\\text{eyepiece}}",
    note: "An objective of 1,200 mm and an eyepiece of 25 mm magnify 48 times.",
  },
  {
    name: "Kepler’s third law, in years and astronomical units",
    formula: "T^2 = a^3",
    note: "Jupiter: 5.20 astronomical units, 11.9 years.",
  },
  {
    name: "Distance modulus, with d in parsecs",
    formula: "m - M = 5 \\log_{10} \\frac{d}{10}",
    note: "At ten parsecs the apparent and the absolute magnitude are the same.",
  },
] as const;

/** Constellations whose names are easily misspelt. */
const HARD_NAMES = ["Boo", "Oph", "Sgr", "Cam", "Cap", "Mon"];

/** Figures of which the stars are named one at a time. */
const LABELLED = [
  { constellation: "Ori", stars: ["Betelgeuse", "Rigel", "Bellatrix", "Saiph", "Alnitak", "Alnilam", "Mintaka"] },
  { constellation: "UMa", stars: ["Dubhe", "Merak", "Phecda", "Alioth", "Mizar", "Alkaid"] },
] as const;

/** Half the side of a label's square at most, in pixels of the drawing. */
const REACH = 32;

/** All of them. Throws a RangeError if a picture or a sound is missing. */
export const kindFacts = (hashes: DemoHashes): readonly DemoFact[] =>
  [
    ...LISTS.map(listContent),
    ...LABELLED.map((one) => labelledContent(one, hashes)),
    ...FORMULAE.map(formulaContent),
    ...HARD_NAMES.map(spellingContent),
    ...PULSARS.map((pulsar) => soundContent(pulsar, hashes)),
  ].map((content) => ({ content, angles: defaultAngles(content) }));

const listContent = ({ title, items, source, note }: (typeof LISTS)[number]): FactContent => ({
  ...NO_EXTRAS,
  kind: "list",
  title,
  items,
  numbers: freshNumbers(items),
  source,
  note,
  tags: ["in order"],
});

const formulaContent = ({ name, formula, note }: (typeof FORMULAE)[number]): FactContent => ({
  ...NO_EXTRAS,
  kind: "formula",
  name,
  formula,
  note,
  source: "Common textbooks of astronomy",
  tags: ["formula"],
});

/** What counts in the demo's spellings: the guide writes them for themselves only, in small letters too. */
export const DEMO_SPELLING: SpellingRule = { accents: "count", letterCase: "ignore" };

function spellingContent(abbreviation: string): FactContent {
  const { english, name } = constellationOf(abbreviation);
  return {
    ...NO_EXTRAS,
    kind: "spelling",
    clue: `Latin name of the ${english}`,
    word: name,
    ...DEMO_SPELLING,
    language: "la",
    story: FIGURE_STORIES[abbreviation] ?? "",
    source: "IAU constellation list",
    tags: ["constellation", "spelling"],
  };
}

function soundContent({ name, period, about }: (typeof PULSARS)[number], { sounds }: DemoHashes): FactContent {
  return {
    ...NO_EXTRAS,
    kind: "sound",
    name,
    sound: stored(sounds, name),
    note: `Clicks made ${period} seconds apart, as the pulses come; ${about}.`,
    source: "ATNF Pulsar Catalogue",
    tags: ["pulsar"],
  };
}

function labelledContent({ constellation, stars }: (typeof LABELLED)[number], { pictures }: DemoHashes): FactContent {
  const { name } = constellationOf(constellation);
  return {
    ...NO_EXTRAS,
    kind: "labelled",
    picture: stored(pictures, name),
    labels: labelsAt(constellation, stars),
    pictureAlt: "Dots for stars, larger for brighter ones, joined by the lines of the figure",
    pictureSource: "drawn from the star catalogue",
    source: "Extended Hipparcos Compilation (XHIP)",
    tags: ["star", "labels"],
  };
}

/** A square round each star, as shares of the drawing; where stars lie close, small enough to leave the others out. */
function labelsAt(constellation: string, names: readonly string[]): readonly PictureLabel[] {
  const figure = FIGURES.find((one) => one.constellation === constellation);
  if (!figure) throw new RangeError(`no figure of ${constellation}`);
  const { place, width, height } = drawingFrame(figure);
  const places = names.map((name) => {
    const star = NAMED_STARS.find((one) => one.name === name);
    if (!star) throw new RangeError(`no bright star is called ${name}`);
    return place(star);
  });
  return places.map(({ x, y }, i) => {
    const others = places.filter((_, j) => j !== i);
    const nearest = Math.min(...others.map((other) => Math.max(Math.abs(other.x - x), Math.abs(other.y - y))));
    const half = Math.min(REACH, nearest / 2);
    const [left, top] = [(x - half) / width, (y - half) / height];
    return {
      number: i + 1,
      name: names[i] ?? "",
      x: left,
      y: top,
      width: (2 * half) / width,
      height: (2 * half) / height,
    };
  });
}

function stored(hashes: ReadonlyMap<string, string>, name: string): string {
  const hash = hashes.get(name);
  if (hash === undefined) throw new RangeError(`nothing is stored for ${name}`);
  return hash;
}
