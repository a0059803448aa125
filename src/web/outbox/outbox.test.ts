import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type { SentEntry } from "../client.ts";

const BOX = "box";
const entry = (n: number): SentEntry => ({
  id: `01a0000${n}-0000-7000-8000-000000000000`,
  box: BOX,
  at: n,
  kind: "finish",
  sitting: "01a00000-0000-7000-8000-000000000000",
});

const kept = new Map<string, string>();
let answer: (ids: readonly string[]) => Response;
let sent: string[][] = [];
let full = false;

beforeEach(() => {
  kept.clear();
  sent = [];
  full = false;
  // The two things of a browser that the outbox touches.
  vi.stubGlobal("localStorage", {
    setItem: (key: string, value: string) => {
      if (full) throw new Error("full");
      kept.set(key, value);
    },
    removeItem: (key: string) => kept.delete(key),
  });
  vi.stubGlobal("fetch", async (_: string, { body }: { body: string }) => {
    const ids = (JSON.parse(body) as { entries: SentEntry[] }).entries.map(({ id }) => id);
    sent.push(ids);
    return answer(ids);
  });
  vi.resetModules();
});

afterEach(() => vi.unstubAllGlobals());

const receipts = (ids: readonly string[], status: string, reason: string | null = null): Response =>
  Response.json({ receipts: ids.map((id) => ({ id, status, reason })) });
const saved = (ids: readonly string[]): Response => receipts(ids, "saved");

test("an entry is kept until the server has it, and goes again after the server was away", async () => {
  const { post, flush, unsent } = await import("./outbox.ts");
  answer = () => new Response(null, { status: 503 });
  post(entry(1));
  post(entry(2));
  await flush();
  expect(kept.size).toBe(2);
  expect(unsent().map(({ at }) => at)).toEqual([1, 2]);
  answer = saved;
  await flush();
  expect(kept.size).toBe(0);
  expect(sent.at(-1)).toEqual([entry(1).id, entry(2).id]);
});

test("a refused entry is removed and reported in words", async () => {
  const { post, flush, onRefusal, unsent } = await import("./outbox.ts");
  const reasons: string[] = [];
  onRefusal(({ reason }) => reasons.push(reason));
  answer = (ids) => receipts(ids, "refused", "not due");
  post(entry(1));
  await flush();
  expect(reasons).toEqual(["not due"]);
  expect(unsent()).toEqual([]);
});

test("one entry that the server cannot read does not hold up the others", async () => {
  const { post, flush, onRefusal, unsent } = await import("./outbox.ts");
  const refused: string[] = [];
  onRefusal(({ entry: { id } }) => refused.push(id));
  answer = (ids) =>
    ids.includes(entry(2).id) ? Response.json({ error: "invalid-input", message: "bad" }, { status: 422 }) : saved(ids);
  for (const n of [1, 2, 3]) post(entry(n));
  await flush();
  expect(refused).toEqual([entry(2).id]);
  expect(unsent()).toEqual([]);
});

test("an entry that is kept back stays here, is not sent over and over, and goes to the next box", async () => {
  const { post, flush, noteBox, outboxState } = await import("./outbox.ts");
  noteBox("demo");
  answer = (ids) => receipts(ids, "kept-back", "another box");
  post(entry(1));
  await flush();
  await flush();
  expect(sent).toHaveLength(1);
  expect([...outboxState().held.values()]).toEqual(["another box"]);
  expect(kept.size).toBe(1);
  answer = saved;
  noteBox(BOX);
  await flush();
  expect(kept.size).toBe(0);
});

test("taking back what was kept back only forgets it here", async () => {
  const { post, flush, unsent } = await import("./outbox.ts");
  answer = (ids) => receipts(ids, "kept-back", "the clock is ahead");
  post(entry(1));
  await flush();
  post({ id: entry(2).id, box: BOX, at: 2, kind: "take-back", entry: entry(1).id });
  await flush();
  expect(unsent()).toEqual([]);
  expect(sent).toHaveLength(1);
});

test("any answer that is not a receipt keeps the entry", async () => {
  const { post, flush, unsent } = await import("./outbox.ts");
  const others = [
    () => new Response("<h1>Sign in</h1>", { status: 200 }),
    () => new Response("Forbidden", { status: 403 }),
    () => Response.json({ error: "not-found", message: "There is no box." }, { status: 404 }),
    () => Response.json({ error: "invalid-input", message: "No such host." }, { status: 400 }),
    () => Response.json({ receipts: [] }),
    () => Response.json({ hello: "world" }),
  ];
  for (const other of others) {
    answer = other;
    if (unsent().length === 0) post(entry(1));
    await flush();
    expect(unsent()).toHaveLength(1);
    expect(kept.size).toBe(1);
  }
});

test("an entry that cannot be stored waits in memory and is said to", async () => {
  const { deliver, flush, outboxState } = await import("./outbox.ts");
  full = true;
  answer = () => new Response(null, { status: 503 });
  expect(await deliver(entry(1))).toEqual({ kind: "waiting" });
  expect([...outboxState().unstored]).toEqual([entry(1).id]);
  answer = saved;
  await flush();
  expect(outboxState().unstored.size).toBe(0);
});

test("whoever delivers an entry learns what became of it", async () => {
  const { deliver } = await import("./outbox.ts");
  answer = saved;
  expect(await deliver(entry(1))).toEqual({ kind: "saved" });
  answer = (ids) => receipts(ids, "refused", "not due");
  expect(await deliver(entry(2))).toEqual({ kind: "refused", reason: "not due" });
  answer = (ids) => receipts(ids, "kept-back", "another box");
  expect(await deliver(entry(3))).toEqual({ kind: "held", reason: "another box" });
});
