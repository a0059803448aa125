// One import under way: a worker with a list in hand, and how far it has come.
import { Worker } from "node:worker_threads";
import { FailureError } from "../app/failure.ts";
import type { ImportChoices, ImportPreview, ImportStatus } from "../app/views.ts";
import type { ImportInto, WorkerAnswer, WorkerOrder, WorkerStart } from "./import-worker.ts";
import type { Log } from "./logging.ts";

const EMPTY = {
  done: 0,
  total: 0,
  saved: 0,
  duplicates: 0,
  problems: 0,
  message: null,
  subject: null,
  edit: null,
} as const;
const BUG = "Something went wrong inside Longhold. Nothing was saved.";

/** An import; what it is doing stands in `status`. */
export class ImportJob {
  status: ImportStatus;
  private readonly worker: Worker;
  private readonly stopFlag = new Int32Array(new SharedArrayBuffer(4));
  private preview: { resolve: (preview: ImportPreview) => void; reject: (error: Error) => void } | null = null;
  private settle: () => void = () => undefined;

  constructor(
    id: string,
    start: Omit<WorkerStart, "stop"> & { readonly bytes: Uint8Array<ArrayBuffer> },
    private readonly log: Log,
  ) {
    this.status = { id, state: "waiting", ...EMPTY };
    this.worker = new Worker(new URL("./import-worker.js", import.meta.url), {
      workerData: { ...start, stop: this.stopFlag },
      transferList: [start.bytes.buffer],
    });
    this.worker.on("message", (answer: WorkerAnswer) => this.hear(answer));
    this.worker.on("error", (error) => this.fail("bug", String(error)));
    this.worker.on("exit", () => this.fail("bug", "the worker ended"));
  }

  /** Whether its worker has an end to come to. */
  get underWay(): boolean {
    return this.status.state === "waiting" || this.status.state === "reading" || this.status.state === "saving";
  }

  /** Reads the list without saving anything. */
  read(choices: ImportChoices): Promise<ImportPreview> {
    this.begin("reading");
    return new Promise((resolve, reject) => {
      this.preview = { resolve, reject };
      this.say({ kind: "preview", choices });
    });
  }

  /** Begins to save; `alone` runs the work while nobody else writes. */
  save(choices: ImportChoices, into: ImportInto, alone: <T>(work: () => Promise<T>) => Promise<T>): void {
    this.begin("saving");
    const work = () =>
      new Promise<void>((resolve) => {
        this.settle = resolve;
        if (this.underWay) this.say({ kind: "save", choices, into });
        else resolve();
      });
    void alone(work).then(() => this.worker.terminate());
  }

  /** Stops saving, or puts away a list that is not being saved; nothing of it is kept. */
  stop(): void {
    Atomics.store(this.stopFlag, 0, 1);
    if (this.status.state !== "saving") this.fail("stopped", "The list was put away. Nothing was saved.");
  }

  /** Ends the worker at once; a save is rolled back. */
  async end(): Promise<void> {
    Atomics.store(this.stopFlag, 0, 1);
    await this.worker.terminate();
  }

  private begin(state: "reading" | "saving"): void {
    if (this.status.state !== "waiting")
      throw new FailureError("conflict", "This list is being read or saved already.");
    this.status = { ...this.status, state };
  }

  private readonly say = (order: WorkerOrder): void => this.worker.postMessage(order);

  private hear(answer: WorkerAnswer): void {
    if (answer.kind === "progress") this.status = { ...this.status, done: answer.done, total: answer.total };
    else if (answer.kind === "preview") {
      this.status = { ...this.status, state: "waiting" };
      this.preview?.resolve(answer.preview);
    } else if (answer.kind === "saved") {
      const { rows, saved, duplicates, problems, subject, edit } = answer.outcome;
      const came = { saved, duplicates, problems, subject, edit };
      this.status = { ...this.status, ...came, state: "done", done: rows, total: rows };
      this.settle();
    } else this.fail(answer.failure, answer.message);
  }

  private fail(failure: Extract<WorkerAnswer, { kind: "failed" }>["failure"], said: string): void {
    if (!this.underWay) return;
    if (failure === "bug") this.log("error", "import-failed", { message: said });
    const message = failure === "bug" ? BUG : said;
    // A preview that cannot be made says why; with other choices the list may yet be read.
    const mendable = this.status.state === "reading" && (failure === "invalid-input" || failure === "too-large");
    const state = mendable ? "waiting" : failure === "stopped" ? "stopped" : "failed";
    this.status = { ...this.status, state, ...(mendable ? {} : { message }) };
    this.preview?.reject(failure === "bug" ? new Error(said) : new FailureError(failure, message));
    this.preview = null;
    this.settle();
    if (!mendable) void this.worker.terminate();
  }
}
