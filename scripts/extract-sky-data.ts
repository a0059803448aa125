// Writes the small star tables of the demo subject from the catalogue files of d3-celestial.
// Run: npx tsx scripts/extract-sky-data.ts
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";

type Point = readonly [lon: number, lat: number];

interface Feature<P, G> {
  readonly id: string | number;
  readonly properties: P;
  readonly geometry: { readonly coordinates: G };
}

interface Collection<P, G> {
  readonly features: readonly Feature<P, G>[];
}

interface NameRow {
  readonly name?: string;
  readonly bayer?: string;
  readonly c?: string;
}

interface Star {
  readonly at: Point;
  readonly magnitude: number;
  readonly name: string;
  readonly letter: string;
  readonly constellation: string;
}

/** Figures that are worth knowing by sight. */
const FIGURES = (
  "And Aql Aqr Ari Aur Boo CMa Cnc Cap Car Cas Cen Cep Cet CrA CrB Crv Cru Cyg Del Dra Eri " +
  "Gem Gru Her Hya Leo Lep Lib Lyr Oph Ori Peg Per Psc Sco Sgr Sge Tau Tri TrA UMa UMi Vir"
).split(" ");

/** Where the catalogue's Latin differs from the list of the International Astronomical Union. */
const LATIN: Readonly<Record<string, readonly [name: string, genitive: string]>> = {
  CrA: ["Corona Australis", "Coronae Australis"],
  Cru: ["Crux", "Crucis"],
  Ser: ["Serpens", "Serpentis"],
};

/** English meanings the catalogue leaves in Latin, or replaces by an asterism or a vaguer word. */
const ENGLISH: Readonly<Record<string, string>> = {
  Aqr: "Water Bearer",
  Cae: "Chisel",
  Cap: "Sea Goat",
  Cha: "Chameleon",
  Cir: "Drawing Compasses",
  Cru: "Southern Cross",
  Dor: "Dolphinfish",
  Equ: "Little Horse",
  Eri: "River Eridanus",
  Hyi: "Water Snake",
  Lib: "Scales",
  Men: "Table Mountain",
  Nor: "Carpenter's Square",
  Oph: "Serpent Bearer",
  Pic: "Painter's Easel",
  Pup: "Stern",
  Pyx: "Mariner's Compass",
  Ret: "Reticle",
  UMa: "Great Bear",
  UMi: "Little Bear",
  Vir: "Maiden",
};

/** Faintest magnitude of the stars drawn beside a figure, and of the named stars. */
const LIMITS = { drawn: 5, named: 2.6 } as const;
/** Stars closer than this look like one in a drawing. */
const PAIR_DEGREES = 0.02;
const LINE_WIDTH = 118;

const CONSTELLATION_COLUMNS = "abbreviation | name | genitive | English | Bayer letter of a bright star | centre";
const STAR_COLUMNS =
  "name | Bayer letter | constellation | right ascension,declination | magnitude | * brightest of it";
const FIGURE_COLUMNS = "abbreviation, stars as right ascension,declination,magnitude, lines as numbers of stars";

const resolve = createRequire(import.meta.url).resolve;
const load = <T>(file: string): T => JSON.parse(readFileSync(resolve(`d3-celestial/data/${file}`), "utf8")) as T;

const constellations =
  load<Collection<{ name: string; gen: string; en: string }, Point>>("constellations.json").features;
const lines = load<Collection<unknown, readonly (readonly Point[])[]>>("constellations.lines.json").features;
const stars = readStars();

write("constellation-table", "CONSTELLATION_TABLE", CONSTELLATION_COLUMNS, constellationRows());
write("star-table", "STAR_TABLE", STAR_COLUMNS, starRows());
write("figure-table", "FIGURE_TABLE", FIGURE_COLUMNS, FIGURES.map(figureBlock));

function readStars(): readonly Star[] {
  const names = load<Readonly<Record<string, NameRow>>>("starnames.json");
  return load<Collection<{ mag: number }, Point>>("stars.8.json").features.map((feature) => {
    const row = names[String(feature.id)];
    return {
      at: feature.geometry.coordinates,
      magnitude: feature.properties.mag,
      name: row?.name ?? "",
      letter: row?.bayer ?? "",
      constellation: row?.c ?? "",
    };
  });
}

/** One row for each of the 88; the catalogue lists the two parts of Serpens separately. */
function constellationRows(): readonly string[] {
  const ids = [...new Set(constellations.map((feature) => String(feature.id)))].sort();
  return ids.map((id) => {
    const feature = constellations.find((one) => one.id === id);
    if (!feature) throw new Error(`no constellation ${id}`);
    const { name, gen, en } = feature.properties;
    const [latin, genitive] = LATIN[id] ?? [name, gen];
    const [ra, dec] = centre([...new Set(figureLines(id).flat().map(starUnder))].map((star) => star.at));
    const letter = byBrightness(id).find((star) => /^[α-ω]$/u.test(star.letter))?.letter ?? "";
    return [id, latin, genitive, ENGLISH[id] ?? en, letter, `${Math.round(ra)},${Math.round(dec)}`].join(" | ");
  });
}

/** Bright stars with a proper name and an undivided Bayer letter; a * marks the brightest of a constellation. */
function starRows(): readonly string[] {
  return stars
    .filter((star) => star.magnitude <= LIMITS.named && star.name !== "" && /^[α-ω]$/u.test(star.letter))
    .sort((a, b) => a.magnitude - b.magnitude)
    .map((star) => {
      const brightest = byBrightness(star.constellation)[0] === star ? " | *" : "";
      return `${star.name} | ${star.letter} | ${star.constellation} | ${placeText(star)} | ${star.magnitude}${brightest}`;
    });
}

function figureBlock(id: string): string {
  const paths = figureLines(id).map((line) => line.map(starUnder));
  const figure = [...new Set(paths.flat())];
  const beside = byBrightness(id).filter((star) => star.magnitude <= LIMITS.drawn && !figure.includes(star));
  const places = [...figure, ...beside].map((star) => `${placeText(star)},${star.magnitude}`);
  return wrap([id, ...places, ...paths.map((path) => path.map((star) => figure.indexOf(star)).join("-"))]);
}

/** The star at the end of a line: of a close pair the brighter one, whichever the line was drawn to. */
function starUnder([lon, lat]: Point): Star {
  const east = Math.cos((lat * Math.PI) / 180);
  const near = stars.filter(({ at }) => Math.hypot((at[0] - lon) * east, at[1] - lat) < PAIR_DEGREES);
  if (near.length === 0) throw new Error(`a line ends at ${lon}, ${lat}, where there is no star`);
  return near.reduce((best, star) => (star.magnitude < best.magnitude ? star : best));
}

function figureLines(id: string): readonly (readonly Point[])[] {
  return lines.filter((feature) => feature.id === id).flatMap((feature) => feature.geometry.coordinates);
}

function byBrightness(id: string): readonly Star[] {
  return stars.filter((star) => star.constellation === id).sort((a, b) => a.magnitude - b.magnitude);
}

/** The direction of the mean of unit vectors, right ascension 0 to 360. */
function centre(points: readonly Point[]): Point {
  const sum = [0, 0, 0] as [number, number, number];
  for (const [lon, lat] of points) {
    const [ra, dec] = [(lon * Math.PI) / 180, (lat * Math.PI) / 180];
    sum[0] += Math.cos(dec) * Math.cos(ra);
    sum[1] += Math.cos(dec) * Math.sin(ra);
    sum[2] += Math.sin(dec);
  }
  const ra = (Math.atan2(sum[1], sum[0]) * 180) / Math.PI;
  return [(ra + 360) % 360, (Math.atan2(sum[2], Math.hypot(sum[0], sum[1])) * 180) / Math.PI];
}

function placeText(star: Star): string {
  return `${Number(((star.at[0] + 360) % 360).toFixed(3))},${Number(star.at[1].toFixed(3))}`;
}

function wrap(words: readonly string[]): string {
  const rows: string[] = [];
  for (const word of words) {
    const last = rows.at(-1);
    if (last !== undefined && last.length + word.length < LINE_WIDTH) rows[rows.length - 1] = `${last} ${word}`;
    else rows.push(word);
  }
  return rows.join("\n");
}

function write(file: string, constant: string, columns: string, rows: readonly string[]): void {
  const text = [
    "// Written by scripts/extract-sky-data.ts from d3-celestial (BSD-3-Clause, see NOTICE). Do not edit by hand.",
    "",
    "/**",
    " * Table read by `sky-tables.ts`; positions are J2000, in degrees. Columns:",
    ` * ${columns}`,
    " */",
    `export const ${constant} = \``,
    ...rows,
    "`;",
    "",
  ].join("\n");
  writeFileSync(new URL(`../src/demo/sky/${file}.ts`, import.meta.url), text);
}
