// What a large box costs: 100,000 cards and a million first answers. Prints medians of the real server
// over HTTP beside the bare SQLite statements that the same act cannot do without, from one run.
// Run: npm run bench   (about two minutes and 1 GB of disk; --small for a tenth)
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import Database from "better-sqlite3";
import type { PaperDayView, SittingView, TodayView } from "../src/app/views.ts";
import { createEntryId } from "../src/core/log/entry-id.ts";
import { databaseFile } from "../src/server/data-folder.ts";
import { openSqliteStore } from "../src/store/sqlite-store.ts";
import { makeLargeBox } from "./large-box.ts";

const small = process.argv.includes("--small");
const size = small ? { facts: 5_000, days: 440, newPerDay: 24 } : { facts: 50_000, days: 440, newPerDay: 240 };
const RUNS = 31;

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
const random = (): Uint8Array => crypto.getRandomValues(new Uint8Array(10));

async function timed<T>(work: () => Promise<T> | T): Promise<[milliseconds: number, value: T]> {
  const begun = performance.now();
  const value = await work();
  return [performance.now() - begun, value];
}

async function medianOf(work: (i: number) => Promise<unknown> | unknown, runs = RUNS): Promise<number> {
  const times: number[] = [];
  for (let i = 0; i < runs; i++) times.push((await timed(() => work(i)))[0]);
  return median(times);
}

function startServer(data: string): Promise<{ child: ChildProcess; url: string }> {
  const program = fileURLToPath(new URL("../bin/longhold.js", import.meta.url));
  const child = spawn(process.execPath, [program, "serve", "--no-open", "--port", "0", "--data", data]);
  return new Promise((resolve, reject) => {
    child.stderr.on("data", (chunk) => process.stderr.write(chunk));
    child.once("exit", (status) => reject(new Error(`the server ended with ${status}`)));
    child.stdout.on("data", (chunk) => {
      const url = /http:\S+/.exec(String(chunk))?.[0];
      if (url) resolve({ child, url });
    });
  });
}

const memory = (child: ChildProcess): string => {
  const status = readFileSync(`/proc/${child.pid}/status`, "utf8");
  const read = (name: string) => Math.round(Number(new RegExp(`${name}:\\s+(\\d+)`).exec(status)?.[1] ?? 0) / 1024);
  return `${read("VmRSS")} MB now, ${read("VmHWM")} MB at most`;
};

let child: ChildProcess | undefined;
const folder = mkdtempSync(join(tmpdir(), "longhold-bench-"));
try {
  const store = await openSqliteStore(databaseFile(folder));
  const [building, made] = await timed(() => makeLargeBox(store, Date.now(), size));
  await store.close();
  const bytes = statSync(databaseFile(folder)).size;
  console.log(
    `${made.cards} cards, ${made.visits} first answers, ${Math.round(bytes / 1e6)} MB on disk (made in ${Math.round(building / 1000)} s)`,
  );

  const [starting, server] = await timed(() => startServer(folder));
  child = server.child;
  console.log(`start-up until the address is printed: ${Math.round(starting)} ms; memory ${memory(server.child)}`);
  const call = async <T>(method: string, path: string, body?: unknown): Promise<T> => {
    const response = await fetch(`${server.url}${path}`, {
      method,
      headers: body === undefined ? {} : { "content-type": "application/json" },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    if (!response.ok) throw new Error(`${method} ${path}: ${response.status} ${await response.text()}`);
    return (await response.json()) as T;
  };

  const bare = new Database(databaseFile(folder));
  bare.pragma("synchronous = FULL");
  const today = await call<TodayView>("GET", "/api/today");
  const box = today.box?.id ?? "";
  const piles = bare.prepare(
    "select compartment, bundle, count(*) from placement where box_id = ? and place = 'compartment' and due <= ? group by compartment, bundle",
  );
  const cards = bare.prepare(
    "select card_id, fact_id, compartment, bundle from placement where box_id = ? and place = 'compartment' and due <= ?",
  );

  const rows: [name: string, product: number, bare: number][] = [];
  rows.push([
    "open Today",
    await medianOf(() => call("GET", "/api/today")),
    await medianOf(() => piles.all(box, today.day)),
  ]);

  const sitting = createEntryId(Date.now(), random(), today.lastEntry ?? undefined);
  const [first, view] = await timed(() => call<SittingView>("POST", "/api/sitting", { id: sitting, newCards: 20 }));
  const due = view.plan.piles.flatMap((pile) =>
    pile.cards.map((card) => ({ ...card, compartment: pile.compartment, bundle: pile.bundle })),
  );
  rows.push([
    "start or resume a sitting",
    await medianOf(() => call("POST", "/api/sitting", { id: sitting, newCards: 20 })),
    await medianOf(() => cards.all(box, today.day)),
  ]);

  const answers = Math.min(201, due.length);
  let last = view.lastEntry;
  const answer = async (i: number): Promise<void> => {
    const card = due[i];
    if (!card) throw new Error("too few cards are due for the measurement");
    last = createEntryId(Date.now(), random(), last);
    const entry = {
      id: last,
      box,
      at: Date.now(),
      kind: "outcome",
      card: card.card,
      day: view.plan.day,
      sitting,
      pass: "visit",
      answer: "recalled",
      compartment: card.compartment,
      bundle: card.bundle,
      seconds: 5,
    };
    const { receipts } = await call<{ receipts: { status: string }[] }>("POST", "/api/log", { entries: [entry] });
    if (receipts[0]?.status !== "saved") throw new Error(JSON.stringify(receipts));
  };
  const log = bare.prepare(
    "insert into log (id, box_id, learner_id, at, kind, card_id) values (?, ?, 'local', 0, 'look', ?)",
  );
  const move = bare.prepare("update placement set due = due where box_id = ? and card_id = ?");
  const write = bare.transaction((i: number) => {
    const card = due[i]?.card ?? "";
    log.run(createEntryId(Date.now() - 1e9, random()), box, card);
    move.run(box, card);
  });
  rows.push(["record an outcome", await medianOf(answer, answers), await medianOf((i) => write(i), answers)]);
  rows.push([
    "read 40 cards",
    await medianOf((i) => call("POST", "/api/cards/read", { ids: due.slice(i, i + 40).map((card) => card.card) })),
    await medianOf((i) =>
      bare
        .prepare(
          `select * from fact where id in (${due
            .slice(i, i + 40)
            .map((card) => `'${card.fact}'`)
            .join(",")})`,
        )
        .all(),
    ),
  ]);
  rows.push([
    "open the drawer",
    await medianOf(() => call("GET", "/api/box")),
    await medianOf(() =>
      bare
        .prepare(
          "select place, compartment, bundle, count(*) from placement where box_id = ? group by place, compartment, bundle",
        )
        .all(box),
    ),
  ]);
  rows.push([
    "search the facts",
    await medianOf(() => call("GET", "/api/facts?search=place+77&limit=50")),
    await medianOf(() =>
      bare
        .prepare(
          "select * from fact where deleted = 0 and search like '%place%' and search like '%77%' order by id desc limit 50",
        )
        .all(),
    ),
  ]);

  const { dates } = await call<PaperDayView>("GET", "/api/paper");
  const weekAgo = dates.at(-8) ?? "";
  rows.push([
    "a day on paper a week ago",
    await medianOf(() => call("GET", `/api/paper?date=${weekAgo}`), 5),
    await medianOf(() => bare.prepare("select * from placement where box_id = ?").all(box), 5),
  ]);

  console.log(`${due.length} cards due today; the very first opening of the sitting took ${Math.round(first)} ms`);
  console.log("median, ms                     Longhold over HTTP   bare SQLite   ratio");
  for (const [name, product, plain] of rows) {
    console.log(
      `${name.padEnd(30)} ${product.toFixed(2).padStart(18)} ${plain.toFixed(2).padStart(13)} ${(product / plain).toFixed(1).padStart(7)}`,
    );
  }
  console.log(`memory after the measurement: ${memory(server.child)}`);
  bare.close();
  server.child.removeAllListeners("exit");
  server.child.kill("SIGTERM");
  await new Promise((resolve) => server.child.once("exit", resolve));
} finally {
  child?.kill("SIGKILL");
  rmSync(folder, { recursive: true, force: true });
}
