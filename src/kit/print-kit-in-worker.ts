// Prints a kit in a thread of its own: whoever asked stays live, and the memory it took is given back when it ends.
import { Worker } from "node:worker_threads";
import { FailureError } from "../app/failure.ts";
import type { PictureRecord } from "../app/ports.ts";
import type { KitPlan } from "../core/kit/kit-pages.ts";
import type { KitProgress } from "./kit-progress.ts";
import type { KitAnswer, KitOrder } from "./kit-worker.ts";
import type { PrintedKit } from "./print-kit.ts";

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
  const worker = startWorker({ plan, pictures });
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

/** The built program has its worker beside it; that of the sources needs the loader of the tests. */
function startWorker(workerData: KitOrder): Worker {
  if (!import.meta.url.endsWith(".ts")) return new Worker(new URL("./kit-worker.js", import.meta.url), { workerData });
  const [loader, worker] = [import.meta.resolve("tsx/esm/api"), new URL("./kit-worker.ts", import.meta.url).href];
  const start = `import("${loader}").then(({ register }) => { register(); return import("${worker}"); });`;
  return new Worker(start, { workerData, eval: true });
}
