// The fonts that pages are set in: Noto, which comes with the package, and which of it some texts need. The two
// large ones are optional dependencies; where one is missing, or a character is in none, that is told and not drawn
// as an empty box in silence.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { create, type Font } from "fontkit";

/** A family, its files, and what has to be installed for it. */
interface Family {
  readonly name: string;
  readonly package: string;
  readonly files: readonly string[];
}

const family = (name: string, end: string, prefix: string, weights: readonly string[]): Family => ({
  name,
  package: `@expo-google-fonts/noto-sans${end}`,
  files: weights.map((weight) => `${weight}/${prefix}_${weight}.ttf`),
});

const TWO_WEIGHTS = ["400Regular", "700Bold"] as const;

/** In the order in which they are asked for a character. */
const FAMILIES: readonly Family[] = [
  family("Noto Sans", "", "NotoSans", TWO_WEIGHTS),
  family("Noto Sans Arabic", "-arabic", "NotoSansArabic", TWO_WEIGHTS),
  family("Noto Sans Hebrew", "-hebrew", "NotoSansHebrew", TWO_WEIGHTS),
  family("Noto Sans Devanagari", "-devanagari", "NotoSansDevanagari", TWO_WEIGHTS),
  family("Noto Sans Thai", "-thai", "NotoSansThai", TWO_WEIGHTS),
  family("Noto Sans JP", "-jp", "NotoSansJP", TWO_WEIGHTS),
  family("Noto Sans SC", "-sc", "NotoSansSC", TWO_WEIGHTS),
];

/** Families that come first in a language; Devanagari shapes better in its own than in the general one. */
const FIRST: Readonly<Record<string, string>> = {
  ja: "Noto Sans JP",
  zh: "Noto Sans SC",
  hi: "Noto Sans Devanagari",
  mr: "Noto Sans Devanagari",
  ne: "Noto Sans Devanagari",
  sa: "Noto Sans Devanagari",
};

/** Languages that write quotation marks, dashes and dots as wide as their characters, … */
const EAST_ASIAN: ReadonlySet<string> = new Set(["zh", "ja"]);

/** … which Unicode does not tell from those of other languages. The same as the engine leaves to the second family. */
const SHARED_MARKS = /[\u00b7\u2013\u2014\u2018\u2019\u201c\u201d\u2025-\u2027\u2e3a]/u;

/** A text, the language it is set in, and how a notice names it. */
export interface TextToSet {
  readonly text: string;
  readonly language: string;
  readonly name: string;
}

/** What some texts need, and what cannot be had. */
export interface FontChoice {
  readonly blobs: readonly Buffer[];
  /** Families to ask for, in order, by language. */
  familiesFor(language: string): readonly string[];
  /** The text with a mark in place of every character that no font here has. */
  settable(text: string, language: string): string;
  /** Width of a text in ems, added up from its characters as its fonts have them. */
  widthOf(text: string, language: string, strong: boolean): number;
  /** One sentence for every text with characters that no font here has. */
  readonly notices: readonly string[];
}

/** Finds the families of some texts. Opens large fonts only if a character needs them. */
export function chooseFonts(
  texts: Iterable<TextToSet>,
  load: (family: string) => LoadedFamily | null = loadFamily,
): FontChoice {
  const used = new Map<string, LoadedFamily>();
  const general = load("Noto Sans");
  if (general) used.set("Noto Sans", general);
  const known = new Map<string, Map<string, LoadedFamily | null>>();
  const familyOf = (character: string, language: string): LoadedFamily | null => {
    const shared = EAST_ASIAN.has(language) && SHARED_MARKS.test(character);
    const first = `${shared ? "marks of " : ""}${FIRST[language] ?? ""}`;
    const families = known.get(first) ?? new Map<string, LoadedFamily | null>();
    known.set(first, families);
    let found = families.get(character);
    if (found === undefined) {
      const [latin = "", own = "", ...others] = ordered(language);
      const names = shared ? [own, latin, ...others] : [latin, own, ...others];
      const name = names.find((one) => load(one)?.has(character.codePointAt(0) ?? 0));
      found = name === undefined ? null : load(name);
      if (name !== undefined && found) used.set(name, found);
      families.set(character, found);
    }
    return found;
  };
  const lacks = (one: string, language: string): boolean => !isUnseen(one) && familyOf(one, language) === null;
  const widthOf = (text: string, language: string, strong: boolean): number => {
    let width = 0;
    for (const one of text) width += familyOf(one, language)?.advance(one.codePointAt(0) ?? 0, strong) ?? 0;
    return width;
  };
  const notices: string[] = [];
  for (const { text, language, name } of texts) {
    const missing = [...new Set(text)].filter((one) => lacks(one, language));
    if (missing.length > 0) notices.push(missingNotice(name, missing, load));
  }
  return {
    blobs: [...used.values()].flatMap((one) => one.blobs),
    familiesFor: (language) => ordered(language).filter((name) => used.has(name)),
    settable: (text, language) => [...text].map((one) => (lacks(one, language) ? REPLACEMENT : one)).join(""),
    widthOf,
    notices,
  };
}

/** Stands for what cannot be drawn: the replacement character of Unicode. */
const REPLACEMENT = "\ufffd";

/** White space and what only joins or parts its neighbours has no picture of its own. */
const isUnseen = (character: string): boolean => /[\s\p{Cf}\p{Variation_Selector}]/u.test(character);

/** The general family sets Latin letters and figures, whatever the language; then the language's own. */
function ordered(language: string): readonly string[] {
  const names = FAMILIES.map((one) => one.name);
  const first = FIRST[language];
  if (first === undefined) return names;
  const rest = names.filter((name) => name !== first);
  return first === "Noto Sans Devanagari" ? [first, ...rest] : ["Noto Sans", first, ...rest.slice(1)];
}

function missingNotice(
  name: string,
  missing: readonly string[],
  load: (family: string) => LoadedFamily | null,
): string {
  const shown = missing
    .slice(0, 8)
    .map((one) => `“${one}” (U+${one.codePointAt(0)?.toString(16).toUpperCase().padStart(4, "0")})`);
  const more = missing.length > shown.length ? ` and ${missing.length - shown.length} more` : "";
  const absent = FAMILIES.filter((one) => load(one.name) === null).map((one) => one.package);
  const remedy =
    absent.length > 0 ? ` These fonts are not installed: ${absent.join(", ")}; npm install adds them.` : "";
  return `No font here has ${shown.join(", ")}${more}, so a mark (\ufffd) is printed instead in ${name}.${remedy}`;
}

/** A family that is installed. */
export interface LoadedFamily {
  readonly blobs: readonly Buffer[];
  has(codePoint: number): boolean;
  /** How far a character moves the next one on, in ems. */
  advance(codePoint: number, strong: boolean): number;
}

const loaded = new Map<string, LoadedFamily | null>();
const require = createRequire(import.meta.url);

function loadFamily(name: string): LoadedFamily | null {
  const before = loaded.get(name);
  if (before !== undefined) return before;
  const family = FAMILIES.find((one) => one.name === name);
  const found = family ? openFamily(family) : null;
  loaded.set(name, found);
  return found;
}

function openFamily({ package: from, files }: Family): LoadedFamily | null {
  try {
    const blobs = files.map((file) => readFileSync(require.resolve(`${from}/${file}`)));
    const [font, strong] = blobs.map((blob) => create(blob)) as [Font, Font];
    return { blobs, has: (codePoint) => font.hasGlyphForCodePoint(codePoint), advance: advances(font, strong) };
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "MODULE_NOT_FOUND" || code === "ENOENT") return null;
    throw error;
  }
}

/** Opening a glyph takes long, so that each is opened once. */
function advances(font: Font, strong: Font): LoadedFamily["advance"] {
  const known = new Map<number, number>();
  return (codePoint, isStrong) => {
    const key = isStrong ? -codePoint : codePoint;
    const before = known.get(key);
    if (before !== undefined) return before;
    const face = isStrong ? strong : font;
    const width = face.glyphForCodePoint(codePoint).advanceWidth / face.unitsPerEm;
    known.set(key, width);
    return width;
  };
}
