// A thousand damaged lists brought into a real database: what is good is there to the letter, and an import
// that is stopped or fails half way leaves nothing at all.
import { afterAll, beforeAll, expect, test } from "vitest";
import { FailureError } from "../../src/app/failure.ts";
import type { Context, Store } from "../../src/app/ports.ts";
import { uniform } from "../../src/core/random.ts";
import { importList } from "../../src/exchange/import-list.ts";
import { createListReader } from "../../src/exchange/read-list.ts";
import { openSqliteStore } from "../../src/store/sqlite-store.ts";
import { FIND_NOTHING } from "../support/find-media.ts";
import { damagedList } from "./damaged-files.ts";

const LISTS = 1_000;
let store: Store;
let context: Context;
/** How many identities may still be made before the machine "fails"; endless unless a list is to fail. */
let allowance = Number.POSITIVE_INFINITY;

beforeAll(async () => {
  store = await openSqliteStore(":memory:");
  let count = 0;
  const random = (bytes: number): Uint8Array => {
    if (allowance-- <= 0) throw new Error("the machine failed");
    return Uint8Array.from({ length: bytes }, (_, i) => Math.floor(uniform("bytes", `${count++}/${i}`) * 256));
  };
  context = { store, clock: () => Date.UTC(2026, 2, 14), random };
});

afterAll(() => store.close());

const contents = (subject: string) =>
  store.read(async ({ library }) => {
    const all = [];
    for await (const { id: _id, subject: _subject, angles: _angles, ...content } of library.eachFact(subject))
      all.push(content);
    return all;
  });

const everything = () =>
  store.read(async ({ library }) => ({
    subjects: (await library.subjects()).length,
    facts: [...(await library.countBySubject("fact")).values()],
    cards: [...(await library.countBySubject("card")).values()],
  }));

test(`each of ${LISTS} damaged lists is saved whole or not at all`, async () => {
  const seen = { saved: 0, stopped: 0, failed: 0 };
  for (let n = 0; n < LISTS; n++) {
    const { bytes, choices } = damagedList(n);
    const reader = createListReader(bytes, choices, FIND_NOTHING);
    if (!reader.ok) throw new Error(`list ${n} was refused`);
    const good = [...reader.value.drafts()].flatMap((item) => (item.kind === "fact" ? [item.content] : []));
    const before = await everything();
    const target = { name: `List ${n}` };
    let rows = 0;
    const stopAfter = n % 3 === 1 ? n % 7 : Number.POSITIVE_INFINITY;
    allowance = n % 3 === 2 ? 1 + (n % 5) : Number.POSITIVE_INFINITY;
    const result = await importList(
      context,
      { bytes, media: { pictures: new Map(), sounds: new Map() } },
      choices,
      { target, oneWay: false },
      {
        shouldStop: () => rows++ >= stopAfter,
      },
    ).catch((error: unknown) => error);
    allowance = Number.POSITIVE_INFINITY;
    if (result instanceof Error) {
      expect(await everything()).toEqual(before);
      if (result instanceof FailureError) expect(result.failure.kind).toBe("stopped");
      else expect(result.message).toBe("the machine failed");
      seen[result instanceof FailureError ? "stopped" : "failed"]++;
      continue;
    }
    const outcome = result as Awaited<ReturnType<typeof importList>>;
    expect(outcome.saved).toBe(good.length);
    expect(await contents(outcome.subject)).toEqual(good);
    seen.saved++;
  }
  // Otherwise one of the three ways was hardly tried.
  expect(Math.min(seen.saved, seen.stopped, seen.failed)).toBeGreaterThan(150);
}, 120_000);
