// The demo on a real database: in, out, and out again beside somebody's own cards.
import { afterEach, beforeEach, expect, test } from "vitest";
import { addFact, addSubject } from "../app/facts.ts";
import type { Context, Store } from "../app/ports.ts";
import { rebuild } from "../app/rebuild.ts";
import { recordEntries } from "../app/record.ts";
import { beginSitting } from "../app/sit.ts";
import { todayView } from "../app/today.ts";
import { NO_EXTRAS } from "../core/facts/fact.ts";
import { createEntryId } from "../core/log/entry-id.ts";
import { ok } from "../core/result.ts";
import { openSqliteStore } from "../store/sqlite-store.ts";
import { clearDemo, type DemoMedia, loadDemo } from "./load-demo.ts";

const NOW = Date.UTC(2026, 2, 14, 20);
let store: Store;
let context: Context;
let count: number;

/** Keeps drawings as they are: pictures have tests of their own. */
const asTheyAre: DemoMedia = {
  picture: async (bytes) => ok({ hash: nextHash(), mime: "image/svg+xml", width: 1, height: 1, bytes }),
  sound: (bytes) => ok({ hash: nextHash(), mime: "audio/wav", bytes }),
};

const nextHash = (): string => (++count).toString(16).padStart(64, "0");

beforeEach(async () => {
  count = 0;
  let seed = 0;
  store = await openSqliteStore(":memory:");
  context = { store, clock: () => NOW, random: (bytes) => Uint8Array.from({ length: bytes }, () => seed++ % 256) };
});

afterEach(() => store.close());

test("the demo's places are those of its log", async () => {
  const counts = await loadDemo(context, asTheyAre, "Europe/Lisbon");
  expect(counts.facts).toBeGreaterThan(200);
  const report = await rebuild(context);
  expect(report.differences).toEqual([]);
  expect(report.entries).toBe(counts.entries);
});

test("a Longhold that holds anything is not filled with the demo", async () => {
  await addSubject(context, "mine", "Moons");
  await expect(loadDemo(context, asTheyAre, "UTC")).rejects.toThrow("needs an empty one");
});

test("clearing leaves an empty table, and the demo can come again", async () => {
  await loadDemo(context, asTheyAre, "UTC");
  await clearDemo(context);
  expect(await todayView(context, "UTC")).toMatchObject({ box: null, facts: 0, demo: false });
  expect((await store.read(({ library }) => library.pictureHashes())).size).toBe(0);
  expect((await store.read(({ library }) => library.soundHashes())).size).toBe(0);
  expect((await loadDemo(context, asTheyAre, "UTC")).facts).toBeGreaterThan(200);
});

test("clearing spares somebody's own cards and answers", async () => {
  await loadDemo(context, asTheyAre, "UTC");
  await addSubject(context, "mine", "Moons");
  await addFact(context, "moon", "mine", {
    kind: "pair",
    prompt: "Largest moon of Saturn",
    answer: "Titan",
    ...NO_EXTRAS,
  });
  const before = await todayView(context, "UTC");
  const id = createEntryId(NOW, context.random(10), before.lastEntry ?? undefined);
  const { plan } = await beginSitting(context, id, 400);
  const base = {
    box: before.box?.id ?? "",
    at: NOW,
    day: plan.day,
    sitting: id,
    pass: "introduction",
    answer: "recalled",
  } as const;
  const answer = { ...base, kind: "outcome", card: "moon:forward", compartment: 0, bundle: 0, seconds: 4 } as const;
  expect(
    (await recordEntries(context, [{ ...answer, id: createEntryId(NOW, context.random(10), id) }]))[0]?.status,
  ).toBe("saved");

  await clearDemo(context);
  const after = await todayView(context, "UTC");
  expect(after).toMatchObject({ facts: 1, demo: false, stock: 1, day: before.day });
  expect(after.box?.id).toBe(before.box?.id);
  const report = await rebuild(context);
  expect(report).toMatchObject({ cards: 2, differences: [] });
});
