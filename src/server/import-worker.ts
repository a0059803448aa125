// Reading and saving long lists beside the server, so that nobody who is practising notices.
import { parentPort, workerData } from "node:worker_threads";
import { FailureError, type FailureKind } from "../app/failure.ts";
import type { FactImport, ImportOutcome } from "../app/import-facts.ts";
import type { Store } from "../app/ports.ts";
import type { ImportChoices, ImportPreview } from "../app/views.ts";
import { importList, type ListParcel, previewImport } from "../exchange/import-list.ts";
import type { ListMedia } from "../exchange/list-media.ts";
import { openSqliteStore } from "../store/sqlite-store.ts";
import { randomBytes } from "./random-bytes.ts";

/** What a worker is started with. A non-zero `stop[0]` asks it to stop. */
export interface WorkerStart {
  readonly database: string;
  readonly bytes: Uint8Array;
  readonly media: ListMedia;
  readonly stop: Int32Array;
}

/** Where a list goes, and how its facts are asked. */
export type ImportInto = Pick<FactImport, "target" | "oneWay">;

/** What a worker can be asked. */
export type WorkerOrder =
  | { readonly kind: "preview"; readonly choices: ImportChoices }
  | { readonly kind: "save"; readonly choices: ImportChoices; readonly into: ImportInto };

/** What a worker answers; progress comes any number of times before the rest. */
export type WorkerAnswer =
  | { readonly kind: "progress"; readonly done: number; readonly total: number }
  | { readonly kind: "preview"; readonly preview: ImportPreview }
  | { readonly kind: "saved"; readonly outcome: ImportOutcome }
  | { readonly kind: "failed"; readonly failure: FailureKind | "bug"; readonly message: string };

const port = parentPort;
if (port) {
  const start = workerData as WorkerStart;
  const parcel: ListParcel = { bytes: start.bytes, media: start.media };
  const answer = (message: WorkerAnswer): void => port.postMessage(message);
  let opened: Promise<Store> | null = null;
  port.on("message", (order: WorkerOrder) => {
    opened ??= openSqliteStore(start.database);
    opened
      .then((store) => carryOut(order, { store, clock: Date.now, random: randomBytes }))
      .then(answer)
      .catch((error: unknown) => answer(failed(error)));
  });

  const carryOut = async (order: WorkerOrder, context: Parameters<typeof previewImport>[0]): Promise<WorkerAnswer> => {
    if (order.kind === "preview")
      return { kind: "preview", preview: await previewImport(context, parcel, order.choices) };
    let told = 0;
    const outcome = await importList(context, parcel, order.choices, order.into, {
      shouldStop: () => Atomics.load(start.stop, 0) !== 0,
      onProgress: (done, total) => {
        if (done - told < 1_000 && done < total) return;
        told = done;
        answer({ kind: "progress", done, total });
      },
    });
    return { kind: "saved", outcome };
  };
}

const failed = (error: unknown): WorkerAnswer =>
  error instanceof FailureError
    ? { kind: "failed", failure: error.failure.kind, message: error.failure.message }
    : {
        kind: "failed",
        failure: "bug",
        message: error instanceof Error ? (error.stack ?? error.message) : String(error),
      };
