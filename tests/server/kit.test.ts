// The kit over HTTP: previews, PDFs that other programs read, and what is known of the paper.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { OpenAPIHono } from "@hono/zod-openapi";
import { unzipSync } from "fflate";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { addFact, addSubject, editFact } from "../../src/app/facts.ts";
import type { Context } from "../../src/app/ports.ts";
import type { PrintStep } from "../../src/app/print-port.ts";
import type { CardPaperView, FactPaperView, PaperCardsView } from "../../src/app/print-versions.ts";
import type { KitJobView, KitPreview } from "../../src/app/print-views.ts";
import { printedNumber } from "../../src/core/cards/card-number.ts";
import { createPreviewer } from "../../src/kit/previewer.ts";
import { normalisePicture } from "../../src/media/normalise-picture.ts";
import { createApp } from "../../src/server/app.ts";
import { createKitJobs } from "../../src/server/kit-jobs.ts";
import { randomBytes } from "../../src/server/random-bytes.ts";
import { openSqliteStore } from "../../src/store/sqlite-store.ts";
import { BARE, starPair } from "../support/night-sky.ts";
import { readPdf } from "../support/pdf-tools.ts";

const HOST = "127.0.0.1:4610";
const NOW = Date.UTC(2026, 2, 14, 20, 0);
const FACTS = 5;
/** A pair is asked both ways; of A7 eight fit on A4. */
const CARDS = 2 * FACTS;

let context: Context;
let app: OpenAPIHono;
let web: string;
let close: () => Promise<void>;

beforeEach(async () => {
  web = mkdtempSync(join(tmpdir(), "longhold-web-"));
  writeFileSync(join(web, "index.html"), "<!doctype html><title>Longhold</title>");
  context = { store: await openSqliteStore(":memory:"), clock: () => NOW, random: randomBytes };
  let made = 0;
  const jobs = createKitJobs(
    context,
    () => `kit ${++made}`,
    () => undefined,
  );
  const previewer = createPreviewer();
  app = createApp({
    ...{ context, normalise: normalisePicture, webFolder: web, version: "0" },
    jobs: {} as never,
    kits: { jobs, previewer },
    log: () => undefined,
    hosts: () => new Set([HOST]),
  });
  close = async () => {
    jobs.close();
    await previewer.close();
    await context.store.close();
    rmSync(web, { recursive: true });
  };
  await addSubject(context, "sky", "The night sky");
  for (let n = 0; n < FACTS; n++) await addFact(context, `star ${n}`, "sky", starPair(n));
});

afterEach(() => close());

async function call<T>(method: string, path: string, body?: unknown): Promise<{ status: number; body: T }> {
  const response = await app.request(path, {
    method,
    headers: { host: HOST, ...(body === undefined ? {} : { "content-type": "application/json" }) },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  return { status: response.status, body: (await response.json()) as T };
}

const KIT = {
  subjects: ["sky"],
  parts: ["cards"],
  paper: "a4",
  card: "a7",
  turn: "long",
  mark: "number",
  language: "en",
};
const kit = (more: object = {}) => ({ ...KIT, ...more });

const preview = async (more: object, sheet = 0): Promise<KitPreview> =>
  (await call<KitPreview>("POST", "/api/kit/preview", { kit: kit(more), sheet })).body;

const open = async (more: object = {}, zip = false): Promise<KitJobView> =>
  (await call<KitJobView>("POST", "/api/kit/jobs", { kit: kit(more), zip })).body;

/** A kit, once its making is over. */
async function make(more: object = {}, zip = false): Promise<KitJobView> {
  const { id } = await open(more, zip);
  for (;;) {
    const { body } = await call<KitJobView>("GET", `/api/kit/jobs/${id}`);
    if (body.state !== "making") return body;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

async function fileOf(id: string, query = ""): Promise<{ bytes: Uint8Array; headers: Headers }> {
  const response = await app.request(`/api/kit/jobs/${encodeURIComponent(id)}/file${query}`, {
    headers: { host: HOST },
  });
  expect(response.status).toBe(200);
  return { bytes: new Uint8Array(await response.arrayBuffer()), headers: response.headers };
}

function textOf(pdf: Uint8Array): { pages: readonly string[]; complaints: string } {
  const reading = readPdf(pdf);
  reading.close();
  return reading;
}

const paper = async (): Promise<PaperCardsView> =>
  (await call<PaperCardsView>("GET", "/api/kit/paper?subjects=sky")).body;
const reword = (n: number) =>
  editFact(context, `star ${n}`, { ...BARE, ...starPair(n), prompt: `Reworded ${n}`, kind: "pair" });

describe("the preview", () => {
  test("shows one sheet, front and back, and says how many there are", async () => {
    const first = await preview({ parts: ["instructions", "cards"] });
    expect(first).toMatchObject({ pages: 6, cards: CARDS, boxes: 1, sheet: 0, notices: [] });
    expect(first.parts).toEqual([
      { part: "instructions", sheets: 1 },
      { part: "cards", sheets: 2 },
    ]);
    expect(first.sides).toEqual([expect.stringMatching(/^<svg/), null]);
    const last = await preview({ parts: ["instructions", "cards"] }, 99);
    expect(last.sheet).toBe(2);
    expect(last.sides).toEqual([expect.stringMatching(/^<svg/), expect.stringMatching(/^<svg/)]);
  });

  test("names a card whose words do not fit, and its fact", async () => {
    await addFact(context, "long", "sky", { ...BARE, ...starPair(9), prompt: "star ".repeat(900), kind: "pair" });
    const { notices } = await preview({}, 1);
    expect(notices.map(({ card }) => card?.fact)).toContain("long");
    expect(notices[0]?.text).toContain("too much text in the prompt");
  });

  test("of nothing is empty", async () => {
    expect(await preview({ subjects: [] })).toMatchObject({ pages: 0, cards: 0, parts: [], sides: [] });
  });
});

describe("a kit that cannot be printed is refused in plain words", () => {
  test.each([
    [{ card: "a3" }, "a card is a7, a6, or a size such as 85x55mm or 3x5in, not “a3”"],
    [{ card: "10x10mm" }, "the sides of a card are 40 to 420 mm, not 10 × 10 mm"],
    [{ paper: "2000x10mm" }, "the sides of a sheet are 70 to 900 mm, not 2000 × 10 mm"],
    [{ card: "300x400mm" }, "does not fit on a sheet of 210 × 297 mm; choose smaller cards or larger paper"],
    [{ right: 11 }, "kit.right"],
    [{ days: 0 }, "kit.days"],
    [{ language: "English" }, "must be a code of ISO 639 such as en"],
    [{ start: "14 March" }, "must be a date such as 2026-03-14"],
    [{ names: "Ines Duarte\nInes Duarte" }, "“Ines Duarte” stands there twice"],
    [{ parts: ["poster"] }, "kit.parts"],
  ])("%j", async (more, words) => {
    for (const path of ["/api/kit/preview", "/api/kit/jobs"]) {
      const { status, body } = await call<{ message: string }>("POST", path, { kit: kit(more), sheet: 0 });
      // A job is begun before its pages are laid out; then it is the job that fails.
      const said = status === 422 ? body.message : (await make(more)).message;
      expect(said).toContain(words);
    }
  });

  test("a subject that is not there, and a zip file without names", async () => {
    expect(await call("POST", "/api/kit/preview", { kit: kit({ subjects: ["moon"] }), sheet: 0 })).toMatchObject({
      status: 404,
    });
    const { status, body } = await call<{ message: string }>("POST", "/api/kit/jobs", { kit: kit(), zip: true });
    expect(status).toBe(422);
    expect(body.message).toBe("A zip file holds a PDF for each name; there are no names.");
  });
});

describe("a PDF", () => {
  test("is made, read by other programs, and its cards are recorded as printed once", async () => {
    const job = await make({ parts: ["cards", "instructions"] });
    expect(job).toMatchObject({ state: "done", pages: 6, recordable: CARDS, recorded: null, notices: [] });
    const { bytes, headers } = await fileOf(job.id);
    expect(headers.get("content-type")).toBe("application/pdf");
    expect(headers.get("content-disposition")).toBe("inline; filename*=UTF-8''The-night-sky-kit.pdf");
    expect((await fileOf(job.id, "?download")).headers.get("content-disposition")).toContain("attachment");
    const { pages, complaints } = textOf(bytes);
    expect(complaints).toBe("");
    expect(pages).toHaveLength(6);
    expect(pages[2]).toContain(printedNumber(1));

    const printed = await call<KitJobView>("POST", `/api/kit/jobs/${encodeURIComponent(job.id)}/printed`);
    expect(printed.body.recorded).not.toBeNull();
    expect((await paper()).counts).toMatchObject({ new: 0, current: CARDS });
    const again = await call<{ message: string }>("POST", `/api/kit/jobs/${encodeURIComponent(job.id)}/printed`);
    expect(again).toMatchObject({ status: 409, body: { message: "These cards are recorded as printed already." } });

    // Taken back, they can be recorded again.
    await call("POST", `/api/kit/steps/${printed.body.recorded}/undo`);
    expect((await paper()).counts).toMatchObject({ new: CARDS, current: 0 });
    expect((await call("POST", `/api/kit/jobs/${encodeURIComponent(job.id)}/printed`)).status).toBe(200);
  });

  test("of what changed holds those cards and no others", async () => {
    await call("POST", `/api/kit/jobs/${encodeURIComponent((await make()).id)}/printed`);
    expect(await preview({ only: "changed" })).toMatchObject({ pages: 0, cards: 0 });
    await reword(1);
    const { counts, outdated } = await paper();
    expect(counts).toMatchObject({ current: CARDS - 2, changed: 2 });
    const card = outdated[0]?.card ?? "";
    const { body } = await call<CardPaperView>("GET", `/api/cards/${encodeURIComponent(card)}/paper`);
    expect(body).toMatchObject({ state: "changed", printedAt: NOW, changes: [{ after: "Reworded 1" }] });
    const factPaper = async (n: number) => (await call<FactPaperView>("GET", `/api/facts/star ${n}/paper`)).body.states;
    expect(await factPaper(1)).toEqual({ changed: 2 });
    expect(await factPaper(2)).toEqual({ current: 2 });
    const job = await make({ only: "changed" });
    expect(job).toMatchObject({ pages: 2, recordable: 2 });
    const numbers = textOf((await fileOf(job.id)).bytes).pages[0]?.match(/\d+-\d/gu);
    expect(numbers?.toSorted()).toEqual(outdated.map(({ number }) => printedNumber(number)).toSorted());
    await addFact(context, "star 9", "sky", starPair(9));
    expect(await factPaper(9)).toEqual({});
  });

  test("that is stopped is not there, and one that was never begun is not found", async () => {
    const { id } = await open();
    const stopped = await call<KitJobView>("DELETE", `/api/kit/jobs/${encodeURIComponent(id)}`);
    expect(stopped.body.state).toBe("stopped");
    const address = `/api/kit/jobs/${encodeURIComponent(id)}`;
    expect((await call<KitJobView>("GET", address)).body.state).toBe("stopped");
    for (const [method, path] of [
      ["GET", "/file"],
      ["POST", "/printed"],
    ] as const)
      expect(await call(method, address + path)).toMatchObject({
        status: 409,
        body: { message: "This kit is not made yet." },
      });
    expect((await call("GET", "/api/kit/jobs/none")).status).toBe(404);
  });

  test("for a class is one for each name in a zip file, and says nothing about one's own paper", async () => {
    const names = "Tomás Prado\n\n  Ines   Duarte ";
    expect(await preview({ names, parts: ["dividers", "cards"] })).toMatchObject({ boxes: 2 });
    const job = await make({ names, parts: ["dividers"], start: "2026-04-01" }, true);
    expect(job).toMatchObject({ state: "done", file: "The-night-sky-kit.zip", recordable: 0 });
    const files = unzipSync((await fileOf(job.id)).bytes);
    expect(Object.keys(files)).toHaveLength(2);
    for (const [name, pdf] of Object.entries(files)) {
      const whose = name.includes("Ines") ? "Ines Duarte" : "Tomás Prado";
      expect(textOf(pdf).pages[0]).toContain(whose);
    }
    const { status, body } = await call("POST", `/api/kit/jobs/${encodeURIComponent(job.id)}/printed`);
    expect({ status, body }).toMatchObject({
      status: 409,
      body: { message: "There are no cards of yours in this kit." },
    });
  });
});

describe("lost and damaged paper", () => {
  const missing = (kind: string, numbers: readonly number[]) =>
    call<PrintStep & { message: string }>("POST", "/api/kit/missing", { kind, numbers });

  test("is recorded by number and taken back once", async () => {
    await call("POST", `/api/kit/jobs/${encodeURIComponent((await make()).id)}/printed`);
    const lost = await missing("lost", [1, 2]);
    expect(lost.body).toMatchObject({ kind: "lost", at: NOW, undone: false });
    await missing("damaged", [3]);
    expect((await paper()).counts).toMatchObject({ lost: 2, damaged: 1, current: CARDS - 3 });
    expect((await paper()).steps.map(({ kind, cards }) => [kind, cards])).toEqual([
      ["damaged", 1],
      ["lost", 2],
      ["printed", CARDS],
    ]);
    expect((await call("POST", `/api/kit/steps/${lost.body.id}/undo`)).status).toBe(200);
    expect((await paper()).counts).toMatchObject({ lost: 0, damaged: 1 });
    expect((await call("POST", `/api/kit/steps/${lost.body.id}/undo`)).status).toBe(409);
    expect((await call("POST", "/api/kit/steps/none/undo")).status).toBe(404);
  });

  test("that cannot be is refused, and nothing of the rest is recorded", async () => {
    const never = await missing("lost", [1]);
    expect(never).toMatchObject({ status: 404 });
    expect(never.body.message).toContain(`Card ${printedNumber(1)} was never recorded as printed`);
    const unknown = await missing("lost", [1, 999]);
    expect(unknown.body.message).toBe(`No card has the number ${printedNumber(999)}.`);
    expect((await missing("eaten", [1])).status).toBe(422);
    expect((await missing("lost", [])).status).toBe(422);
    expect((await paper()).steps).toEqual([]);
  });
});
