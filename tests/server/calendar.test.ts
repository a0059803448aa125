// The calendar as a calendar program subscribes to it: no origin, no cookies, only the address.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { OpenAPIHono } from "@hono/zod-openapi";
import ICAL from "ical.js";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { addFact, addSubject } from "../../src/app/facts.ts";
import type { Context } from "../../src/app/ports.ts";
import { changeSettings, setUpBox } from "../../src/app/set-up.ts";
import { normalisePicture } from "../../src/media/normalise-picture.ts";
import { createApp } from "../../src/server/app.ts";
import { randomBytes } from "../../src/server/random-bytes.ts";
import { openSqliteStore } from "../../src/store/sqlite-store.ts";
import { starPair } from "../support/night-sky.ts";

const HOST = "127.0.0.1:4610";
const DAY_MS = 86_400_000;
let context: Context;
let app: OpenAPIHono;
let logged: string;
let now: number;
let web: string;

beforeEach(async () => {
  web = mkdtempSync(join(tmpdir(), "longhold-web-"));
  writeFileSync(join(web, "index.html"), "<!doctype html><title>Longhold</title>");
  now = Date.UTC(2026, 2, 14, 20, 0);
  logged = "";
  context = { store: await openSqliteStore(":memory:"), clock: () => now, random: randomBytes };
  app = createApp({
    context,
    jobs: {} as never,
    kits: {} as never,
    normalise: normalisePicture,
    log: (level, event, fields) => {
      logged += JSON.stringify({ level, event, ...fields });
    },
    hosts: () => new Set([HOST]),
    webFolder: web,
    version: "0",
  });
});

afterEach(async () => {
  await context.store.close();
  rmSync(web, { recursive: true });
});

async function setUp(): Promise<string> {
  await addSubject(context, "sky", "The night sky");
  for (let n = 0; n < 3; n++) await addFact(context, `star ${n}`, "sky", starPair(n));
  const { id } = await setUpBox(context, { timeZone: "Europe/Lisbon" });
  return `/calendar/${id}.ics`;
}

const get = (path: string, headers: Record<string, string> = {}, method = "GET") =>
  app.request(path, { method, headers: { host: HOST, ...headers } });

const summaries = (text: string): readonly string[] =>
  new ICAL.Component(ICAL.parse(text)).getAllSubcomponents("vevent").map((event) => new ICAL.Event(event).summary);

describe("the calendar of the box", () => {
  test("is served under the box's identity, to whoever names it, and read back by ical.js", async () => {
    const path = await setUp();
    const response = await get(path);
    expect(response.status).toBe(200);
    expect(response.headers.get("content-type")).toBe("text/calendar; charset=utf-8");
    const text = await response.text();
    expect(summaries(text)).toHaveLength(64);
    // Three facts make six new cards at 45 seconds each.
    expect(summaries(text)[0]).toBe("Longhold: chart day 1, about 5 minutes");
    expect(text).toContain("DTSTAMP:20260314T200000Z");
  });

  test("is answered with 304 and no text while nothing has changed but the hour", async () => {
    const path = await setUp();
    const etag = (await get(path)).headers.get("etag") ?? "";
    expect(etag).toMatch(/^W\/"[0-9a-f]{64}"$/);
    now += 3_600_000;
    for (const tag of [etag, `"other", ${etag}`]) {
      const again = await get(path, { "if-none-match": tag });
      expect(again.status).toBe(304);
      expect(await again.text()).toBe("");
      expect(again.headers.get("etag")).toBe(etag);
    }
    expect((await get(path, { "if-none-match": '"other"' })).status).toBe(200);
    expect((await get(path)).headers.get("cache-control")).toContain("no-cache");
  });

  test("is sent anew when the work changes, and when the day does", async () => {
    const path = await setUp();
    const etag = (await get(path)).headers.get("etag") ?? "";
    await changeSettings(context, { newPerDay: 2 });
    const changed = await get(path, { "if-none-match": etag });
    expect(changed.status).toBe(200);
    // Two new cards of 45 seconds.
    expect(summaries(await changed.text())[0]).toBe("Longhold: chart day 1, about 2 minutes");
    now += DAY_MS;
    expect((await get(path, { "if-none-match": changed.headers.get("etag") ?? "" })).status).toBe(200);
  });

  test("can be asked for without its text", async () => {
    const response = await get(await setUp(), {}, "HEAD");
    expect(response.status).toBe(200);
    expect(response.headers.get("etag")).not.toBeNull();
    expect(await response.text()).toBe("");
  });

  test("is not there before a box is set up, nor for any other identity; the answer is in plain words", async () => {
    const other = "/calendar/019ce5a4-2a00-7000-8000-000000000000.ics";
    const before = await get(other);
    await setUp();
    for (const response of [before, await get(other), await get("/calendar/.ics")]) {
      expect(response.status).toBe(404);
      expect(response.headers.get("content-type")).toMatch(/^text\/plain/);
      expect(await response.text()).toContain("no calendar at this address");
    }
  });

  test("is guarded as everything is, and its address is not in the log", async () => {
    const path = await setUp();
    expect((await get(path, { host: "observatory.example" })).status).toBe(403);
    expect((await get(path, { origin: "https://observatory.example" })).status).toBe(403);
    expect((await get(path)).headers.get("cross-origin-resource-policy")).toBe("same-origin");
    expect(logged).toContain('"path":"/calendar/');
    expect(logged).not.toContain(path);
  });
});
