// Pages drawn for the preview by the engine that prints them, in a thread that is kept while it is asked.
import type { Worker } from "node:worker_threads";
import type { PreviewAnswer, PreviewOrder } from "./preview-worker.ts";
import { startKitWorker } from "./start-kit-worker.ts";
import type { DrawnPages, KitDocument } from "./typeset.ts";

/** Draws pages beside whoever asks. */
export interface Previewer {
  draw(document: KitDocument): Promise<DrawnPages>;
  /** Ends the thread; a later question would start another. */
  close(): Promise<void>;
}

/** The thread ends when nobody has asked for so long: its fonts and the engine take some memory. */
const IDLE_MS = 120_000;

interface Asker {
  readonly resolve: (drawn: DrawnPages) => void;
  readonly reject: (error: Error) => void;
}

/** A previewer; its thread starts with the first question. */
export function createPreviewer(idleMs = IDLE_MS): Previewer {
  let worker: Worker | null = null;
  let asked = 0;
  let idle: NodeJS.Timeout | undefined;
  const waiting = new Map<number, Asker>();
  const end = async (): Promise<void> => {
    clearTimeout(idle);
    const ending = worker;
    worker = null;
    for (const { reject } of waiting.values()) reject(new Error("the preview was ended"));
    waiting.clear();
    await ending?.terminate();
  };
  const rest = (): void => {
    clearTimeout(idle);
    idle = setTimeout(() => void end(), idleMs).unref();
  };
  const hear = (answer: PreviewAnswer): void => {
    const asker = waiting.get(answer.id);
    waiting.delete(answer.id);
    if (waiting.size === 0) rest();
    if ("drawn" in answer) asker?.resolve(answer.drawn);
    else asker?.reject(new Error(answer.message));
  };
  const start = (): Worker => {
    const started = startKitWorker("preview-worker", null);
    started.on("message", hear);
    started.on("error", () => void (worker === started && end()));
    started.unref();
    return started;
  };
  return {
    draw(document) {
      worker ??= start();
      clearTimeout(idle);
      asked += 1;
      const order: PreviewOrder = { id: asked, document };
      return new Promise((resolve, reject) => {
        waiting.set(order.id, { resolve, reject });
        worker?.postMessage(order);
      });
    },
    close: end,
  };
}
