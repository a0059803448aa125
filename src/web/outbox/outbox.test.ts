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

beforeEach(() => {
  kept.clear();
  sent = [];
  // The two things of a browser that the outbox touches.
  vi.stubGlobal("localStorage", {
    setItem: (key: string, value: string) => kept.set(key, value),
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

const saved = (ids: readonly string[]): Response =>
  Response.json({ receipts: ids.map((id) => ({ id, status: "saved", reason: null })) });

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
  answer = (ids) => Response.json({ receipts: ids.map((id) => ({ id, status: "refused", reason: "not due" })) });
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
    ids.includes(entry(2).id) ? Response.json({ error: "invalid-input", message: "bad" }, { status: 400 }) : saved(ids);
  for (const n of [1, 2, 3]) post(entry(n));
  await flush();
  expect(refused).toEqual([entry(2).id]);
  expect(unsent()).toEqual([]);
});
