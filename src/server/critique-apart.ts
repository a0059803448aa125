// The critique where it holds nobody up: small subjects at once, large ones in a worker.
import { Worker } from "node:worker_threads";
import type { Critique } from "../app/critique.ts";
import { critiqueFacts } from "../core/critique/critique-facts.ts";
import type { Note } from "../core/critique/note.ts";

/** Below this a worker takes longer to start than the work takes. */
const FEW_FACTS = 500;

/** Every note about some facts. */
export const critiqueApart: Critique = (facts) => {
  if (facts.length < FEW_FACTS) return Promise.resolve(critiqueFacts(facts));
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL("./critique-worker.js", import.meta.url), { workerData: facts });
    worker.once("message", (notes: readonly Note[]) => resolve(notes));
    worker.once("error", reject);
    worker.once("exit", () => reject(new Error("the critique ended without a word")));
  });
};
