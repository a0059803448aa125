// Putting a server together on one data folder, and taking it down again.
import { readFileSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { fileURLToPath } from "node:url";
import { createAdaptorServer } from "@hono/node-server";
import { freshId } from "../app/entry-ids.ts";
import { FailureError } from "../app/failure.ts";
import type { Clock, Context, Store } from "../app/ports.ts";
import { createPreviewer } from "../kit/previewer.ts";
import { normalisePicture } from "../media/normalise-picture.ts";
import { openSqliteStore } from "../store/sqlite-store.ts";
import { createApp } from "./app.ts";
import { databaseFile, holdFolder } from "./data-folder.ts";
import { allowedHosts } from "./guard.ts";
import { createImportJobs } from "./import-jobs.ts";
import { createKitJobs } from "./kit-jobs.ts";
import type { Log } from "./logging.ts";
import { randomBytes } from "./random-bytes.ts";

/** Where and how to serve. Port 0 takes any free one. */
export interface ServerOptions {
  readonly data: string;
  readonly host: string;
  readonly port: number;
  readonly log: Log;
  readonly clock?: Clock;
}

/** A server that is answering. */
export interface RunningServer {
  readonly url: string;
  /** Finishes what is under way, closes the database and gives the folder free. */
  stop(): Promise<void>;
}

/** The program's version, from its package. */
export const packageVersion = (): string =>
  (JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8")) as { version: string }).version;

/** Starts serving. Fails with kind `in-use` if the folder or the port is taken. */
export async function startServer({ data, host, port, log, clock = Date.now }: ServerOptions): Promise<RunningServer> {
  const folder = holdFolder(data);
  const database = databaseFile(data);
  const opened = await openSqliteStore(database).catch((error: unknown) => {
    folder.release();
    throw error;
  });
  const alone = createTurns();
  const store: Store = { ...opened, write: (work) => alone(() => opened.write(work)) };
  const context: Context = { store, clock, random: randomBytes };
  const jobs = createImportJobs({ database, newId: () => freshId(context), log, alone });
  const kits = { jobs: createKitJobs(context, () => freshId(context), log), previewer: createPreviewer() };
  let hosts: ReadonlySet<string> = new Set();
  const app = createApp({
    context,
    jobs,
    kits,
    normalise: normalisePicture,
    log,
    hosts: () => hosts,
    webFolder: fileURLToPath(new URL("../web", import.meta.url)),
    version: packageVersion(),
  });
  const server = createAdaptorServer({ fetch: app.fetch });
  const closeAll = async (): Promise<void> => {
    await jobs.close();
    kits.jobs.close();
    await kits.previewer.close();
    await alone(() => opened.close());
    folder.release();
  };
  const actual = await listen(server, host, port).catch(async (error: unknown) => {
    await closeAll();
    throw error;
  });
  hosts = allowedHosts(host, actual);
  const url = `http://${host.includes(":") ? `[${host}]` : host}:${actual}`;
  folder.announce(url);
  log("info", "started", { url, data });
  return {
    url,
    stop: async () => {
      await new Promise<void>((resolve) => {
        server.close(() => resolve());
        if ("closeIdleConnections" in server) server.closeIdleConnections();
        // Pages keep connections open; what they asked has two seconds to be answered.
        setTimeout(() => "closeAllConnections" in server && server.closeAllConnections(), 2_000).unref();
      });
      await closeAll();
      log("info", "stopped");
    },
  };
}

function listen(server: ReturnType<typeof createAdaptorServer>, host: string, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => {
      const taken = `Port ${port} is taken by another program. Choose another with --port, or --port 0 for any free one.`;
      const unknown = `This machine has no address ${host} to listen on.`;
      if (error.code === "EADDRINUSE") reject(new FailureError("in-use", taken));
      else if (error.code === "EADDRNOTAVAIL" || error.code === "ENOTFOUND")
        reject(new FailureError("invalid-input", unknown));
      else reject(error);
    });
    server.listen(port, host, () => resolve((server.address() as AddressInfo).port));
  });
}

/** Lets one piece of work happen at a time, in the order in which they were asked for. */
function createTurns(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const mine = last.then(work, work);
    last = mine.catch(() => undefined);
    return mine;
  };
}
