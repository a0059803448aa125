// What goes wrong with disks and files ends in one line that says what, where and what to do.
import { chmodSync, mkdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { describe, expect, test } from "vitest";
import type { ImportStatus, TodayView } from "../../src/app/views.ts";
import { openSqliteStore } from "../../src/store/sqlite-store.ts";
import { api, longhold, serve, withFolder } from "../support/program.ts";

async function expectLine(words: readonly string[], said: RegExp): Promise<void> {
  const { status, stderr } = await longhold(...words);
  expect(status).toBe(1);
  expect(stderr).toMatch(said);
  expect(stderr.trimEnd().split("\n")).toHaveLength(1);
}

describe("a data folder that cannot be used", () => {
  test("is a file", () =>
    withFolder(async (folder) => {
      writeFileSync(join(folder, "box"), "");
      await expectLine(
        ["demo", "--data", join(folder, "box")],
        /box cannot be used: it is a file, not a folder\. Choose another/,
      );
    }));

  test("holds something that is no database", () =>
    withFolder(async (folder) => {
      writeFileSync(join(folder, "longhold.sqlite"), "Vega, Altair and Deneb make the summer triangle.".repeat(50));
      await expectLine(["today", "--data", folder], /longhold\.sqlite: The file is damaged\. Put a copy/);
    }));

  test("was written by a newer Longhold", () =>
    withFolder(async (folder) => {
      const file = join(folder, "longhold.sqlite");
      await (await openSqliteStore(file)).close();
      const database = new Database(file);
      database.prepare("insert into kysely_migration (name, timestamp) values ('9999-later', '')").run();
      database.close();
      await expectLine(["today", "--data", folder], /written by a newer Longhold/);
    }));
});

test("nobody else can read what somebody learns, in a folder that was open to all either", () =>
  withFolder(async (folder) => {
    const data = join(folder, "box");
    mkdirSync(data);
    chmodSync(data, 0o755);
    writeFileSync(join(data, "longhold.sqlite"), "", { mode: 0o644 });
    const server = await serve(data);
    await api(server.url, "GET", "/api/today");
    for (const name of ["longhold.sqlite", "longhold.sqlite-wal", "lock.sqlite"]) {
      expect(`${name} ${(statSync(join(data, name)).mode & 0o077).toString(8)}`).toBe(`${name} 0`);
    }
    await server.end("SIGTERM");
  }));

test("an import whose worker cannot open the database fails by itself, and the server goes on", () =>
  withFolder(async (folder) => {
    const data = join(folder, "box");
    const server = await serve(data);
    rmSync(data, { recursive: true });
    const form = new FormData();
    form.set("list", new Blob(["Vega\tLyra"]));
    const { id } = (await (
      await fetch(`${server.url}/api/imports`, { method: "POST", body: form })
    ).json()) as ImportStatus;
    expect((await api(server.url, "POST", `/api/imports/${id}/preview`, {})).status).toBeGreaterThanOrEqual(500);
    expect((await api<ImportStatus>(server.url, "GET", `/api/imports/${id}`)).body.state).toBe("failed");
    expect((await api<TodayView>(server.url, "GET", "/api/today")).status).toBe(200);
    await server.end("SIGTERM");
  }));

test("lists that were put away make room for others", () =>
  withFolder(async (data) => {
    const server = await serve(data);
    for (let n = 0; n < 6; n++) {
      const form = new FormData();
      form.set("list", new Blob(["Vega\tLyra"]));
      const response = await fetch(`${server.url}/api/imports`, { method: "POST", body: form });
      expect(response.status).toBe(200);
      const { id } = (await response.json()) as ImportStatus;
      expect((await api<ImportStatus>(server.url, "DELETE", `/api/imports/${id}`)).body.state).toBe("stopped");
    }
    await server.end("SIGTERM");
  }));
