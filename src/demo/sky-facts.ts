// The demo subject "The night sky": what there is to know, ready to become cards.
import { possibleAngles } from "../core/cards/cards.ts";
import { type FactContent, type FactExtras, NO_EXTRAS, type PictureHash } from "../core/facts/fact.ts";
import { freshGaps } from "../core/facts/gaps.ts";
import type { DemoFact, DemoHashes } from "./demo-fact.ts";
import { kindFacts } from "./kind-facts.ts";
import { PLANET_FACTS, PLANET_SOURCE } from "./planet-facts.ts";
import { drawConstellation } from "./sky/draw-constellation.ts";
import { PULSARS, pulsarClicks } from "./sky/pulsar-clicks.ts";
import {
  CONSTELLATIONS,
  type Constellation,
  constellationOf,
  FIGURES,
  NAMED_STARS,
  type NamedStar,
} from "./sky/sky-tables.ts";
import { skyTags } from "./sky/sky-tags.ts";
import { ABBREVIATION_STORIES, FIGURE_STORIES, STAR_STORIES } from "./sky-stories.ts";

/** A picture of the demo subject; `name` is the constellation that it shows. */
export interface DemoDrawing {
  readonly name: string;
  readonly svg: string;
}

/** A sound of the demo subject, as a WAV file; `name` is the pulsar. */
export interface DemoSound {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** The name of the demo subject. */
export const SKY_SUBJECT = "The night sky";

const LIST_SOURCE = "IAU constellation list";
const CATALOGUE_SOURCE = "Extended Hipparcos Compilation (XHIP)";

/** The stars worth knowing by letter; each has one Bayer letter that nobody disputes. */
const STARS = [
  "Sirius, Canopus, Arcturus, Vega, Capella, Rigel, Procyon, Achernar, Betelgeuse, Hadar",
  "Altair, Aldebaran, Spica, Antares, Pollux, Fomalhaut, Mimosa, Deneb, Regulus, Adhara",
  "Castor, Gacrux, Shaula, Bellatrix, Miaplacidus, Alnilam, Alnitak, Alioth, Mirfak, Dubhe",
  "Kaus Australis, Alkaid, Menkalinan, Alhena, Peacock, Polaris, Alphard, Hamal, Denebola, Algol",
].flatMap((names) => names.split(", "));

/** Figures that one can call up from the name alone; the others are only asked from the picture. */
const KNOWN_BY_HEART = new Set("Ori UMa UMi Cas Cyg Leo Sco Cru Gem Tau Lyr CrB Peg".split(" "));

/** The pictures of the demo subject, to be stored before its facts are made. */
export const demoDrawings = (): readonly DemoDrawing[] =>
  FIGURES.map((figure) => ({ name: constellationOf(figure.constellation).name, svg: drawConstellation(figure) }));

/** The sounds of the demo subject, to be stored before its facts are made. */
export const demoSounds = (): readonly DemoSound[] =>
  PULSARS.map(({ name, period }) => ({ name, bytes: pulsarClicks(period) }));

/** All facts of the demo subject, with every drawing of `demoDrawings` and sound of `demoSounds`; throws if one is missing. */
export function skyFacts(hashes: DemoHashes): readonly DemoFact[] {
  const { pictures } = hashes;
  const drawn = FIGURES.map((figure) => constellationOf(figure.constellation));
  return [
    ...CONSTELLATIONS.map((constellation) => abbreviationFact(constellation, pictures.get(constellation.name) ?? null)),
    ...CONSTELLATIONS.map(genitiveFact),
    ...STARS.map((name) => starFact(namedStar(name))),
    ...PLANET_FACTS.map((fact) =>
      statementFact(fact.statement, { note: fact.note, story: fact.story, source: PLANET_SOURCE, tags: ["planet"] }),
    ),
    ...drawn.map((constellation) => pictureFact(constellation, pictures)),
    ...kindFacts(hashes),
  ];
}

function abbreviationFact(constellation: Constellation, picture: PictureHash | null): DemoFact {
  const { abbreviation, name, english } = constellation;
  return pairFact(`Abbreviation of ${name}`, abbreviation, name, {
    note: english === name ? "" : `In English: ${english}.`,
    source: LIST_SOURCE,
    story: ABBREVIATION_STORIES[abbreviation] ?? "",
    tags: ["constellation", "abbreviation", ...skyTags(constellation)],
    picture,
  });
}

function genitiveFact(constellation: Constellation): DemoFact {
  const { name, genitive, letter } = constellation;
  return pairFact(`Genitive of ${name}`, genitive, name, {
    note: `As in the star ${letter} ${genitive}.`,
    source: LIST_SOURCE,
    story: "",
    tags: ["constellation", "genitive", ...skyTags(constellation)],
    picture: null,
  });
}

/** Asked both ways, unless the answer is the name itself: then the way back asks nothing. */
function pairFact(prompt: string, answer: string, name: string, extras: Partial<FactExtras>): DemoFact {
  return {
    content: { ...NO_EXTRAS, ...extras, kind: "pair", prompt, answer },
    angles: answer === name ? ["forward"] : ["forward", "reverse"],
  };
}

function starFact(star: NamedStar): DemoFact {
  const { name, genitive } = constellationOf(star.constellation);
  const magnitude = String(star.magnitude).replace("-", "−");
  const rank = star.brightest ? `, the brightest star of ${name} there` : "";
  return statementFact(`[${star.name}] bears the Bayer letter [${star.letter}] in the constellation [${name}].`, {
    note: `In full: ${star.letter} ${genitive}. Magnitude ${magnitude} in the catalogue${rank}.`,
    source: CATALOGUE_SOURCE,
    story: STAR_STORIES[star.name] ?? "",
    tags: ["star", ...skyTags(star)],
  });
}

function pictureFact(constellation: Constellation, pictures: ReadonlyMap<string, PictureHash>): DemoFact {
  const { abbreviation, name, english } = constellation;
  const picture = pictures.get(name);
  if (picture === undefined) throw new RangeError(`no stored picture of ${name}`);
  const content: FactContent = {
    ...NO_EXTRAS,
    kind: "picture",
    name,
    picture,
    pictureAlt: "Dots for stars, larger for brighter ones, joined by the lines of the figure",
    pictureSource: "drawn from the star catalogue",
    note: english === name ? "" : `In English: ${english}.`,
    source: CATALOGUE_SOURCE,
    story: FIGURE_STORIES[abbreviation] ?? "",
    tags: ["constellation", "figure", ...skyTags(constellation)],
  };
  return { content, angles: KNOWN_BY_HEART.has(abbreviation) ? possibleAngles(content) : ["picture-to-name"] };
}

function statementFact(statement: string, extras: Partial<FactExtras>): DemoFact {
  const gaps = freshGaps(statement);
  const content: FactContent = { ...NO_EXTRAS, ...extras, kind: "statement", statement, gaps };
  return { content, angles: possibleAngles(content) };
}

function namedStar(name: string): NamedStar {
  const found = NAMED_STARS.find((star) => star.name === name);
  if (!found) throw new RangeError(`no bright star is called ${name}`);
  return found;
}
