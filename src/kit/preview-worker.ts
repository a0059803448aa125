// Draws pages for the preview, one order after another, with the fonts kept open.
import { parentPort } from "node:worker_threads";
import { drawFormulae } from "./draw-formulae.ts";
import { type DrawnPages, drawPages, type KitDocument } from "./typeset.ts";

/** Pages to draw, under a number by which the answer is told. */
export interface PreviewOrder {
  readonly id: number;
  readonly document: KitDocument;
}

/** What came of it; `message` is a bug. */
export type PreviewAnswer =
  | { readonly id: number; readonly drawn: DrawnPages }
  | { readonly id: number; readonly message: string };

const port = parentPort;
port?.on("message", async ({ id, document }: PreviewOrder) => {
  try {
    port.postMessage({
      id,
      drawn: drawPages({ ...document, formulae: await drawFormulae(document.pages) }),
    } satisfies PreviewAnswer);
  } catch (error) {
    const message = error instanceof Error ? (error.stack ?? error.message) : String(error);
    port.postMessage({ id, message } satisfies PreviewAnswer);
  }
});
