// The folder in which a learner's data lives, held by one program at a time.
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { homedir } from "node:os";
import { dirname, join } from "node:path";
import Database from "better-sqlite3";
import { FailureError } from "../app/failure.ts";
import { explainTrouble } from "../store/database-trouble.ts";

/** The default folder: XDG_DATA_HOME on Unix, the application data folder on Windows. */
export function defaultDataFolder(env: NodeJS.ProcessEnv = process.env): string {
  const base =
    process.platform === "win32" && env.APPDATA
      ? env.APPDATA
      : env.XDG_DATA_HOME?.startsWith("/")
        ? env.XDG_DATA_HOME
        : join(homedir(), ".local", "share");
  return join(base, "longhold");
}

/** Path of the database in a data folder. */
export const databaseFile = (folder: string): string => join(folder, "longhold.sqlite");

/** A folder that is ours until it is released, or until this process ends in whatever way. */
export interface HeldFolder {
  readonly folder: string;
  /** Tells others who ask where this program can be reached. */
  announce(url: string): void;
  release(): void;
}

/**
 * Takes the folder, making it if need be. Fails with kind `in-use` and the other program's address if
 * it is held. The lock is the operating system's own, taken by SQLite, so a crash leaves none behind.
 */
export function holdFolder(folder: string): HeldFolder {
  makeFolder(folder);
  const note = join(folder, "in-use.json");
  const file = join(folder, "lock.sqlite");
  const lock = openLock(file);
  try {
    lock.exec("BEGIN EXCLUSIVE");
  } catch (error) {
    lock.close();
    if (!(error instanceof Database.SqliteError) || !error.code.startsWith("SQLITE_BUSY"))
      throw explainTrouble(error, file);
    throw new FailureError(
      "in-use",
      `The data folder ${folder} is already in use${whoHolds(note)}. Close that Longhold first, or choose another folder with --data.`,
    );
  }
  const tell = (url: string | null): void => writeFileSync(note, JSON.stringify({ process: process.pid, url }));
  tell(null);
  return {
    folder,
    announce: tell,
    release: () => {
      rmSync(note, { force: true });
      lock.close();
    },
  };
}

/** What somebody learns is theirs alone: nobody else may read the files, in an older folder either. */
function makeFolder(folder: string): void {
  process.umask(0o077);
  try {
    mkdirSync(folder, { recursive: !existsSync(dirname(folder)) });
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === "EEXIST" && statSync(folder).isDirectory()) {
      restrictFiles(folder);
      return;
    }
    const why = code === "EEXIST" ? "it is a file, not a folder" : message;
    throw new FailureError("storage", `The data folder ${folder} cannot be used: ${why}. Choose another with --data.`);
  }
}

function restrictFiles(folder: string): void {
  for (const name of readdirSync(folder)) {
    if (/^(longhold|lock)\.sqlite/.test(name)) chmodSync(join(folder, name), 0o600);
  }
}

function openLock(file: string): Database.Database {
  try {
    return new Database(file, { timeout: 0 });
  } catch (error) {
    throw explainTrouble(error, file);
  }
}

function whoHolds(note: string): string {
  try {
    const { process: id, url } = JSON.parse(readFileSync(note, "utf8")) as { process: number; url: string | null };
    return ` by a running Longhold (process ${id}${url ? `, ${url}` : ""})`;
  } catch {
    return "";
  }
}
