// Prints a kit in a thread of its own: whoever asked stays live, and the memory it took is given back when it ends.
import { FailureError } from "../app/failure.ts";
import type { PictureRecord } from "../app/ports.ts";
import type { KitPlan } from "../core/kit/kit-pages.ts";
import type { KitProgress } from "./kit-progress.ts";
import type { KitAnswer, KitOrder } from "./kit-worker.ts";
import type { PrintedKit } from "./print-kit.ts";
import { startKitWorker } from "./start-kit-worker.ts";

/** How the printing is stopped and watched. */
export interface KitWatch {
  readonly signal?: AbortSignal;
  readonly onProgress?: (progress: KitProgress) => void;
}

/**
 * Prints a kit as `printKit` does, and fails as it does. When `signal` aborts it fails at once with `stopped`; the
 * thread ends as soon as the engine lets go, which is after the step it is at.
 */
export function printKitInWorker(
  plan: KitPlan,
  pictures: ReadonlyMap<string, PictureRecord>,
  { signal, onProgress }: KitWatch = {},
): Promise<PrintedKit> {
  const stopped = (): FailureError => new FailureError("stopped", "The printing was stopped.");
  if (signal?.aborted) return Promise.reject(stopped());
  const worker = startKitWorker("kit-worker", { plan, pictures } satisfies KitOrder);
  const printed = new Promise<PrintedKit>((resolve, reject) => {
    signal?.addEventListener("abort", () => reject(stopped()), { once: true });
    worker.on("message", (answer: KitAnswer) => {
      if (answer.kind === "progress") onProgress?.(answer.progress);
      else if (answer.kind === "printed") resolve(answer.kit);
      else reject(new FailureError(answer.failure, answer.message));
    });
    worker.on("error", reject);
    worker.on("exit", () => reject(new Error("the printing ended without a word")));
  });
  return printed.finally(() => void worker.terminate());
}
