// longhold serve: the pages.
import { spawn } from "node:child_process";
import { createLog } from "../server/logging.ts";
import { startServer } from "../server/start.ts";
import { wholeNumber } from "./options.ts";
import { DATA_OPTION, dataFolder, type Verb } from "./verb.ts";

const DEFAULT_PORT = 4610;

/** Serves until it is told to stop. */
export const serveVerb: Verb = {
  name: "serve",
  about: "open Longhold in the browser",
  options: {
    data: DATA_OPTION,
    port: { type: "string", about: `the port (${DEFAULT_PORT}; 0 for any free one)` },
    host: { type: "string", about: "the address to listen on (127.0.0.1: this machine only)" },
    "no-open": { type: "boolean", about: "do not open a browser" },
    verbose: { type: "boolean", about: "log every request" },
  },
  async run(call) {
    const host = typeof call.values.host === "string" ? call.values.host : "127.0.0.1";
    const log = createLog((line) => process.stderr.write(line), Date.now, call.values.verbose ? "info" : "warn");
    const port = wholeNumber(call, "port", { least: 0, most: 65_535 }) ?? DEFAULT_PORT;
    const server = await startServer({ data: dataFolder(call), host, port, log });
    call.out(`Longhold is open at ${server.url}\nYour box is kept in ${dataFolder(call)}. Ctrl+C stops it.\n`);
    if (!["127.0.0.1", "localhost", "::1"].includes(host)) {
      log("warn", "open-to-others", {
        host,
        message: "everybody who can reach this address can read and change the box",
      });
    }
    if (!call.values["no-open"] && process.stdout.isTTY) openBrowser(server.url);
    await stopSignal();
    await server.stop();
    return 0;
  },
};

function stopSignal(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.once(signal, () => resolve());
  });
}

/** Opens the page with whatever the system uses; where there is nothing, the printed address is enough. */
function openBrowser(url: string): void {
  const [command, ...args] =
    process.platform === "darwin"
      ? ["open", url]
      : process.platform === "win32"
        ? ["cmd", "/c", "start", "", url]
        : ["xdg-open", url];
  const child = spawn(command as string, args, { stdio: "ignore", detached: true });
  child.on("error", () => undefined);
  child.unref();
}
