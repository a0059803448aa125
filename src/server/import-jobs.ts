// Imports under way: each is a worker with a list in hand, until it is saved, stopped or forgotten.
import { Worker } from "node:worker_threads";
import { FailureError, found } from "../app/failure.ts";
import type { ImportTarget } from "../app/import-facts.ts";
import type { PictureRecord } from "../app/ports.ts";
import type { ImportChoices, ImportPreview, ImportStatus } from "../app/views.ts";
import type { WorkerAnswer, WorkerOrder, WorkerStart } from "./import-worker.ts";
import type { Log } from "./logging.ts";

/** At most this many lists are held at once, each for at most this long without a word from its page. */
const LIMITS = { jobs: 4, idleMs: 30 * 60_000 } as const;

const UNDER_WAY: ReadonlySet<ImportStatus["state"]> = new Set(["waiting", "reading", "saving"]);

interface Job {
  status: ImportStatus;
  readonly worker: Worker;
  readonly stop: Int32Array;
  lastWord: number;
  waiting: { resolve: (preview: ImportPreview) => void; reject: (error: unknown) => void } | null;
}

/** The imports of one server. */
export interface ImportJobs {
  open(bytes: Uint8Array<ArrayBuffer>, pictures: ReadonlyMap<string, PictureRecord>): ImportStatus;
  preview(id: string, choices: ImportChoices): Promise<ImportPreview>;
  /** Starts saving; `status` tells how far it is. */
  accept(id: string, choices: ImportChoices, target: ImportTarget): ImportStatus;
  status(id: string): ImportStatus;
  /** Stops saving, or discards a list that was not accepted. Nothing of it is kept. */
  stop(id: string): ImportStatus;
  close(): Promise<void>;
}

/** What the jobs need. `alone` runs work while nobody else writes to the database. */
export interface ImportJobsOptions {
  readonly database: string;
  readonly newId: () => string;
  readonly log: Log;
  readonly alone: <T>(work: () => Promise<T>) => Promise<T>;
}

const EMPTY = { done: 0, total: 0, saved: 0, duplicates: 0, problems: 0, message: null, subject: null } as const;

/** Opens the imports of a server. */
export function createImportJobs({ database, newId, log, alone }: ImportJobsOptions): ImportJobs {
  const jobs = new Map<string, Job>();
  const jobOf = (id: string): Job => {
    const job = found(jobs.get(id), "import. It may have been open too long; bring the list again");
    job.lastWord = Date.now();
    return job;
  };
  const say = (job: Job, order: WorkerOrder): void => job.worker.postMessage(order);

  function hear(job: Job, answer: WorkerAnswer, finish: () => void): void {
    const set = (change: Partial<ImportStatus>): void => {
      job.status = { ...job.status, ...change };
    };
    if (answer.kind === "progress") set({ done: answer.done, total: answer.total });
    else if (answer.kind === "preview") {
      set({ state: "waiting" });
      job.waiting?.resolve(answer.preview);
    } else if (answer.kind === "saved") {
      const { rows, saved, duplicates, problems, subject } = answer.outcome;
      set({ state: "done", done: rows, total: rows, saved, duplicates, problems, subject });
      finish();
    } else fail(job, answer, finish);
  }

  function fail(job: Job, answer: Extract<WorkerAnswer, { kind: "failed" }>, finish: () => void): void {
    const bug = answer.failure === "bug";
    if (bug) log("error", "import-failed", { message: answer.message });
    const message = bug ? "Something went wrong inside Longhold. Nothing was saved." : answer.message;
    const error = answer.failure === "bug" ? new Error(answer.message) : new FailureError(answer.failure, message);
    if (job.status.state === "reading") {
      job.status = { ...job.status, state: "waiting" };
      job.waiting?.reject(error);
      return;
    }
    job.status = { ...job.status, state: answer.failure === "stopped" ? "stopped" : "failed", message };
    finish();
  }

  function forgetIdle(): void {
    for (const [id, job] of jobs) {
      if (job.status.state === "saving" || Date.now() - job.lastWord < LIMITS.idleMs) continue;
      void job.worker.terminate();
      jobs.delete(id);
    }
  }

  return {
    open(bytes, pictures) {
      forgetIdle();
      if ([...jobs.values()].filter((job) => UNDER_WAY.has(job.status.state)).length >= LIMITS.jobs) {
        throw new FailureError("conflict", "Several lists are open already. Accept or discard one of them first.");
      }
      const stop = new Int32Array(new SharedArrayBuffer(4));
      const start: WorkerStart = { database, bytes, pictures: [...pictures], stop };
      const worker = new Worker(new URL("./import-worker.js", import.meta.url), {
        workerData: start,
        transferList: [bytes.buffer],
      });
      const job: Job = {
        status: { id: newId(), state: "waiting", ...EMPTY },
        worker,
        stop,
        lastWord: Date.now(),
        waiting: null,
      };
      jobs.set(job.status.id, job);
      return job.status;
    },
    preview(id, choices) {
      const job = jobOf(id);
      if (job.status.state !== "waiting")
        throw new FailureError("conflict", "This list is being read or saved already.");
      job.status = { ...job.status, state: "reading" };
      return new Promise((resolve, reject) => {
        job.waiting = { resolve, reject };
        listen(job, () => undefined);
        say(job, { kind: "preview", choices });
      });
    },
    accept(id, choices, target) {
      const job = jobOf(id);
      if (job.status.state !== "waiting")
        throw new FailureError("conflict", "This list is being read or saved already.");
      job.status = { ...job.status, state: "saving" };
      void alone(
        () =>
          new Promise<void>((resolve) => {
            listen(job, resolve);
            say(job, { kind: "save", choices, target });
          }),
      ).then(() => job.worker.terminate());
      return job.status;
    },
    status: (id) => jobOf(id).status,
    stop(id) {
      const job = jobOf(id);
      Atomics.store(job.stop, 0, 1);
      if (job.status.state === "waiting" || job.status.state === "reading") {
        job.waiting?.reject(new FailureError("stopped", "The list was put away."));
        job.status = { ...job.status, state: "stopped", message: "The list was put away. Nothing was saved." };
        void job.worker.terminate();
      }
      return job.status;
    },
    async close() {
      for (const job of jobs.values()) {
        Atomics.store(job.stop, 0, 1);
        await job.worker.terminate();
      }
    },
  };

  function listen(job: Job, finish: () => void): void {
    job.worker.removeAllListeners();
    job.worker.on("message", (answer: WorkerAnswer) => hear(job, answer, finish));
    job.worker.on("error", (error) => fail(job, { kind: "failed", failure: "bug", message: String(error) }, finish));
  }
}
