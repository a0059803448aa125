import { expect, it } from "vitest";
import { guessDelimiter } from "./guess-delimiter.ts";

const lists: readonly (readonly [string, string, "," | "\t" | ";"])[] = [
  ["plain commas", "Vega,Lyra\nDeneb,Cygnus\n", ","],
  ["a single row", "Vega;Lyra", ";"],
  ["a paste with tabs", "Vega\tLyra\nDeneb\tCygnus", "\t"],
  ["tabs before commas in prose", "Vega\tbright, white, near\nDeneb\tbright, white, far\n", "\t"],
  ["tabs before semicolons in every cell", "Vega\tα; Lyra\nDeneb\tα; Cygnus\n", "\t"],
  ["semicolons before decimal commas", "Sirius;-1,46\nCanopus;-0,74\nArcturus;-0,05\n", ";"],
  ["semicolons before one comma a row", "Vega;Lyra, the Lyre\nDeneb;Cygnus, the Swan\n", ";"],
  ["commas before semicolons between tags", "Vega,Lyra,summer; star\nDeneb,Cygnus,summer; star\n", ","],
  ["commas with a blank after them", "Vega, Lyra\nDeneb, Cygnus\nAltair, Aquila\n", ","],
  ["quoted cells with other signs in them", '"Vega; Wega","Lyra; the Lyre"\n"Deneb; tail","Cygnus; the Swan"\n', ","],
  ["names of columns", "note;prompt;answer\n1,2;a,b;c,d\n", ";"],
  ["rows of different lengths", "Vega,Lyra\nDeneb,Cygnus,a tail\nAltair,Aquila\n", ","],
];

it.each(lists)("recognises %s", (_, text, delimiter) => {
  expect(guessDelimiter(text)).toBe(delimiter);
});

const columns: readonly (readonly [string, string])[] = [
  ["without commas", "The brightest star of Lyra is [Vega].\nThe brightest star of Cygnus is [Deneb].\n"],
  [
    "with one comma in every line",
    "In Lyra, the brightest star is [Vega].\nIn Cygnus, the brightest star is [Deneb].\n",
  ],
  ["with a comma in a gap", "The Summer Triangle is [Vega,Deneb,Altair]\nThe Pointers are [Dubhe,Merak]\n"],
  [
    "with commas and semicolons",
    "In Lyra, it is [Vega]; it is white.\nIn Cygnus, it is [Deneb].\nIn Aquila it is [Altair].\n",
  ],
  ["under the name of its column", "statement\nIn Lyra, the brightest star is [Vega].\n"],
];

it.each(columns)("does not divide a list of one column %s", (_, text) => {
  const delimiter = guessDelimiter(text);
  expect(text).not.toContain(delimiter);
});

it("takes the comma for an empty list", () => {
  expect(guessDelimiter("")).toBe(",");
});

it("looks at the beginning of a long list only, and not at a row cut in two", () => {
  const text = `${"Vega\tLyra\n".repeat(20_000)}${"a,b,c,d\n".repeat(100_000)}`;
  const start = performance.now();
  expect(guessDelimiter(text)).toBe("\t");
  expect(performance.now() - start).toBeLessThan(500);
});
