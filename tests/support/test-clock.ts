// A server whose days the test decides, on a port that stays the same when it is started again.
import { writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type ServerProcess, startProcess } from "./program.ts";

/** A server with a clock of its own. */
export interface ClockServer {
  readonly url: string;
  readonly data: string;
  /** Sets the clock, in milliseconds since 1970. */
  setTime(time: number): void;
  /** Ends the process at once, as a power cut would. */
  kill(): Promise<void>;
  /** Starts it again on the same folder and port. */
  start(): Promise<void>;
  stop(): Promise<void>;
}

/** Starts a server on a folder with its clock at `time`. */
export async function startClockServer(data: string, time: number): Promise<ClockServer> {
  const clockFile = join(data, "clock.txt");
  const setTime = (now: number): void => writeFileSync(clockFile, String(now));
  setTime(time);
  const port = await freePort();
  const program = fileURLToPath(new URL("../browser/clock-server.mjs", import.meta.url));
  const start = (): Promise<ServerProcess> => startProcess([join(data, "box"), String(port), clockFile], program);
  let running = await start();
  return {
    url: running.url,
    data: join(data, "box"),
    setTime,
    kill: async () => void (await running.end("SIGKILL")),
    start: async () => {
      running = await start();
    },
    stop: async () => void (await running.end("SIGTERM")),
  };
}

function freePort(): Promise<number> {
  const probe = createServer();
  return new Promise((resolve) => {
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === "object" && address ? address.port : 0));
    });
  });
}
