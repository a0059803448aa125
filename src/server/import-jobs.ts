// The imports of a server, until each is saved, stopped or forgotten.
import { FailureError, found } from "../app/failure.ts";
import type { ImportChoices, ImportPreview, ImportStatus } from "../app/views.ts";
import type { ListMedia } from "../exchange/list-media.ts";
import { ImportJob } from "./import-job.ts";
import type { ImportInto } from "./import-worker.ts";
import type { Log } from "./logging.ts";

/** At most this many lists are held at once, each for at most this long without a word from its page. */
const LIMITS = { jobs: 4, idleMs: 30 * 60_000 } as const;

/** The imports of one server. */
export interface ImportJobs {
  open(bytes: Uint8Array<ArrayBuffer>, media: ListMedia): ImportStatus;
  preview(id: string, choices: ImportChoices): Promise<ImportPreview>;
  /** Starts saving; `status` tells how far it is. */
  accept(id: string, choices: ImportChoices, into: ImportInto): ImportStatus;
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

/** Opens the imports of a server. */
export function createImportJobs({ database, newId, log, alone }: ImportJobsOptions): ImportJobs {
  const jobs = new Map<string, { readonly job: ImportJob; lastWord: number }>();
  const jobOf = (id: string): ImportJob => {
    const held = found(jobs.get(id), "import. It may have been open too long; bring the list again");
    held.lastWord = Date.now();
    return held.job;
  };
  const forgetIdle = (): void => {
    for (const [id, { job, lastWord }] of jobs) {
      if (job.status.state === "saving" || Date.now() - lastWord < LIMITS.idleMs) continue;
      void job.end();
      jobs.delete(id);
    }
  };
  return {
    open(bytes, media) {
      forgetIdle();
      if ([...jobs.values()].filter(({ job }) => job.underWay).length >= LIMITS.jobs) {
        throw new FailureError("conflict", "Several lists are open already. Accept or discard one of them first.");
      }
      const job = new ImportJob(newId(), { database, bytes, media }, log);
      jobs.set(job.status.id, { job, lastWord: Date.now() });
      return job.status;
    },
    preview: (id, choices) => jobOf(id).read(choices),
    accept(id, choices, into) {
      const job = jobOf(id);
      job.save(choices, into, alone);
      return job.status;
    },
    status: (id) => jobOf(id).status,
    stop(id) {
      const job = jobOf(id);
      job.stop();
      return job.status;
    },
    async close() {
      for (const { job } of jobs.values()) await job.end();
    },
  };
}
