// What it costs to print 1,000 cards on both sides with 200 pictures: Longhold beside LaTeX (two engines) and headless
// Chromium, the same marks at the same places, in one run. Run: npm run bench:kit   (two minutes; --small for a tenth)
//
// Every program starts anew, gets the laid-out pages in its own language with the same JPEG files, fits every text to
// its box by trying sizes, and ends with a PDF; start-up counts. They take turns, and the medians of all turns are
// printed. LaTeX and Chromium come from Debian's packages; one that is not installed is named and left out.
import { spawnSync } from "node:child_process";
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { serialize } from "node:v8";
import { type PDFDict, PDFDocument, PDFName, PDFStream } from "pdf-lib";
import type { PictureRecord } from "../src/app/ports.ts";
import { kitPages } from "../src/core/kit/kit-pages.ts";
import { kitPlan } from "../tests/support/kit-plan.ts";
import { benchCards, benchPictures } from "./kit-cards.ts";
import { kitHtml } from "./kit-html.ts";
import { kitLatex } from "./kit-latex.ts";
import { type Cost, watchProcess } from "./watch-process.ts";

const small = process.argv.includes("--small");
const size = small ? { cards: 100, pictures: 20 } : { cards: 1000, pictures: 200 };
const TURNS = 3;

/** A program that prints the kit, and the PDF that it writes in the folder. */
interface Printer {
  readonly name: string;
  readonly program: string;
  readonly args: readonly string[];
  readonly pdf: string;
  /** The Debian packages that hold it. */
  readonly packages: string;
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

/** The font of kits, as the others find it beside their source. */
const FONTS = {
  "regular.ttf": "@expo-google-fonts/noto-sans/400Regular/NotoSans_400Regular.ttf",
  "bold.ttf": "@expo-google-fonts/noto-sans/700Bold/NotoSans_700Bold.ttf",
};

/** Writes what the printers read. */
async function prepare(folder: string): Promise<readonly Printer[]> {
  const plan = kitPlan({ cards: benchCards(size.cards) });
  const pictures = await benchPictures(size.pictures);
  const pages = kitPages(plan);
  if (!pages.ok) throw new Error(pages.error);
  writeFileSync(join(folder, "order"), serialize({ plan, pictures }));
  mkdirSync(join(folder, "pictures"));
  for (const { hash, bytes } of pictures.values()) writeFileSync(join(folder, fileOf(hash)), bytes);
  const dotsOf = (picture: string): PictureRecord => pictures.get(picture) as PictureRecord;
  for (const [file, from] of Object.entries(FONTS))
    copyFileSync(fileURLToPath(import.meta.resolve(from)), join(folder, file));
  for (const engine of ["pdflatex", "lualatex"] as const)
    writeFileSync(join(folder, `${engine}.tex`), kitLatex(pages.value, engine, { fileOf, dotsOf }));
  writeFileSync(join(folder, "kit.html"), kitHtml(pages.value, { fileOf, dotsOf }));
  return printers(folder);
}

const fileOf = (picture: string): string => `pictures/${picture}.jpg`;

const printers = (folder: string): readonly Printer[] => [
  {
    name: "Longhold",
    program: process.execPath,
    args: [here("./print-kit-once.mjs"), "order", "longhold.pdf"],
    pdf: "longhold.pdf",
    packages: "",
  },
  ...(["pdflatex", "lualatex"] as const).map((engine) => ({
    name: engine,
    program: engine,
    args: ["-interaction=batchmode", "-halt-on-error", `${engine}.tex`],
    pdf: `${engine}.pdf`,
    packages: `texlive-latex-recommended and ${engine === "pdflatex" ? "lmodern" : "texlive-luatex"}`,
  })),
  {
    name: "Chromium",
    program: "chromium",
    args: [
      "--headless",
      "--no-sandbox",
      "--disable-gpu",
      "--no-pdf-header-footer",
      `--user-data-dir=${join(folder, "profile")}`,
      "--print-to-pdf=chromium.pdf",
      pathToFileURL(join(folder, "kit.html")).href,
    ],
    pdf: "chromium.pdf",
    packages: "chromium",
  },
];

const installed = ({ program }: Printer): boolean => spawnSync(program, ["--version"]).error === undefined;

/** Pages and pictures of a PDF: who leaves something out has not printed the kit. */
async function contents(
  file: string,
): Promise<{ readonly pages: number; readonly pictures: number; readonly bytes: number }> {
  const bytes = readFileSync(file);
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  const pictures = document.context
    .enumerateIndirectObjects()
    .filter(([, object]) => object instanceof PDFStream && isImage(object.dict)).length;
  return { pages: document.getPageCount(), pictures, bytes: bytes.length };
}

const isImage = (dict: PDFDict): boolean => dict.lookup(PDFName.of("Subtype")) === PDFName.of("Image");

const folder = mkdtempSync(join(tmpdir(), "longhold-bench-"));
try {
  const all = await prepare(folder);
  const there = all.filter(installed);
  for (const { name, packages } of all.filter((one) => !there.includes(one)))
    console.log(`${name} is not installed and left out; Debian has it in ${packages}.`);
  console.log(
    `${size.cards} cards on both sides, ${size.pictures} pictures; ${TURNS} turns on ${cpus().length} cores, load ${loadavg()[0]?.toFixed(1)}`,
  );
  // A first run that is not counted: some build a store of fonts or a profile.
  for (const { program, args } of there) await watchProcess(program, args, folder);
  const costs = new Map<Printer, Cost[]>(there.map((printer) => [printer, []]));
  for (let turn = 0; turn < TURNS; turn++)
    for (const [{ program, args }, list] of costs) list.push(await watchProcess(program, args, folder));
  const rows = [...costs].map(([printer, list]) => {
    const medianOf = (what: keyof Cost): number => median(list.map((cost) => cost[what]));
    return { printer, seconds: medianOf("seconds"), cpu: medianOf("cpu"), megabytes: medianOf("megabytes") };
  });
  const own = rows.find(({ printer }) => printer.name === "Longhold");
  console.log(`load at the end ${loadavg()[0]?.toFixed(1)}; in brackets: against Longhold`);
  console.log("| | seconds | seconds of a core | MB at most | pages | pictures | MB of PDF |");
  console.log("| --- | --- | --- | --- | --- | --- | --- |");
  for (const { printer, ...cost } of rows) {
    const { pages, pictures, bytes } = await contents(join(folder, printer.pdf));
    const cell = (what: keyof Cost, digits: number): string =>
      `${cost[what].toFixed(digits)} (${(cost[what] / (own?.[what] ?? Number.NaN)).toFixed(2)})`;
    const cells = [cell("seconds", 2), cell("cpu", 2), cell("megabytes", 0), pages, pictures];
    console.log(`| ${printer.name} | ${cells.join(" | ")} | ${(bytes / 1e6).toFixed(1)} |`);
  }
} finally {
  rmSync(folder, { recursive: true });
}
