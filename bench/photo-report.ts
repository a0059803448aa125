// How well photographed sheets are read: made photos of really printed sheets, marked with pens of many kinds.
// Run: npm run report:photo [-- COUNT [SEED]]
import { cpus } from "node:os";
import { SHEETS, type Size } from "../src/core/kit/paper.ts";
import { aimCamera } from "../tests/support/paper-photo/camera.ts";
import { type Dice, dice } from "../tests/support/paper-photo/dice.ts";
import { type MarkKind, MEANT, markBoxes } from "../tests/support/paper-photo/mark-boxes.ts";
import { DOTS_PER_MM, type PrintedPage, printSheet } from "../tests/support/paper-photo/printed-sheet.ts";
import { prepareDecoder, readJpeg } from "../tests/support/paper-photo/read-jpeg.ts";
import { takePhoto } from "../tests/support/paper-photo/take-photo.ts";

console.log(cpus().length);
async function pages(): Promise<readonly PrintedPage[]> {
  const run = (first: number, step: number, count: number) => Array.from({ length: count }, (_, i) => first + step * i);
  const from = { box: "b", date: "2026-11-26", day: 70 };
  const piles = [
    { title: "Compartment 4, bundle 2", numbers: run(3, 17, 23) },
    { title: "Compartment 1", numbers: run(1042, 37, 111) },
    { title: "New, from the stock", numbers: run(9000, 1, 20) },
  ];
  return [
    ...(await printSheet(piles, from, SHEETS.a4 as Size)),
    ...(await printSheet(piles, from, SHEETS.letter as Size)),
  ];
}
const SIZES = [
  [4000, 3000],
  [3264, 2448],
  [2560, 1920],
  [2048, 1536],
] as const;
const [count = 10, seed = 1] = process.argv.slice(2).map(Number);
async function main() {
  prepareDecoder();
  const printed = await pages();
  const tally = new Map<string, number>();
  const add = (key: string, n = 1) => tally.set(key, (tally.get(key) ?? 0) + n);
  for (let i = 0; i < count; i++) {
    const chance: Dice = dice(seed * 1_000_003 + i);
    const { page, drawing } = chance.pick(printed);
    const marked = { ...drawing, dots: Uint8Array.from(drawing.dots) };
    const kinds = markBoxes(marked, DOTS_PER_MM, page.boxes, { meant: 0.15, unmeant: 0.05 }, chance);
    const [w, h] = chance.pick(SIZES);
    const shot = aimCamera(page.head.size, { width: w, height: h, tilt: 35, bend: 1.2, shadow: 0.45 }, chance);
    const lens = {
      blur: chance.between(0.03, 0.3),
      noise: chance.between(1, 8),
      exposure: chance.between(170, 250),
      quality: Math.round(chance.between(50, 92)),
    };
    const t0 = performance.now();
    const jpeg = await takePhoto(marked, DOTS_PER_MM, shot, lens, chance);
    const t1 = performance.now();
    const read = await readJpeg(jpeg);
    const t2 = performance.now();
    const about = `#${i} ${w} tilt ${shot.tilt.toFixed(0)} scale ${shot.scale.toFixed(1)} blur ${lens.blur.toFixed(2)} noise ${lens.noise.toFixed(1)} q${lens.quality} made ${(t1 - t0).toFixed(0)} read ${(t2 - t1).toFixed(0)}`;
    if (!read.ok) {
      add(`refused ${read.error.kind}`);
      console.log(about, read.error);
      continue;
    }
    let bad = "";
    read.value.boxes.forEach((box, k) => {
      const kind = kinds[k] as MarkKind;
      const meant = (MEANT as readonly string[]).includes(kind);
      add(`${kind}: ${box.judgement}`);
      if ((meant && box.judgement === "empty") || (!meant && box.judgement === "ticked")) {
        add("WRONG");
        bad += ` WRONG ${kind} ${box.number} as ${box.judgement}`;
      }
    });
    console.log(
      about,
      "residual",
      read.value.residual.toFixed(2),
      "doubts",
      read.value.boxes.filter((b) => b.judgement === "doubtful").length,
      bad,
    );
  }
  for (const [k, v] of [...tally].sort()) console.log(k, v);
}
await main();
