// Answers wait here until the server has them. Each is written to this browser's storage before it is
// sent, so closing the page or losing the server loses nothing; sending one twice is harmless.
import { ApiError, api, notAnswering, type SentEntry } from "../client.ts";
import { noteId } from "../data/new-id.ts";
import { browserShelf } from "../data/storage.ts";

/** An entry that the server would not take, and why. */
export interface Refusal {
  readonly entry: SentEntry;
  readonly reason: string;
}

/** What waits here; a new object whenever something changes. */
export interface OutboxState {
  /** The entries still to be sent, oldest first. */
  readonly waiting: readonly SentEntry[];
  /** Of these, the entries that the server cannot take just now, with its reason, by identity. */
  readonly held: ReadonlyMap<string, string>;
  /** Of these, the entries that the browser would not store, by identity. */
  readonly unstored: ReadonlySet<string>;
}

/** What became of an entry that was handed over. */
export type Fate =
  | { readonly kind: "saved" }
  | { readonly kind: "refused" | "held"; readonly reason: string }
  | { readonly kind: "waiting" };

const PREFIX = "longhold.unsent.";
const BATCH = 200;
const RETRY_MS = 2_000;
const NO_REASON = "No reason was given.";

let state: OutboxState = { waiting: [], held: new Map(), unstored: new Set() };
let flushing: Promise<void> | null = null;
let boxId: string | null = null;
const listeners = new Set<() => void>();
const refusalListeners = new Set<(refusal: Refusal) => void>();

/** Everything that waits here. */
export const outboxState = (): OutboxState => state;

/** The entries still to be sent, oldest first. */
export const unsent = (): readonly SentEntry[] => state.waiting;

/** Calls `listener` whenever the unsent entries change; returns how to stop. */
export function onUnsentChange(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Calls `listener` for every entry that the server refuses; returns how to stop. */
export function onRefusal(listener: (refusal: Refusal) => void): () => void {
  refusalListeners.add(listener);
  return () => refusalListeners.delete(listener);
}

/** Keeps an entry and begins to send it. */
export function post(entry: SentEntry): void {
  if (entry.kind === "take-back" && state.held.has(entry.entry)) {
    // The server never had what is taken back here.
    remove(new Set([entry.entry]));
    return;
  }
  const stored = browserShelf.set(PREFIX + entry.id, JSON.stringify(entry));
  change({
    waiting: [...state.waiting, entry],
    unstored: stored ? state.unstored : new Set(state.unstored).add(entry.id),
  });
  void flush();
}

/** Keeps an entry, sends it, and tells what became of it. */
export async function deliver(entry: SentEntry): Promise<Fate> {
  let refusal: Refusal | null = null;
  const stop = onRefusal((one) => {
    if (one.entry.id === entry.id) refusal = one;
  });
  post(entry);
  await flush();
  // A sending that was just ending may have missed it.
  if (sendable().some(({ id }) => id === entry.id)) await flush();
  stop();
  if (refusal !== null) return { kind: "refused", reason: (refusal as Refusal).reason };
  const reason = state.held.get(entry.id);
  if (reason !== undefined) return { kind: "held", reason };
  return { kind: state.waiting.some(({ id }) => id === entry.id) ? "waiting" : "saved" };
}

/** Sends everything that can be sent; resolves when nothing is left or the server cannot be reached. */
export function flush(): Promise<void> {
  flushing ??= sendAll().finally(() => {
    flushing = null;
  });
  return flushing;
}

/** Says which box lies on the table: another one may take what was held back. */
export function noteBox(id: string | null): void {
  if (id === boxId) return;
  boxId = id;
  if (state.held.size === 0) return;
  change({ held: new Map() });
  void flush();
}

/** Picks up what an earlier page left unsent and keeps trying; call once. */
export function startOutbox(): void {
  change({ waiting: stored() });
  for (const entry of state.waiting) noteId(entry.id);
  const retry = (): void => {
    if (sendable().length > 0) void flush();
  };
  setInterval(retry, RETRY_MS);
  for (const event of ["online", "focus"]) window.addEventListener(event, retry);
  window.addEventListener("beforeunload", (event) => {
    if (state.unstored.size > 0) event.preventDefault();
  });
  retry();
}

function stored(): readonly SentEntry[] {
  return browserShelf.keys(PREFIX).flatMap((key) => {
    try {
      return [JSON.parse(browserShelf.get(key) ?? "") as SentEntry];
    } catch {
      return [];
    }
  });
}

const sendable = (): readonly SentEntry[] => state.waiting.filter(({ id }) => !state.held.has(id));

async function sendAll(): Promise<void> {
  for (let batch = next(); batch.length > 0; batch = next()) {
    try {
      await sendBatch(batch);
    } catch (error) {
      if (!isUnreadable(error)) return;
      // The batch was turned down as a whole: find out which entry is at fault.
      for (const entry of batch) if (!(await sendAlone(entry))) return;
    }
  }
}

const next = (): readonly SentEntry[] => sendable().slice(0, BATCH);

/** Sends entries and sees to their receipts; an entry without one stays. */
async function sendBatch(batch: readonly SentEntry[]): Promise<void> {
  const { receipts } = await api.log(batch);
  const byId = new Map(batch.map((entry) => [entry.id, entry]));
  const done = new Set<string>();
  const held = new Map(state.held);
  const refusals: Refusal[] = [];
  for (const { id, status, reason } of Array.isArray(receipts) ? receipts : []) {
    const entry = byId.get(id);
    if (!entry) continue;
    if (status === "kept-back") held.set(id, reason ?? NO_REASON);
    else if (status === "refused") refusals.push({ entry, reason: reason ?? NO_REASON });
    if (status === "saved" || status === "known" || status === "refused") done.add(id);
  }
  const moved = done.size > 0 || held.size > state.held.size;
  change({ held });
  remove(done);
  for (const refusal of refusals) tell(refusal);
  if (!moved) throw notAnswering();
}

async function sendAlone(entry: SentEntry): Promise<boolean> {
  try {
    await sendBatch([entry]);
  } catch (error) {
    if (!isUnreadable(error)) return false;
    remove(new Set([entry.id]));
    tell({ entry, reason: (error as ApiError).message });
  }
  return true;
}

/** Only what Longhold itself cannot read will never be read; whatever else went wrong may pass. */
const isUnreadable = (error: unknown): boolean =>
  error instanceof ApiError && error.kind === "invalid-input" && error.status === 422;

function tell(refusal: Refusal): void {
  for (const listener of refusalListeners) listener(refusal);
}

function remove(ids: ReadonlySet<string>): void {
  if (ids.size === 0) return;
  for (const id of ids) browserShelf.remove(PREFIX + id);
  change({
    waiting: state.waiting.filter((entry) => !ids.has(entry.id)),
    held: new Map([...state.held].filter(([id]) => !ids.has(id))),
    unstored: new Set([...state.unstored].filter((id) => !ids.has(id))),
  });
}

function change(part: Partial<OutboxState>): void {
  state = { ...state, ...part };
  for (const listener of listeners) listener();
}
