// The built program as its own process: locks, ports, signals, and long imports beside practice.
import { createServer } from "node:net";
import { describe, expect, test } from "vitest";
import type {
  BoxView,
  ImportPreview,
  ImportStatus,
  Page,
  Receipt,
  SittingView,
  SubjectView,
  TodayView,
} from "../../src/app/views.ts";
import { createEntryId } from "../../src/core/log/entry-id.ts";
import { api, longhold, type ServerProcess, serve, withFolder } from "../support/program.ts";

const newId = (): string => createEntryId(Date.now(), crypto.getRandomValues(new Uint8Array(10)));
const status = (server: ServerProcess, id: string) =>
  api<ImportStatus>(server.url, "GET", `/api/imports/${id}`).then(({ body }) => body);

async function openList(server: ServerProcess, list: string): Promise<string> {
  const form = new FormData();
  form.set("list", new Blob([list], { type: "text/plain" }));
  const response = await fetch(`${server.url}/api/imports`, { method: "POST", body: form });
  expect(response.status).toBe(200);
  return ((await response.json()) as ImportStatus).id;
}

async function settled(server: ServerProcess, id: string): Promise<ImportStatus> {
  for (;;) {
    const now = await status(server, id);
    if (now.state !== "saving") return now;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

const stars = (count: number): string =>
  `prompt,answer\r\n${Array.from({ length: count }, (_, i) => `Star ${i + 1} of the survey,Field ${(i % 97) + 1}`).join("\r\n")}\r\n`;

describe("one data folder, one program", () => {
  test("a second program says who holds the folder and where, and leaves it alone", () =>
    withFolder(async (data) => {
      const server = await serve(data);
      const second = await longhold("serve", "--no-open", "--port", "0", "--data", data);
      expect(second.status).toBe(1);
      expect(second.stderr).toMatch(
        /^longhold: The data folder .* is already in use by a running Longhold \(process \d+, http:\/\/127\.0\.0\.1:\d+\)/,
      );
      expect(second.stderr.trim().split("\n")).toHaveLength(1);
      expect((await longhold("demo", "--data", data)).status).toBe(1);
      expect((await longhold("today", "--data", data)).status).toBe(0);
      await server.end("SIGTERM");
    }));

  test("a program that was killed leaves no lock behind", () =>
    withFolder(async (data) => {
      const first = await serve(data);
      await first.end("SIGKILL");
      const second = await serve(data);
      expect((await api<TodayView>(second.url, "GET", "/api/today")).status).toBe(200);
      expect(await second.end("SIGTERM")).toBe(0);
    }));

  test("a port that is taken is named, with what to do", () =>
    withFolder(async (data) => {
      const other = createServer();
      await new Promise<void>((resolve) => other.listen(0, "127.0.0.1", resolve));
      const address = other.address();
      const port = typeof address === "object" && address ? address.port : 0;
      const refused = await longhold("serve", "--no-open", "--port", String(port), "--data", data);
      other.close();
      expect(refused.status).toBe(1);
      expect(refused.stderr).toContain(`Port ${port} is taken by another program. Choose another with --port`);
      // The folder was given back.
      const server = await serve(data);
      await server.end("SIGTERM");
    }));

  test("it can only be reached on this machine unless it is told otherwise", () =>
    withFolder(async (data) => {
      const server = await serve(data);
      expect(server.url).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
      await server.end("SIGTERM");
    }));
});

describe("a list of 100,000 rows", () => {
  test("is previewed and saved with progress while somebody practises", () =>
    withFolder(async (data) => {
      const server = await serve(data);
      const seed = await openList(server, stars(30));
      await api(server.url, "POST", `/api/imports/${seed}/accept`, { choices: {}, subject: { name: "Survey" } });
      await settled(server, seed);
      const box = (await api<BoxView>(server.url, "POST", "/api/box", { timeZone: "UTC", newPerDay: 30 })).body;
      const sitting = (await api<SittingView>(server.url, "POST", "/api/sitting", { id: newId(), newCards: 30 })).body;

      const id = await openList(server, stars(100_000));
      const preview = (await api<ImportPreview>(server.url, "POST", `/api/imports/${id}/preview`, {})).body;
      expect(preview).toMatchObject({ rows: 100_000, good: 100_000, cardCount: 200_000, problemCount: 0 });
      await api(server.url, "POST", `/api/imports/${id}/accept`, { choices: {}, subject: { name: "Survey" } });
      const seen = new Set<number>();
      let answered = 0;
      for (let now = await status(server, id); now.state === "saving"; now = await status(server, id)) {
        seen.add(now.done);
        // Reading goes on; an answer waits for its turn and is never lost.
        expect((await api<TodayView>(server.url, "GET", "/api/today")).body.box?.id).toBe(box.id);
        await new Promise((resolve) => setTimeout(resolve, 100));
      }
      const card = sitting.plan.newCards[0]?.card ?? "";
      const entry = {
        id: newId(),
        box: box.id,
        at: Date.now(),
        kind: "outcome",
        card,
        day: 1,
        sitting: sitting.plan.sitting,
        pass: "introduction",
        answer: "recalled",
        compartment: 0,
        bundle: 0,
        seconds: 2,
      };
      const { receipts } = (await api<{ receipts: Receipt[] }>(server.url, "POST", "/api/log", { entries: [entry] }))
        .body;
      answered += receipts.filter((receipt) => receipt.status === "saved").length;
      expect(answered).toBe(1);
      expect(seen.size).toBeGreaterThan(2);
      const done = await status(server, id);
      expect(done).toMatchObject({ state: "done", saved: 100_000 - 30, duplicates: 30 });
      expect((await api<Page<unknown>>(server.url, "GET", "/api/facts?limit=1")).body.total).toBe(100_000);
      await server.end("SIGTERM");
    }));

  test("can be stopped half way, and then nothing of it is there", () =>
    withFolder(async (data) => {
      const server = await serve(data);
      const id = await openList(server, stars(100_000));
      await api(server.url, "POST", `/api/imports/${id}/accept`, { choices: {}, subject: { name: "Survey" } });
      while ((await status(server, id)).done < 1_000) await new Promise((resolve) => setTimeout(resolve, 10));
      await api(server.url, "DELETE", `/api/imports/${id}`);
      const ended = await settled(server, id);
      expect(ended).toMatchObject({
        state: "stopped",
        saved: 0,
        message: "The import was stopped. Nothing was saved.",
      });
      expect((await api<Page<unknown>>(server.url, "GET", "/api/facts")).body.total).toBe(0);
      expect((await api<{ subjects: unknown[] }>(server.url, "GET", "/api/subjects")).body.subjects).toEqual([]);
      await server.end("SIGTERM");
    }));

  test("leaves nothing behind when the program is killed in the middle", () =>
    withFolder(async (data) => {
      const server = await serve(data);
      const id = await openList(server, stars(100_000));
      await api(server.url, "POST", `/api/imports/${id}/accept`, { choices: {}, subject: { name: "Survey" } });
      while ((await status(server, id)).done < 5_000) await new Promise((resolve) => setTimeout(resolve, 10));
      await server.end("SIGKILL");
      const again = await serve(data);
      expect((await api<Page<unknown>>(again.url, "GET", "/api/facts")).body.total).toBe(0);
      await again.end("SIGTERM");
    }));
});

test("an answer that was acknowledged survives SIGKILL at once after", () =>
  withFolder(async (data) => {
    let server = await serve(data);
    const id = await openList(server, stars(60));
    await api(server.url, "POST", `/api/imports/${id}/accept`, { choices: {}, subject: { name: "Survey" } });
    await settled(server, id);
    const box = (await api<BoxView>(server.url, "POST", "/api/box", { timeZone: "UTC" })).body;
    const acknowledged: string[] = [];
    const sitting = newId();
    let last = sitting;
    for (let round = 0; round < 8; round++) {
      const view = (await api<SittingView>(server.url, "POST", "/api/sitting", { id: sitting, newCards: 60 })).body;
      const left = view.plan.newCards.filter((ref) => !view.events.some((event) => event.card === ref.card));
      expect(view.events.map((event) => event.id)).toEqual(acknowledged);
      last = createEntryId(Date.now(), crypto.getRandomValues(new Uint8Array(10)), last);
      const entry = {
        id: last,
        box: box.id,
        at: Date.now(),
        kind: "outcome",
        card: left[0]?.card,
        day: 1,
        sitting,
        pass: "introduction",
        answer: "recalled",
        compartment: 0,
        bundle: 0,
        seconds: 2,
      };
      const { receipts } = (await api<{ receipts: Receipt[] }>(server.url, "POST", "/api/log", { entries: [entry] }))
        .body;
      if (receipts[0]?.status === "saved") acknowledged.push(last);
      await server.end("SIGKILL");
      server = await serve(data);
    }
    expect(acknowledged).toHaveLength(8);
    await server.end("SIGTERM");
    expect((await longhold("rebuild", "--data", data)).stdout).toContain("no differences");
  }));

test("an export with pictures comes back as it is", () =>
  withFolder(async (folder) => {
    await longhold("demo", "--data", `${folder}/one`);
    const one = await serve(`${folder}/one`);
    const { subjects } = (await api<{ subjects: SubjectView[] }>(one.url, "GET", "/api/subjects")).body;
    const response = await fetch(`${one.url}/api/subjects/${subjects[0]?.id}/export`);
    expect(response.headers.get("content-type")).toBe("application/zip");
    const zip = await response.blob();
    await one.end("SIGTERM");
    const two = await serve(`${folder}/two`);
    const form = new FormData();
    form.set("list", zip, "the-night-sky.zip");
    const { id } = (await (
      await fetch(`${two.url}/api/imports`, { method: "POST", body: form })
    ).json()) as ImportStatus;
    await api(two.url, "POST", `/api/imports/${id}/accept`, { choices: {}, subject: { name: "The night sky" } });
    expect(await settled(two, id)).toMatchObject({ state: "done", saved: subjects[0]?.facts, problems: 0 });
    await two.end("SIGTERM");
  }));
