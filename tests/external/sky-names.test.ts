// The names on the cards of docs/kit-pages.md, compared with d3-celestial (BSD-3-Clause), whose names were collected by
// others, and with the weekdays of the Unicode CLDR, which Thai calls by the planets.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { describe, expect, it } from "vitest";

const require = createRequire(import.meta.url);
const read = (file: string) => JSON.parse(readFileSync(require.resolve(`d3-celestial/data/${file}.json`), "utf8"));

type Names = Readonly<Record<string, string>>;
const stars: readonly Names[] = Object.values(read("starnames"));
const constellations: readonly Names[] = read("constellations").features.map(
  ({ properties }: { readonly properties: Names }) => properties,
);
const planets: Readonly<Record<string, Names>> = read("planets");

/** Marks of direction and spaces round a name are of no account. */
const plain = (name: string | undefined) => (name ?? "").replace(/\p{Cf}/gu, "").trim();
const star = (name: string, language: string) => plain(stars.find((one) => one.name === name)?.[language]);
const constellation = (name: string, language: string) =>
  plain(constellations.find((one) => one.name === name)?.[language]);
const planet = (key: string, language: string) => plain(planets[key]?.[language]);

/** Thursday is Jupiter's day. 26 November 2026 is a Thursday. */
const thursday = new Intl.DateTimeFormat("th", { weekday: "long", timeZone: "UTC" }).format(Date.UTC(2026, 10, 26));

const list = readFileSync(new URL("../../docs/pages/names.tsv", import.meta.url), "utf8");
const rows = new Map(list.split("\n").map((line) => [line.split("\t")[3] ?? "", line]));

describe("a name of the sky in the list of the documents", () => {
  it.each([
    ["ar", "Altair", star("Altair", "ar")],
    ["ar", "Aquila", constellation("Aquila", "ar")],
    ["he", "Vega", star("Vega", "he")],
    ["he", "Lyra", constellation("Lyra", "he")],
    ["hi", "Saturn", planet("sat", "hi")],
    ["hi", "Jupiter", planet("jup", "hi")],
    ["th", "Jupiter", thursday.replace("วัน", "ดาว")],
    ["zh", "Lyra", constellation("Lyra", "zh")],
    ["zh", "Vega", star("Vega", "zh")],
    ["zh", "Deneb", star("Deneb", "zh")],
    ["ja", "Lyra", constellation("Lyra", "ja")],
    ["ja", "Vega", star("Vega", "ja")],
    ["ru", "Vega", star("Vega", "ru")],
  ])("(%s, %s) is spelt as in a catalogue", (language, _, name) => {
    expect(name).not.toBe("");
    expect(rows.get(language)).toContain(name);
  });
});
