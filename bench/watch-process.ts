// How long a program takes and how much memory it and its children hold at the most.
import { spawn } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";

/** What a program took. */
export interface Cost {
  readonly seconds: number;
  /** Most of what all its processes held together; memory that several share counts once. */
  readonly megabytes: number;
}

/** Milliseconds between two looks at the memory; what comes and goes in between is not seen. */
const LOOK = 20;

/** Runs a program to its end. Fails with what it said if it fails. */
export function watchProcess(program: string, args: readonly string[], folder: string): Promise<Cost> {
  const begun = performance.now();
  const child = spawn(program, args, { cwd: folder, stdio: ["ignore", "pipe", "pipe"] });
  let said = "";
  for (const stream of [child.stdout, child.stderr])
    stream.on("data", (chunk) => {
      said = `${said}${chunk}`.slice(-2000);
    });
  let most = 0;
  const clock = setInterval(() => {
    most = Math.max(most, memoryOf(child.pid ?? 0));
  }, LOOK);
  return new Promise((resolve, reject) => {
    child.once("error", reject);
    child.once("close", (status) => {
      clearInterval(clock);
      const seconds = (performance.now() - begun) / 1000;
      if (status === 0) resolve({ seconds, megabytes: most / 1024 });
      else reject(new Error(`${program} ended with ${status}:\n${said}`));
    });
  });
}

/** Kilobytes of a process and of everything that it started (PSS of /proc/PID/smaps_rollup). */
function memoryOf(root: number): number {
  const parents = new Map<number, number>();
  for (const name of readdirSync("/proc"))
    if (/^\d+$/.test(name)) {
      // The name in brackets may hold anything; state and parent come after it.
      const [, parent] = /\) \S (\d+)/.exec(read(`/proc/${name}/stat`)) ?? [];
      parents.set(Number(name), Number(parent));
    }
  const belongs = (pid: number): boolean => pid === root || (parents.has(pid) && belongs(parents.get(pid) ?? 0));
  let sum = 0;
  for (const pid of parents.keys())
    if (belongs(pid)) sum += Number(/^Pss:\s+(\d+)/m.exec(read(`/proc/${pid}/smaps_rollup`))?.[1] ?? 0);
  return sum;
}

/** Nothing, if the process has ended meanwhile. */
function read(file: string): string {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return "";
  }
}
