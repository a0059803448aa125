// The HTTP side in one process, on a real database in memory.
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { OpenAPIHono } from "@hono/zod-openapi";
import sharp from "sharp";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Store } from "../../src/app/ports.ts";
import type {
  BoxView,
  ChartChange,
  DrawerView,
  Page,
  PlacedCard,
  Receipt,
  SittingView,
  TodayView,
} from "../../src/app/views.ts";
import { createEntryId } from "../../src/core/log/entry-id.ts";
import { normalisePicture } from "../../src/media/normalise-picture.ts";
import { createApp } from "../../src/server/app.ts";
import { randomBytes } from "../../src/server/random-bytes.ts";
import { openSqliteStore } from "../../src/store/sqlite-store.ts";

const HOST = "127.0.0.1:4610";
const NOW = Date.UTC(2026, 2, 14, 20, 0);
let store: Store;
let app: OpenAPIHono;
let logged: string[];
let now: number;

beforeEach(async () => {
  const web = mkdtempSync(join(tmpdir(), "longhold-web-"));
  writeFileSync(join(web, "index.html"), "<!doctype html><title>Longhold</title>");
  store = await openSqliteStore(":memory:");
  logged = [];
  now = NOW;
  app = createApp({
    context: { store, clock: () => now, random: randomBytes },
    jobs: {} as never,
    kits: {} as never,
    normalise: normalisePicture,
    log: (level, event, fields) => logged.push(JSON.stringify({ level, event, ...fields })),
    hosts: () => new Set([HOST]),
    webFolder: web,
    version: "0",
  });
});

afterEach(() => store.close());

async function call<T>(
  method: string,
  path: string,
  body?: unknown,
  headers: Record<string, string> = {},
): Promise<{ status: number; body: T; headers: Headers }> {
  const response = await app.request(path, {
    method,
    headers: { host: HOST, ...(body === undefined ? {} : { "content-type": "application/json" }), ...headers },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  const text = await response.text();
  return {
    status: response.status,
    body: (text.startsWith("{") ? JSON.parse(text) : text) as T,
    headers: response.headers,
  };
}

const newId = (): string => createEntryId(now++, randomBytes(10));

async function addStar(prompt: string, answer: string): Promise<string> {
  const known = await call<{ subjects: { id: string }[] }>("GET", "/api/subjects");
  const subject =
    known.body.subjects[0]?.id ??
    (await call<{ id: string }>("POST", "/api/subjects", { name: "The night sky" })).body.id;
  const id = newId();
  const made = await call("POST", "/api/facts", { id, subject, content: { kind: "pair", prompt, answer } });
  expect(made.status).toBe(200);
  return id;
}

describe("who may talk to the box", () => {
  test("a request under another host name is refused, whatever it asks", async () => {
    for (const host of ["observatory.example", "127.0.0.1:1", "127.0.0.1", "localhost.observatory.example:4610", ""]) {
      expect((await call("GET", "/api/today", undefined, { host })).status).toBe(403);
      expect((await call("GET", "/", undefined, { host })).status).toBe(403);
    }
  });

  test("a page of another origin can neither read nor write", async () => {
    for (const origin of ["https://observatory.example", "http://127.0.0.1:8080", "null"]) {
      expect((await call("GET", "/api/today", undefined, { origin })).status).toBe(403);
      expect((await call("POST", "/api/box", { timeZone: "UTC" }, { origin })).status).toBe(403);
    }
    expect((await call("GET", "/api/today", undefined, { "sec-fetch-site": "cross-site" })).status).toBe(403);
    expect((await call("GET", "/api/today", undefined, { origin: `http://${HOST}` })).status).toBe(200);
  });

  test("a form of another site cannot post without telling where it comes from", async () => {
    const response = await call("POST", "/api/box", undefined, {
      "content-type": "text/plain",
      "sec-fetch-site": "same-site",
    });
    expect(response.status).toBe(403);
  });

  test("no answer allows other origins, and pages may load nothing from elsewhere", async () => {
    const { headers } = await call("GET", "/", undefined);
    expect(headers.get("access-control-allow-origin")).toBeNull();
    expect(headers.get("content-security-policy")).toContain("default-src 'self'");
    // WebAssembly may be compiled, for reading sheets from photos; nothing else is taken on trust.
    const policy = (headers.get("content-security-policy") ?? "").replace("'wasm-unsafe-eval'", "");
    expect(policy).not.toContain("unsafe");
    expect(headers.get("cross-origin-resource-policy")).toBe("same-origin");
  });
});

describe("input from outside", () => {
  test("a wrong field is named, with what is allowed", async () => {
    const { status, body } = await call<{ error: string; message: string; issues: { path: string }[] }>(
      "POST",
      "/api/box",
      { timeZone: "Hilltop/Nowhere" },
    );
    expect(status).toBe(422);
    expect(body.message).toContain("timeZone");
    expect(body.message).toContain("Europe/Lisbon");
    expect(body.issues[0]?.path).toBe("timeZone");
  });

  test("broken JSON is refused without a trace of the inside", async () => {
    const response = await app.request("/api/box", {
      method: "POST",
      headers: { host: HOST, "content-type": "application/json" },
      body: "{",
    });
    expect(response.status).toBe(422);
    expect(await response.json()).toEqual({ error: "invalid-input", message: "The request is not valid JSON." });
  });

  test("a chart that cannot be walked is refused with the compartment at fault", async () => {
    const chart = {
      compartments: [
        { period: 1, bundles: 1, offset: 0 },
        { period: 4, bundles: 3, offset: 0 },
      ],
    };
    const { status, body } = await call<{ message: string }>("POST", "/api/box", { timeZone: "UTC", chart });
    expect(status).toBe(422);
    expect(body.message).toContain("compartment 2: 3 bundles do not divide its period of 4 days");
  });

  test("a statement without a gap is refused with the reason", async () => {
    const subject = (await call<{ id: string }>("POST", "/api/subjects", { name: "Planets" })).body.id;
    const { status, body } = await call<{ message: string }>("POST", "/api/facts", {
      id: newId(),
      subject,
      content: { kind: "statement", statement: "Mercury has no moon." },
    });
    expect(status).toBe(422);
    expect(body.message).toContain("there is no gap");
    expect((await call<Page<unknown>>("GET", "/api/facts")).body.total).toBe(0);
  });

  test("an unknown address in the API is told apart from a page", async () => {
    expect((await call("GET", "/api/nothing")).status).toBe(404);
    expect((await call<string>("GET", "/box")).body).toContain("<title>Longhold</title>");
    expect((await call("GET", "/../../package.json")).status).toBe(404);
    expect((await call("GET", "/%2e%2e/package.json")).status).toBe(404);
  });
});

describe("a first evening", () => {
  async function setUp(): Promise<BoxView> {
    await addStar("Brightest star of Lyra", "Vega");
    await addStar("Brightest star of Aquila", "Altair");
    return (await call<BoxView>("POST", "/api/box", { timeZone: "Europe/Lisbon" })).body;
  }

  const outcome = (view: SittingView, box: string, card: string, answer: string, pass = "introduction") => ({
    id: newId(),
    box,
    at: now,
    kind: "outcome",
    card,
    day: view.plan.day,
    sitting: view.plan.sitting,
    pass,
    answer,
    compartment: 0,
    bundle: 0,
    seconds: 3.5,
  });

  test("facts become stock, a sitting introduces them, and tomorrow they are due", async () => {
    const box = await setUp();
    const before = (await call<TodayView>("GET", "/api/today")).body;
    expect(before).toMatchObject({ day: 1, due: 0, stock: 4, newCards: 4, facts: 2 });
    const view = (await call<SittingView>("POST", "/api/sitting", { id: newId(), newCards: 4 })).body;
    expect(view.plan.newCards).toHaveLength(4);
    const entries = view.plan.newCards.map((ref) => outcome(view, box.id, ref.card, "recalled"));
    const { receipts } = (await call<{ receipts: Receipt[] }>("POST", "/api/log", { entries })).body;
    expect(receipts.map((receipt) => receipt.status)).toEqual(["saved", "saved", "saved", "saved"]);
    const again = (await call<{ receipts: Receipt[] }>("POST", "/api/log", { entries })).body.receipts;
    expect(again.map((receipt) => receipt.status)).toEqual(["known", "known", "known", "known"]);
    now += 24 * 3_600_000;
    const after = (await call<TodayView>("GET", "/api/today")).body;
    expect(after).toMatchObject({ day: 2, due: 4, stock: 0 });
    const drawer = (await call<DrawerView>("GET", "/api/box")).body;
    expect(drawer.compartments[0]?.bundles[0]).toMatchObject({ count: 4, due: 4, nextVisit: "2026-03-15" });
  });

  test("beginning twice resumes the same sitting, with its events", async () => {
    const box = await setUp();
    const view = (await call<SittingView>("POST", "/api/sitting", { id: newId(), newCards: 2 })).body;
    const [first] = view.plan.newCards;
    await call("POST", "/api/log", { entries: [outcome(view, box.id, first?.card ?? "", "missed")] });
    const resumed = (await call<SittingView>("POST", "/api/sitting", { id: newId(), newCards: 9 })).body;
    expect(resumed.plan).toEqual(view.plan);
    expect(resumed.events).toHaveLength(1);
  });

  test("what cannot be right is refused and the rest is kept", async () => {
    const box = await setUp();
    const view = (await call<SittingView>("POST", "/api/sitting", { id: newId(), newCards: 4 })).body;
    const [a, b] = view.plan.newCards;
    const good = outcome(view, box.id, a?.card ?? "", "recalled");
    const strange = { ...outcome(view, box.id, b?.card ?? "", "recalled"), box: "another" };
    const unknown = outcome(view, box.id, "0:forward", "recalled");
    const twice = outcome(view, box.id, a?.card ?? "", "recalled", "visit");
    const { receipts } = (
      await call<{ receipts: Receipt[] }>("POST", "/api/log", { entries: [good, strange, unknown, twice] })
    ).body;
    expect(receipts.map((receipt) => receipt.status)).toEqual(["saved", "kept-back", "refused", "refused"]);
    expect(receipts[3]?.reason).toContain("asked already in this sitting");
  });

  test("a withdrawn card keeps its place and comes back to it", async () => {
    const box = await setUp();
    const view = (await call<SittingView>("POST", "/api/sitting", { id: newId(), newCards: 1 })).body;
    const card = view.plan.newCards[0]?.card ?? "";
    const base = { box: box.id, at: now, card, day: view.plan.day };
    const send = (entry: object) => call("POST", "/api/log", { entries: [{ ...base, id: newId(), ...entry }] });
    await call("POST", "/api/log", { entries: [outcome(view, box.id, card, "recalled")] });
    await send({ kind: "withdraw" });
    const out = (await call<Page<PlacedCard>>("GET", "/api/box/cards?place=withdrawn")).body;
    expect(out.items.map((item) => item.card.id)).toEqual([card]);
    await send({ kind: "bring-back" });
    const back = (await call<Page<PlacedCard>>("GET", "/api/box/cards?place=compartment&compartment=1")).body;
    expect(back.items.map((item) => item.card.id)).toEqual([card]);
  });
});

describe("another chart for a running box", () => {
  const periods = (box: BoxView) => box.chart.compartments.map(({ period }) => period);
  const chartOf = (...lengths: number[]) => ({
    compartments: lengths.map((period) => ({ period, bundles: 1, offset: 0 })),
  });
  const put = (chart: unknown) => call<ChartChange & { message: string }>("PUT", "/api/box/chart", { chart });

  test("is taken, answered with what takes it back, and taken back through the log", async () => {
    const { body: box } = await call<BoxView>("POST", "/api/box", { timeZone: "Europe/Lisbon" });
    const { status, body } = await put(chartOf(1, 3, 9));
    expect(status).toBe(200);
    expect(periods(body.box)).toEqual([1, 3, 9]);
    const again = (await put(chartOf(1, 3, 9))).body;
    expect(again).toMatchObject({ entry: null, moved: 0 });
    const entries = [{ id: newId(), box: box.id, at: now, kind: "take-back", entry: body.entry }];
    const { receipts } = (await call<{ receipts: Receipt[] }>("POST", "/api/log", { entries })).body;
    expect(receipts).toMatchObject([{ status: "saved" }]);
    expect((await call<DrawerView>("GET", "/api/box")).body.box).toEqual(box);
  });

  test("is refused if it cannot be walked, if there is no box, and in a log that a page sends", async () => {
    expect((await put(chartOf(1, 2))).status).toBe(404);
    const { body: box } = await call<BoxView>("POST", "/api/box", { timeZone: "Europe/Lisbon" });
    const wrong = await put({ compartments: [{ period: 4, bundles: 3, offset: 0 }] });
    expect(wrong.status).toBe(422);
    expect(wrong.body.message).toContain("compartment 1: 3 bundles do not divide its period of 4 days");
    const entries = [{ id: newId(), box: box.id, at: now, kind: "chart", chart: chartOf(1), day: 1 }];
    expect((await call("POST", "/api/log", { entries })).status).toBe(422);
    expect((await call<DrawerView>("GET", "/api/box")).body.box).toEqual(box);
  });
});

describe("pictures", () => {
  test("are re-encoded, addressed by content, and served under a strict type", async () => {
    const photo = await sharp({ create: { width: 40, height: 30, channels: 3, background: "#102040" } })
      .jpeg()
      .withExif({ IFD0: { Copyright: "nobody" } })
      .toBuffer();
    const sent = await app.request("/api/pictures", {
      method: "POST",
      headers: { host: HOST },
      body: new Uint8Array(photo),
    });
    const { hash } = (await sent.json()) as { hash: string };
    const got = await app.request(`/api/pictures/${hash}`, { headers: { host: HOST } });
    expect(got.headers.get("content-type")).toMatch(/^image\/(png|jpeg|webp)$/);
    expect(got.headers.get("x-content-type-options")).toBe("nosniff");
    expect((await sharp(Buffer.from(await got.arrayBuffer())).metadata()).exif).toBeUndefined();
  });

  test("what is no picture is refused in words", async () => {
    const sent = await app.request("/api/pictures", {
      method: "POST",
      headers: { host: HOST },
      body: "<script>alert(1)</script>",
    });
    expect(sent.status).toBe(422);
    expect(((await sent.json()) as { message: string }).message).not.toBe("");
  });
});

test("the OpenAPI document describes every route of the API, with its input", async () => {
  const { body } = await call<{ openapi: string; paths: Record<string, Record<string, { requestBody?: unknown }>> }>(
    "GET",
    "/api/openapi.json",
  );
  expect(body.openapi).toBe("3.1.0");
  expect(body.paths["/api/log"]?.post?.requestBody).toBeDefined();
  const served = app.routes
    .filter((route) => route.path.startsWith("/api/") && !["ALL"].includes(route.method))
    .map((route) => `${route.method.toLowerCase()} ${route.path.replace(/:(\w+)/g, "{$1}")}`)
    .filter((name) => name !== "get /api/openapi.json");
  const described = Object.entries(body.paths).flatMap(([path, methods]) =>
    Object.keys(methods).map((method) => `${method} ${path}`),
  );
  expect(served.length).toBeGreaterThan(20);
  expect(new Set(described)).toEqual(new Set(served));
});

test("logs name the route and never what is learned", async () => {
  await addStar("Brightest star of Lyra", "Vega");
  await call("GET", "/api/facts?search=Vega");
  expect(logged.some((line) => line.includes('"path":"/api/facts"'))).toBe(true);
  expect(logged.join("\n")).not.toContain("Vega");
});
