// Kits that are printed and read again by other programs, and shapes that are found on their pages.
import sharp from "sharp";
import type { PictureRecord } from "../../src/app/ports.ts";
import type { KitPlan } from "../../src/core/kit/kit-pages.ts";
import { printKit } from "../../src/kit/print-kit.ts";
import { kitPlan } from "./kit-plan.ts";
import { type GreyPage, type PdfReading, readPdf } from "./pdf-tools.ts";

/** Dots an inch at which pages are drawn, and a dot in millimetres. */
export const DPI = 200;
export const DOT = 25.4 / DPI;

/** Millimetres by which front and back may differ; cutting by hand is no better. */
export const REGISTER = 0.2;

/** Prints and hands the reading to `look`. */
export async function reading<T>(
  more: Partial<KitPlan>,
  look: (pdf: PdfReading, notices: readonly string[]) => T | Promise<T>,
  pictures: ReadonlyMap<string, PictureRecord> = new Map(),
): Promise<T> {
  const kit = await printKit(kitPlan(more), pictures);
  const pdf = readPdf(kit.pdf);
  try {
    return await look(pdf, kit.notices);
  } finally {
    pdf.close();
  }
}

/** A black square, as a picture of the store. */
export async function blackSquare(): Promise<PictureRecord> {
  const bytes = await sharp({ create: { width: 600, height: 600, channels: 3, background: "#000" } })
    .png()
    .toBuffer();
  return { hash: "black", mime: "image/png", width: 600, height: 600, bytes: new Uint8Array(bytes) };
}

/** Centres of the black squares of a page in millimetres: black dots that are linked, more than a square of 10 mm. */
export function squaresOf({ width, height, dots }: GreyPage): readonly (readonly [number, number])[] {
  const seen = new Uint8Array(width * height);
  const centres: (readonly [number, number])[] = [];
  for (let start = 0; start < dots.length; start++) {
    if (seen[start] || (dots[start] as number) > 127) continue;
    const stack = [start];
    seen[start] = 1;
    let [count, sumX, sumY] = [0, 0, 0];
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      const x = at % width;
      [count, sumX, sumY] = [count + 1, sumX + x + 0.5, sumY + Math.floor(at / width) + 0.5];
      for (const next of [x > 0 ? at - 1 : -1, x + 1 < width ? at + 1 : -1, at - width, at + width]) {
        if (next < 0 || next >= dots.length || seen[next] || (dots[next] as number) > 127) continue;
        seen[next] = 1;
        stack.push(next);
      }
    }
    if (count * DOT * DOT > 100) centres.push([(sumX / count) * DOT, (sumY / count) * DOT]);
  }
  return centres;
}
