import { mkdtempSync, rmdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { findPostgres, type PostgresServer, startPostgres } from "../support/postgres-server.ts";
import { storeContract } from "./store-contract.ts";

let server: PostgresServer | undefined;

beforeAll(async () => {
  server = await startPostgres();
});

afterAll(async () => {
  await server?.stop();
});

storeContract("PostgreSQL", () => (server as PostgresServer).newDatabase());

describe("a machine without PostgreSQL", () => {
  it("is told in one sentence which package to install", () => {
    const empty = mkdtempSync(join(tmpdir(), "longhold-no-pg-"));
    for (const root of [empty, join(empty, "missing")]) {
      expect(() => findPostgres(root)).toThrow(
        "These tests need a PostgreSQL server: install the Debian package postgresql.",
      );
    }
    rmdirSync(empty);
  });
});
