// A real PostgreSQL server for tests: made in a temporary folder from the system's own programs, spoken to
// over a socket in that folder, and removed afterwards.
import { execFileSync, spawnSync } from "node:child_process";
import { chownSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PostgresDialect } from "kysely";
import pg from "pg";
import type { Store } from "../../src/app/ports.ts";
import { openKyselyStore } from "../../src/store/kysely-store.ts";
import type { StoreDatabase } from "./store-database.ts";

// Counts and milliseconds are 64-bit; all of ours are exact as numbers.
pg.types.setTypeParser(pg.types.builtins.INT8, Number);

const USER = "longhold";

/** A server that is running. */
export interface PostgresServer {
  newDatabase(): Promise<StoreDatabase>;
  stop(): Promise<void>;
}

/** The folder of the newest PostgreSQL programs; throws one clear sentence if there are none. */
export function findPostgres(root = "/usr/lib/postgresql"): string {
  const versions = existsSync(root) ? readdirSync(root).sort((a, b) => Number(b) - Number(a)) : [];
  const found = versions.map((version) => join(root, version, "bin")).find((bin) => existsSync(join(bin, "initdb")));
  if (found) return found;
  throw new Error("These tests need a PostgreSQL server: install the Debian package postgresql.");
}

/** Makes and starts a server. It keeps nothing that must survive, so it does not wait for the disk. */
export async function startPostgres(): Promise<PostgresServer> {
  const bin = findPostgres();
  const folder = mkdtempSync(join(tmpdir(), "longhold-pg-"));
  const owner = serverUser();
  if (owner) chownSync(folder, owner.uid, owner.gid);
  const data = join(folder, "data");
  const run = (program: string, ...args: string[]): void => {
    const done = spawnSync(join(bin, program), args, { ...owner, cwd: folder, encoding: "utf8" });
    if (done.status === 0) return;
    const log = join(folder, "server.log");
    throw new Error(`${program} failed: ${done.stderr}${existsSync(log) ? readFileSync(log, "utf8") : ""}`);
  };
  run("initdb", "-D", data, "-A", "trust", "-U", USER, "--no-locale", "-E", "UTF8", "--no-sync");
  const settings = `-c listen_addresses='' -c unix_socket_directories='${folder}' -c fsync=off -c max_connections=50`;
  run("pg_ctl", "-D", data, "-l", join(folder, "server.log"), "-o", settings, "-w", "start");
  const admin = new pg.Client({ host: folder, user: USER, database: "postgres" });
  await admin.connect();
  let made = 0;
  return {
    async newDatabase() {
      const database = `longhold_${++made}`;
      // Copied file by file, not through the write-ahead log: that would grow by gigabytes.
      await admin.query(`create database ${database} strategy file_copy`);
      return connectTo(folder, database, () => dropDatabase(admin, database));
    },
    async stop() {
      await admin.end();
      run("pg_ctl", "-D", data, "-m", "immediate", "-w", "stop");
      rmSync(folder, { recursive: true });
    },
  };
}

/** PostgreSQL refuses to run as root; Debian makes a user for it. */
function serverUser(): { readonly uid: number; readonly gid: number } | null {
  if (process.getuid?.() !== 0) return null;
  const id = (flag: string): number => Number(execFileSync("id", [flag, "postgres"], { encoding: "utf8" }));
  return { uid: id("-u"), gid: id("-g") };
}

/** A closed pool says goodbye a moment later than it says so; until then its database cannot be dropped. */
async function dropDatabase(admin: pg.Client, database: string): Promise<void> {
  const guests = "select count(*)::int as n from pg_stat_activity where datname = $1";
  for (let tries = 0; tries < 500; tries++) {
    if ((await admin.query<{ n: number }>(guests, [database])).rows[0]?.n === 0) break;
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
  await admin.query(`drop database ${database}`);
}

function connectTo(host: string, database: string, remove: () => Promise<void>): StoreDatabase {
  const side = new pg.Pool({ host, database, user: USER, max: 1 });
  const opened: Store[] = [];
  return {
    async open(learner) {
      const pool = new pg.Pool({ host, database, user: USER, max: 4 });
      const store = await openKyselyStore(new PostgresDialect({ pool }), learner);
      opened.push(store);
      return store;
    },
    async run(statement) {
      return (await side.query<Record<string, unknown>>(statement)).rows;
    },
    async drop() {
      for (const store of opened) await store.close();
      await side.end();
      await remove();
    },
  };
}
