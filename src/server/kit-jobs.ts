// Kits being made into PDFs, each in a thread of its own, until they are fetched or forgotten.
import { FailureError, found } from "../app/failure.ts";
import { type LibraryCard, picturesOf } from "../app/kit.ts";
import type { Context } from "../app/ports.ts";
import { type KitChoices, planKit } from "../app/print-plan.ts";
import { type KitJobView, kitNotices } from "../app/print-views.ts";
import { fileName } from "../exchange/export-subject.ts";
import { printKitInWorker } from "../kit/print-kit-in-worker.ts";
import { printPack } from "../kit/print-pack.ts";
import type { Log } from "./logging.ts";

/** Kits that are held: the newest, since each may be large. */
const MOST_JOBS = 3;

const BUG = "Something went wrong inside Longhold. Nothing was printed.";

/** A file that was made. */
export interface KitFile {
  readonly name: string;
  readonly mime: string;
  readonly bytes: Uint8Array;
}

/** The kits of a server. */
export interface KitJobs {
  /** Begins to make a kit; with `zip` a file for each name of its class pack. */
  open(choices: KitChoices, zip: boolean): Promise<KitJobView>;
  status(id: string): KitJobView;
  /** Stops the making; nothing of it is kept. */
  stop(id: string): KitJobView;
  /** What was made. Fails with `conflict` before it is. */
  file(id: string): KitFile;
  /** The cards of a kit as they were when it was made. Fails with `conflict` if they cannot be recorded as printed. */
  cards(id: string): readonly LibraryCard[];
  /** Notes by which step the cards of a kit were recorded; null when that was taken back. */
  noteRecorded(id: string, step: string | null): KitJobView;
  /** Notes that a step was taken back. */
  noteUndone(step: string): void;
  close(): void;
}

interface Job {
  view: KitJobView;
  file: KitFile | null;
  readonly cards: readonly LibraryCard[];
  readonly stop: AbortController;
}

/** Opens the kits of a server. */
export function createKitJobs(context: Context, newId: () => string, log: Log): KitJobs {
  const jobs = new Map<string, Job>();
  const jobOf = (id: string): Job => found(jobs.get(id), "kit any more. Make the PDF again");
  const note = (job: Job, more: Partial<KitJobView>): KitJobView => {
    job.view = { ...job.view, ...more };
    return job.view;
  };
  const stop = (job: Job): void => {
    if (job.view.state !== "making") return;
    note(job, { state: "stopped" });
    job.stop.abort();
  };
  const makeRoom = (): void => {
    for (const [id, job] of [...jobs].slice(0, Math.max(0, jobs.size - MOST_JOBS + 1))) {
      stop(job);
      jobs.delete(id);
    }
  };
  return {
    async open(choices, zip) {
      const planned = await planKit(context, choices);
      const { plan } = planned;
      if (zip && !plan.pack)
        throw new FailureError("invalid-input", "A zip file holds a PDF for each name; there are no names.");
      const pictures = await picturesOf(context, plan.cards);
      makeRoom();
      const cards = plan.pack || !plan.parts.has("cards") ? [] : planned.cards;
      const name = `${fileName(plan.style.title)}-kit.${zip ? "zip" : "pdf"}`;
      const job: Job = { view: newView(newId(), name, cards.length), file: null, cards, stop: new AbortController() };
      jobs.set(job.view.id, job);
      const watch = { signal: job.stop.signal };
      const made = zip
        ? printPack(plan, pictures, {
            ...watch,
            onName: (done, total) => note(job, { step: "names", done, total }),
          }).then(({ zip: bytes, ...rest }) => ({ bytes, mime: "application/zip", ...rest }))
        : printKitInWorker(plan, pictures, { ...watch, onProgress: (progress) => note(job, progress) }).then(
            ({ pdf: bytes, ...rest }) => ({ bytes, mime: "application/pdf", ...rest }),
          );
      made.then(
        ({ bytes, mime, pages, notices }) => {
          if (job.view.state !== "making") return;
          job.file = { name, mime, bytes };
          note(job, { state: "done", pages, bytes: bytes.length, notices: kitNotices(notices, planned.cards) });
        },
        (error: unknown) => {
          if (job.view.state !== "making") return;
          const expected = error instanceof FailureError;
          if (!expected) log("error", "kit-failed", { message: String(error) });
          note(job, { state: "failed", message: expected ? error.failure.message : BUG });
        },
      );
      return job.view;
    },
    status: (id) => jobOf(id).view,
    stop(id) {
      const job = jobOf(id);
      stop(job);
      return job.view;
    },
    file(id) {
      const { file } = jobOf(id);
      if (!file) throw new FailureError("conflict", "This kit is not made yet.");
      return file;
    },
    cards(id) {
      const { view, cards } = jobOf(id);
      if (view.state !== "done") throw new FailureError("conflict", "This kit is not made yet.");
      if (view.recorded !== null) throw new FailureError("conflict", "These cards are recorded as printed already.");
      if (cards.length === 0) throw new FailureError("conflict", "There are no cards of yours in this kit.");
      return cards;
    },
    noteRecorded: (id, step) => note(jobOf(id), { recorded: step }),
    noteUndone(step) {
      for (const job of jobs.values()) if (job.view.recorded === step) note(job, { recorded: null });
    },
    close() {
      for (const job of jobs.values()) stop(job);
    },
  };
}

const newView = (id: string, file: string, recordable: number): KitJobView => ({
  id,
  state: "making",
  step: "setting",
  done: 0,
  total: 0,
  pages: 0,
  bytes: 0,
  file,
  notices: [],
  message: null,
  recordable,
  recorded: null,
});
