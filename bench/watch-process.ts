// How long a program takes and how much memory it and its children hold at the most.
import { spawn } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";

/** What a program took. */
export interface Cost {
  readonly seconds: number;
  /** Seconds in which a core worked for it or for what it started; other programs at work change little of that. */
  readonly cpu: number;
  /** Most of what all its processes held together; memory that several share counts once. */
  readonly megabytes: number;
}

/** Milliseconds between two looks at processes and memory; what comes and goes in between is not seen. */
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
  const cpu = new Map<number, number>();
  const clock = setInterval(() => {
    const seen = familyOf(child.pid ?? 0);
    for (const { pid, ticks } of seen) cpu.set(pid, ticks);
    most = Math.max(
      most,
      seen.reduce((sum, { pid }) => sum + memoryOf(pid), 0),
    );
  }, LOOK);
  return new Promise((resolve, reject) => {
    child.once("error", reject);
    child.once("close", (status) => {
      clearInterval(clock);
      const seconds = (performance.now() - begun) / 1000;
      const ticks = [...cpu.values()].reduce((sum, one) => sum + one, 0);
      if (status === 0) resolve({ seconds, cpu: ticks / TICKS, megabytes: most / 1024 });
      else reject(new Error(`${program} ended with ${status}:\n${said}`));
    });
  });
}

/** Ticks of a second in /proc/PID/stat (sysconf(_SC_CLK_TCK), 100 on Linux). */
const TICKS = 100;

/** A process and everything that it started, and for how many ticks each has worked. */
function familyOf(root: number): readonly { readonly pid: number; readonly ticks: number }[] {
  const all = new Map<number, { readonly parent: number; readonly ticks: number }>();
  for (const name of readdirSync("/proc"))
    if (/^\d+$/.test(name)) {
      // The name in brackets may hold anything; state, parent and, ten fields on, the ticks come after it.
      const [, ...fields] = read(`/proc/${name}/stat`).split(/\) (?=\S \d+ )/);
      const [, parent, , , , , , , , , , user, system] = (fields.at(-1) ?? "").split(" ").map(Number);
      all.set(Number(name), { parent: parent ?? 0, ticks: (user ?? 0) + (system ?? 0) });
    }
  const belongs = (pid: number): boolean => pid === root || (all.has(pid) && belongs(all.get(pid)?.parent ?? 0));
  return [...all].filter(([pid]) => belongs(pid)).map(([pid, { ticks }]) => ({ pid, ticks }));
}

/** Kilobytes that a process holds; what it shares with others is divided among them (PSS of /proc/PID/smaps_rollup). */
const memoryOf = (pid: number): number => Number(/^Pss:\s+(\d+)/m.exec(read(`/proc/${pid}/smaps_rollup`))?.[1] ?? 0);

/** Nothing, if the process has ended meanwhile. */
function read(file: string): string {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return "";
  }
}
