// The star tables of the demo subject, read once into typed rows.
import { CONSTELLATION_TABLE } from "./constellation-table.ts";
import { FIGURE_TABLE } from "./figure-table.ts";
import { STAR_TABLE } from "./star-table.ts";

/** A direction in the sky, J2000: right ascension 0 to 360 and declination −90 to 90, in degrees. */
export interface SkyPosition {
  readonly ra: number;
  readonly dec: number;
}

/** One of the 88 constellations; the position is the middle of its figure, rounded to a degree. */
export interface Constellation extends SkyPosition {
  readonly abbreviation: string;
  readonly name: string;
  readonly genitive: string;
  readonly english: string;
  /** Bayer letter of one of its bright stars. */
  readonly letter: string;
}

/** A bright star with a proper name. */
export interface NamedStar extends SkyPosition {
  readonly name: string;
  readonly letter: string;
  /** Abbreviation of its constellation. */
  readonly constellation: string;
  readonly magnitude: number;
  /** Whether the catalogue has no brighter star in that constellation. */
  readonly brightest: boolean;
}

/** A star as it is drawn. */
export interface FigureStar extends SkyPosition {
  readonly magnitude: number;
}

/** Stars of one constellation and the lines between them; a path lists indexes into `stars`. */
export interface Figure {
  readonly constellation: string;
  readonly stars: readonly FigureStar[];
  readonly paths: readonly (readonly number[])[];
}

/** All 88 constellations in the order of their abbreviations. */
export const CONSTELLATIONS: readonly Constellation[] = rows(CONSTELLATION_TABLE).map((cells) => {
  const [abbreviation = "", name = "", genitive = "", english = "", letter = "", at = ""] = cells;
  return { abbreviation, name, genitive, english, letter, ...position(at) };
});

/** Named stars, the brightest first. */
export const NAMED_STARS: readonly NamedStar[] = rows(STAR_TABLE).map((cells) => {
  const [name = "", letter = "", constellation = "", at = "", magnitude = "", mark] = cells;
  return { name, letter, constellation, magnitude: Number(magnitude), brightest: mark === "*", ...position(at) };
});

/** The figures that can be drawn, in the order of their abbreviations. */
export const FIGURES: readonly Figure[] = FIGURE_TABLE.trim()
  .split(/\n(?=[A-Z])/)
  .map(readFigure);

/** The constellation with this abbreviation; throws if there is none. */
export function constellationOf(abbreviation: string): Constellation {
  const found = CONSTELLATIONS.find((one) => one.abbreviation === abbreviation);
  if (!found) throw new RangeError(`no constellation is abbreviated ${abbreviation}`);
  return found;
}

function rows(table: string): readonly (readonly string[])[] {
  return table
    .trim()
    .split("\n")
    .map((line) => line.split(" | "));
}

function position(text: string): SkyPosition {
  const [ra = Number.NaN, dec = Number.NaN] = text.split(",").map(Number);
  return { ra, dec };
}

/** A block of the figure table: stars have commas, paths have hyphens between plain numbers. */
function readFigure(block: string): Figure {
  const [constellation = "", ...words] = block.split(/\s+/);
  const stars = words
    .filter((word) => word.includes(","))
    .map((word): FigureStar => {
      const magnitude = Number(word.split(",")[2]);
      return { ...position(word), magnitude };
    });
  const paths = words.filter((word) => !word.includes(",")).map((word) => word.split("-").map(Number));
  return { constellation, stars, paths };
}
