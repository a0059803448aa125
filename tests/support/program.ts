// Running the built program as a person would, in a folder of its own.
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const PROGRAM = fileURLToPath(new URL("../../bin/longhold.js", import.meta.url));

/** What a program said, and how it ended. */
export interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs `longhold` with these words to its end. */
export const longhold = (...words: readonly string[]): Promise<Ended> => longholdTold("", ...words);

/** As `longhold`, with text on its standard input. */
export function longholdTold(input: string, ...words: readonly string[]): Promise<Ended> {
  const child = spawn(process.execPath, [PROGRAM, ...words], { stdio: ["pipe", "pipe", "pipe"] });
  child.stdin.end(input);
  let stdout = "";
  let stderr = "";
  child.stdout.on("data", (chunk) => {
    stdout += chunk;
  });
  child.stderr.on("data", (chunk) => {
    stderr += chunk;
  });
  return new Promise((resolve) => child.once("close", (status) => resolve({ status, stdout, stderr })));
}

/** A server in a process of its own. */
export interface ServerProcess {
  readonly url: string;
  readonly child: ChildProcess;
  /** Sends the signal and resolves to the exit status, null if the signal itself ended it. */
  end(signal: "SIGTERM" | "SIGKILL"): Promise<number | null>;
}

/** Starts a server program and waits for the address it prints. */
export function startProcess(
  words: readonly string[],
  program = PROGRAM,
  env: NodeJS.ProcessEnv = {},
): Promise<ServerProcess> {
  const child = spawn(process.execPath, [program, ...words], {
    stdio: ["ignore", "pipe", "pipe"],
    env: { ...process.env, ...env },
  });
  let said = "";
  const ended = new Promise<number | null>((resolve) => child.once("close", resolve));
  return new Promise((resolve, reject) => {
    child.stderr.on("data", (chunk) => {
      said += chunk;
    });
    child.stdout.on("data", (chunk) => {
      said += chunk;
      const url = /http:\/\/\S+/.exec(said)?.[0];
      if (!url) return;
      resolve({
        url,
        child,
        end: (signal) => {
          child.kill(signal);
          return ended;
        },
      });
    });
    void ended.then((status) => reject(new Error(`the server ended with status ${status}: ${said}`)));
  });
}

/** `longhold serve` on any free port. */
export const serve = (data: string): Promise<ServerProcess> =>
  startProcess(["serve", "--no-open", "--port", "0", "--data", data]);

/** A folder that is gone after the work. */
export async function withFolder<T>(work: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), "longhold-test-"));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A request with a JSON body; gives the status and the parsed answer. */
export async function api<T>(
  url: string,
  method: string,
  path: string,
  body?: unknown,
): Promise<{ status: number; body: T }> {
  const response = await fetch(`${url}${path}`, {
    method,
    ...(body === undefined ? {} : { headers: { "content-type": "application/json" }, body: JSON.stringify(body) }),
  });
  return { status: response.status, body: (await response.json()) as T };
}
