// Takes the pictures of docs/kit-pages.md from pages that the program prints. Run: npm run docs:pages
// Needs poppler-utils (Debian), which draws the PDFs.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import sharp from "sharp";
import { longhold } from "../tests/support/program.ts";

const target = fileURLToPath(new URL("../docs/pages/", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "longhold-pages-"));
const data = join(folder, "data");

/** Pictures larger than this make the repository heavy. */
const MOST_BYTES = 150_000;

/** A picture: what is printed, which page of it is shown, and with how many dots an inch. */
interface Shot {
  readonly name: string;
  readonly kit: readonly string[];
  readonly page?: number;
  readonly dpi?: number;
  /** How much of the page is shown, from its top: all if it is not said. */
  readonly share?: number;
}

const sky = (parts: string, ...more: readonly string[]): readonly string[] => [
  "--subject",
  "The night sky",
  "--parts",
  parts,
  ...more,
];

/** Of the demo's box, as it stands after forty days. */
const OF_THE_BOX: readonly Shot[] = [
  { name: "pictures-folded", kit: sky("cards", "--turn", "fold", "--mark", "both"), page: 9, dpi: 90 },
  { name: "dividers", kit: sky("dividers") },
  { name: "ruler", kit: sky("ruler") },
  { name: "chart", kit: sky("chart"), page: 3, share: 0.62 },
  { name: "calendar", kit: sky("calendar") },
  { name: "pocket", kit: sky("pocket"), dpi: 100, share: 0.27 },
  { name: "sheet", kit: sky("sheet"), dpi: 90 },
  { name: "instructions", kit: sky("instructions"), dpi: 80 },
  { name: "calibration", kit: sky("calibration") },
];

const NAMES = ["--subject", "Names in the sky", "--parts", "cards"];
const FORMULAE = ["--subject", "Formulae of the sky", "--parts", "cards"];

/** Of the lists that lie beside the pictures. */
const OF_LISTS: readonly Shot[] = [
  { name: "names-front", kit: NAMES, dpi: 100 },
  { name: "names-back", kit: NAMES, page: 2, dpi: 100 },
  { name: "formulae-front", kit: FORMULAE, dpi: 100 },
  { name: "formulae-back", kit: FORMULAE, page: 2, dpi: 100 },
];

async function run(...words: readonly string[]): Promise<void> {
  const { status, stderr } = await longhold(...words, "--data", data);
  if (status !== 0) throw new Error(`longhold ${words.join(" ")} ended with ${status}: ${stderr}`);
  process.stderr.write(stderr);
}

async function take({ name, kit, page = 1, dpi = 70, share = 1 }: Shot): Promise<void> {
  const pdf = join(folder, "kit.pdf");
  await run("kit", ...kit, "--out", pdf);
  const drawn = spawnSync("pdftoppm", [
    "-png",
    "-r",
    `${dpi}`,
    "-f",
    `${page}`,
    "-singlefile",
    pdf,
    join(folder, "page"),
  ]);
  if (drawn.error || drawn.status !== 0) throw new Error("pdftoppm is missing or failed: install poppler-utils");
  const whole = sharp(readFileSync(join(folder, "page.png")));
  const { width, height } = await whole.metadata();
  const { size } = await whole
    .extract({ left: 0, top: 0, width, height: Math.round(height * share) })
    .extend({ top: 1, bottom: 1, left: 1, right: 1, background: "#c8c8c0" })
    .png({ palette: true, quality: 80, effort: 10 })
    .toFile(join(target, `${name}.png`));
  if (size > MOST_BYTES) throw new Error(`${name}.png has ${size} bytes, more than ${MOST_BYTES}`);
  process.stdout.write(`${name}.png ${size}\n`);
}

try {
  await run("demo");
  for (const shot of OF_THE_BOX) await take(shot);
  await run("import", join(target, "names.tsv"), "--subject", "Names in the sky", "--one-way", "--strict");
  await run("import", join(target, "formulae.tsv"), "--subject", "Formulae of the sky", "--one-way", "--strict");
  for (const shot of OF_LISTS) await take(shot);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
