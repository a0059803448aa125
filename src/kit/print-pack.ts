// A class pack as a zip file: a PDF for each name, so that everybody can print their own.
import { zipSync } from "fflate";
import { FailureError } from "../app/failure.ts";
import type { PictureRecord } from "../app/ports.ts";
import type { KitPlan } from "../core/kit/kit-pages.ts";
import { type KitWatch, printKitInWorker } from "./print-kit-in-worker.ts";

/** A zip file, how many pages its PDFs have together, and what did not come out as it should. */
export interface PrintedPack {
  readonly zip: Uint8Array;
  readonly pages: number;
  readonly notices: readonly string[];
}

/** Progress over the whole pack. */
export interface PackWatch extends Omit<KitWatch, "onProgress"> {
  /** How many of the names are done. */
  readonly onName?: (done: number, total: number) => void;
}

/** Prints the kit of every name of the plan's pack, one after another. Fails as `printKitInWorker` does. */
export async function printPack(
  plan: KitPlan,
  pictures: ReadonlyMap<string, PictureRecord>,
  { onName, ...watch }: PackWatch = {},
): Promise<PrintedPack> {
  const names = plan.pack?.names ?? [];
  if (!plan.pack || names.length === 0) throw new FailureError("invalid-input", "There are no names to print for.");
  const files: Record<string, Uint8Array> = {};
  const notices = new Set<string>();
  let pages = 0;
  for (const [i, name] of names.entries()) {
    onName?.(i, names.length);
    const kit = await printKitInWorker({ ...plan, pack: { ...plan.pack, names: [name] } }, pictures, watch);
    files[fileOf(name, i)] = kit.pdf;
    for (const notice of kit.notices) notices.add(notice);
    pages += kit.pages;
  }
  // PDFs are packed within already.
  return { zip: zipSync(files, { mtime: "1980-01-01T00:00:00", level: 0 }), pages, notices: [...notices] };
}

/** The place keeps the order of the names, and two apart that would be one on some disk. */
function fileOf(name: string, place: number): string {
  const plain = name.replace(/[^\p{L}\p{M}\p{N}]+/gu, " ").trim();
  return `${String(place + 1).padStart(3, "0")} ${plain}`.trim().concat(".pdf");
}
