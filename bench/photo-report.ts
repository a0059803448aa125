// How well photographed sheets are read: made photos of really printed sheets, marked with pens of many kinds.
// Run: npm run report:photo   (about ten minutes; -- FIRST-SEED PART for other photos, or one part of them)
import { cpus } from "node:os";
import { SHEETS, type Size } from "../src/core/kit/paper.ts";
import {
  type Conditions,
  EVERYDAY,
  HARD,
  hasAccident,
  isMeant,
  type MadePhoto,
  makePhoto,
  wrongBoxes,
} from "../tests/support/paper-photo/made-photo.ts";
import { type PrintedPage, printSheet } from "../tests/support/paper-photo/printed-sheet.ts";
import { prepareDecoder, readJpeg } from "../tests/support/paper-photo/read-jpeg.ts";

/** Photos of each part. */
const PARTS = [
  { name: "everyday", count: 320, under: EVERYDAY },
  { name: "hard", count: 160, under: HARD },
] as const;

/** The limits of the reader were set on photos with seeds below this, and never on others. */
const FIRST_SEED = 4_000_000;

interface Tally {
  boxes: number;
  doubtful: number;
  readonly wrong: string[];
  /** Photos of which every box was read: all, and those without an accident of the pen, of how many. */
  clear: number;
  readonly clean: { clear: number; photos: number };
  readonly refused: Map<string, number>;
  /** How boxes with each mark were judged. */
  readonly byMark: Map<string, { empty: number; ticked: number; doubtful: number }>;
  /** Milliseconds to read each photo of 12 megapixels, decoding included. */
  readonly times: number[];
}

async function printedPages(): Promise<readonly PrintedPage[]> {
  const run = (first: number, step: number, count: number): readonly number[] =>
    Array.from({ length: count }, (_, i) => first + step * i);
  const from = { box: "observatory", date: "2026-11-26", day: 70 };
  const long = [
    { title: "Compartment 4, bundle 2", numbers: run(3, 17, 23) },
    { title: "Compartment 1", numbers: run(1042, 37, 111) },
    { title: "New, from the stock", numbers: run(9000, 1, 20) },
  ];
  const short = [{ title: "Compartment 2", numbers: run(318, 5, 26) }];
  const sheets = [SHEETS.a4 as Size, SHEETS.letter as Size].flatMap((size) =>
    [long, short].map((piles) => printSheet(piles, from, size)),
  );
  return (await Promise.all(sheets)).flat();
}

async function runPart(pages: readonly PrintedPage[], under: Conditions, seeds: readonly number[]): Promise<Tally> {
  const tally: Tally = {
    boxes: 0,
    doubtful: 0,
    wrong: [],
    clear: 0,
    clean: { clear: 0, photos: 0 },
    refused: new Map(),
    byMark: new Map(),
    times: [],
  };
  for (const seed of seeds) {
    const photo = await makePhoto(seed, pages, under);
    const begun = performance.now();
    const read = await readJpeg(photo.jpeg);
    if (photo.shot.width === 4000) tally.times.push(performance.now() - begun);
    if (read.ok) count(tally, photo, seed, read.value.boxes);
    else tally.refused.set(read.error.kind, (tally.refused.get(read.error.kind) ?? 0) + 1);
  }
  return tally;
}

function count(tally: Tally, photo: MadePhoto, seed: number, boxes: Parameters<typeof wrongBoxes>[1]): void {
  const doubtful = boxes.filter(({ judgement }) => judgement === "doubtful").length;
  tally.boxes += boxes.length;
  tally.doubtful += doubtful;
  if (doubtful === 0) tally.clear++;
  if (!hasAccident(photo)) {
    tally.clean.photos++;
    if (doubtful === 0) tally.clean.clear++;
  }
  tally.wrong.push(...wrongBoxes(photo, boxes).map((words) => `photo ${seed}, ${words}`));
  boxes.forEach(({ judgement }, i) => {
    const mark = photo.marks[i] as string;
    const known = tally.byMark.get(mark) ?? { empty: 0, ticked: 0, doubtful: 0 };
    known[judgement]++;
    tally.byMark.set(mark, known);
  });
}

const percent = (part: number, of: number): string => `${((100 * part) / of).toFixed(1)} %`;

function report(name: string, photos: number, tally: Tally): void {
  const refused = [...tally.refused.values()].reduce((sum, some) => sum + some, 0);
  const reasons = [...tally.refused].map(([kind, some]) => `${some} ${kind}`).join(", ");
  const times = tally.times.toSorted((a, b) => a - b);
  const rows = [
    ["photos", photos],
    ["refused", `${refused}${reasons ? ` (${reasons})` : ""}`],
    ["read without any help", `${tally.clear} (${percent(tally.clear, photos)})`],
    ["of those without an accident of the pen", `${tally.clean.clear} of ${tally.clean.photos}`],
    ["boxes read", tally.boxes],
    ["boxes shown to confirm", `${tally.doubtful} (${percent(tally.doubtful, tally.boxes)})`],
    ["boxes read wrongly without a doubt", tally.wrong.length],
    ["12 megapixels, median and slowest", `${times[times.length >> 1]?.toFixed(0)} ms, ${times.at(-1)?.toFixed(0)} ms`],
  ];
  console.log(`\n| ${name} | |\n| --- | --- |`);
  for (const [what, value] of rows) console.log(`| ${what} | ${value} |`);
  for (const words of tally.wrong) console.log(`wrong: ${words}`);
}

function reportMarks(tallies: readonly Tally[]): void {
  console.log("\n| mark | means missed | empty | ticked | shown |\n| --- | --- | --- | --- | --- |");
  for (const mark of new Set(tallies.flatMap(({ byMark }) => [...byMark.keys()]))) {
    const sum = (judgement: "empty" | "ticked" | "doubtful"): number =>
      tallies.reduce((all, { byMark }) => all + (byMark.get(mark)?.[judgement] ?? 0), 0);
    const meant = isMeant(mark as Parameters<typeof isMeant>[0]) ? "yes" : "no";
    console.log(`| ${mark} | ${meant} | ${sum("empty")} | ${sum("ticked")} | ${sum("doubtful")} |`);
  }
}

async function main(): Promise<void> {
  prepareDecoder();
  const first = Number(process.argv[2] ?? FIRST_SEED);
  const pages = await printedPages();
  const tallies: Tally[] = [];
  const only = process.argv[3];
  for (const [part, { name, count, under }] of PARTS.entries()) {
    if (only !== undefined && only !== name) continue;
    const seeds = Array.from({ length: count }, (_, i) => first + part * 10_000 + i);
    const tally = await runPart(pages, under, seeds);
    report(name, count, tally);
    tallies.push(tally);
  }
  reportMarks(tallies);
  console.log(`\nseeds from ${first}; ${cpus()[0]?.model ?? "unknown processor"}, Node ${process.version}`);
  if (tallies.some(({ wrong }) => wrong.length > 0)) process.exitCode = 1;
}

await main();
