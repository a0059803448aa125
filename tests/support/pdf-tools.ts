// PDFs read by programs that had no part in making them: poppler and MuPDF.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A page as grey dots, 0 black … 255 white. */
export interface GreyPage {
  readonly width: number;
  readonly height: number;
  readonly dots: Uint8Array;
}

/** A picture in a PDF: dots, packing, and dots an inch as it is printed. */
export interface PdfImage {
  readonly width: number;
  readonly height: number;
  readonly packing: string;
  readonly dpi: number;
}

/** What the readers find in a PDF. */
export interface PdfReading {
  /** Lines of `pdfinfo` for every page, with the boxes of each. */
  readonly info: string;
  /** What the file says of itself (XMP), and its structure for those who hear it. */
  readonly metadata: string;
  readonly structure: string;
  /** One row of `pdfimages` for every picture. */
  readonly images: readonly PdfImage[];
  /** One row of `pdffonts` for every font. */
  readonly fonts: readonly string[];
  /** Text of each page, in the order in which it stands in the file. */
  readonly pages: readonly string[];
  /** Text of each page as it is seen, line by line, without marks of direction. */
  readonly seen: readonly string[];
  /** What the readers complained about. */
  readonly complaints: string;
  /** A page, counted from 1, drawn with so many dots an inch. */
  draw(page: number, dpi: number): GreyPage;
  close(): void;
}

/** What readers put round text that runs from right to left. */
const DIRECTION = /[\u202a-\u202e]/g;

/** Reads a PDF. Throws one clear sentence if a reader is not installed. */
export function readPdf(pdf: Uint8Array): PdfReading {
  const folder = mkdtempSync(join(tmpdir(), "longhold-pdf-"));
  const file = join(folder, "kit.pdf");
  writeFileSync(file, pdf);
  let complaints = "";
  const run = (program: string, ...args: string[]): string => {
    const done = spawnSync(program, args, { encoding: "utf8", maxBuffer: 1 << 28 });
    if (done.error)
      throw new Error("These tests read PDFs with other programs: install Debian's poppler-utils and mupdf-tools.");
    // Debian builds MuPDF without colour profiles, and says so of every PDF.
    complaints += done.stderr.replace(/^warning: ICC support is not available\n/gm, "");
    if (done.status !== 0) complaints += `${program} ended with ${done.status}\n`;
    return done.stdout;
  };
  const info = run("pdfinfo", "-box", "-l", "9999", file);
  const [metadata, structure] = [run("pdfinfo", "-meta", file), run("pdfinfo", "-struct-text", file)];
  const images = run("pdfimages", "-list", file).trim().split("\n").slice(2).map(parseImage);
  const fonts = run("pdffonts", file).trim().split("\n").slice(2);
  const pages = run("pdftotext", "-raw", file, "-").split("\f").slice(0, -1);
  const seen = run("pdftotext", file, "-").replace(DIRECTION, "").split("\f").slice(0, -1);
  run("mutool", "draw", "-q", "-F", "text", "-o", join(folder, "mutool.txt"), file);
  return {
    info,
    metadata,
    structure,
    images,
    fonts,
    pages,
    seen,
    complaints,
    draw(page, dpi) {
      run(
        "pdftoppm",
        "-gray",
        "-r",
        `${dpi}`,
        "-f",
        `${page}`,
        "-l",
        `${page}`,
        "-singlefile",
        file,
        join(folder, "page"),
      );
      return parseGrey(readFileSync(join(folder, "page.pgm")));
    },
    close: () => rmSync(folder, { recursive: true }),
  };
}

/** Columns: page, number, type, width, height, colour, components, bits, encoding, interpolated, object, ID, x-ppi, y-ppi … */
function parseImage(row: string): PdfImage {
  const cells = row.trim().split(/\s+/);
  return { width: Number(cells[3]), height: Number(cells[4]), packing: cells[8] ?? "", dpi: Number(cells[12]) };
}

/** A binary PGM: "P5", width, height, 255, then a byte for every dot. */
function parseGrey(bytes: Buffer): GreyPage {
  const [head = "", width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.toString("latin1", 0, 64)) ?? [];
  return { width: Number(width), height: Number(height), dots: bytes.subarray(head.length) };
}
