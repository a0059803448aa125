// Threads in which the typesetting engine works, so that whoever asked stays live.
import { Worker } from "node:worker_threads";

/** Starts a worker of this folder. The built program has it beside itself; that of the sources needs the loader of the tests. */
export function startKitWorker(name: "kit-worker" | "preview-worker", workerData: unknown): Worker {
  if (!import.meta.url.endsWith(".ts")) return new Worker(new URL(`./${name}.js`, import.meta.url), { workerData });
  const [loader, worker] = [import.meta.resolve("tsx/esm/api"), new URL(`./${name}.ts`, import.meta.url).href];
  const start = `import("${loader}").then(({ register }) => { register(); return import("${worker}"); });`;
  return new Worker(start, { workerData, eval: true });
}
