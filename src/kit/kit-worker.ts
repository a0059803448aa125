// Prints one kit beside whoever asked for it, and ends.
import { parentPort, workerData } from "node:worker_threads";
import { FailureError, type FailureKind } from "../app/failure.ts";
import type { PictureRecord } from "../app/ports.ts";
import type { KitPlan } from "../core/kit/kit-pages.ts";
import type { KitProgress } from "./kit-progress.ts";
import { type PrintedKit, printKit } from "./print-kit.ts";

/** What the worker is started with. */
export interface KitOrder {
  readonly plan: KitPlan;
  readonly pictures: ReadonlyMap<string, PictureRecord>;
}

/** What it answers: progress any number of times, then one of the others. */
export type KitAnswer =
  | { readonly kind: "progress"; readonly progress: KitProgress }
  | { readonly kind: "printed"; readonly kit: PrintedKit }
  | { readonly kind: "failed"; readonly failure: FailureKind; readonly message: string };

const port = parentPort;
if (port) {
  const { plan, pictures } = workerData as KitOrder;
  const answer = (message: KitAnswer, transfer: readonly ArrayBuffer[] = []): void =>
    port.postMessage(message, [...transfer]);
  try {
    const kit = await printKit(plan, pictures, (progress) => answer({ kind: "progress", progress }));
    // Bytes of their own are handed over; a part of something larger has to be copied.
    const pdf = new Uint8Array(kit.pdf);
    answer({ kind: "printed", kit: { ...kit, pdf } }, [pdf.buffer]);
  } catch (error) {
    if (!(error instanceof FailureError)) throw error;
    answer({ kind: "failed", failure: error.failure.kind, message: error.failure.message });
  }
}
