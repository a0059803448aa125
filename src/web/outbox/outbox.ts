// Answers wait here until the server has them. Each is written to this browser's storage before it is
// sent, so closing the page or losing the server loses nothing; sending one twice is harmless.
import { ApiError, api, isUnreachable, type SentEntry } from "../client.ts";
import { noteId } from "../data/new-id.ts";

/** An entry that the server would not take, and why. */
export interface Refusal {
  readonly entry: SentEntry;
  readonly reason: string;
}

const PREFIX = "longhold.unsent.";
const BATCH = 200;
const RETRY_MS = 2_000;

let waiting: readonly SentEntry[] = [];
let flushing: Promise<void> | null = null;
const listeners = new Set<() => void>();
const refusalListeners = new Set<(refusal: Refusal) => void>();

/** The entries still to be sent, oldest first; a new array whenever they change. */
export const unsent = (): readonly SentEntry[] => waiting;

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
  try {
    localStorage.setItem(PREFIX + entry.id, JSON.stringify(entry));
  } catch {
    // Storage is full or forbidden: the entry still waits in memory.
  }
  change([...waiting, entry]);
  void flush();
}

/** Sends everything that waits; resolves when nothing is left or the server cannot be reached. */
export function flush(): Promise<void> {
  flushing ??= sendAll().finally(() => {
    flushing = null;
  });
  return flushing;
}

/** Picks up what an earlier page left unsent and keeps trying; call once. */
export function startOutbox(): void {
  change(stored());
  for (const entry of waiting) noteId(entry.id);
  const retry = (): void => {
    if (waiting.length > 0) void flush();
  };
  setInterval(retry, RETRY_MS);
  for (const event of ["online", "focus"]) window.addEventListener(event, retry);
  retry();
}

function stored(): readonly SentEntry[] {
  const keys = Object.keys(localStorage).filter((key) => key.startsWith(PREFIX));
  return keys.sort().flatMap((key) => {
    try {
      return [JSON.parse(localStorage.getItem(key) ?? "") as SentEntry];
    } catch {
      return [];
    }
  });
}

async function sendAll(): Promise<void> {
  while (waiting.length > 0) {
    const batch = waiting.slice(0, BATCH);
    try {
      await sendBatch(batch);
    } catch (error) {
      if (!isRejection(error)) return;
      // The batch was turned down as a whole: find out which entry is at fault.
      for (const entry of batch) if (!(await sendAlone(entry))) return;
    }
  }
}

async function sendBatch(batch: readonly SentEntry[]): Promise<void> {
  const { receipts } = await api.log(batch);
  const byId = new Map(batch.map((entry) => [entry.id, entry]));
  for (const receipt of receipts) {
    const entry = byId.get(receipt.id);
    if (entry && receipt.status === "refused") refuse(entry, receipt.reason ?? "no reason was given");
  }
  remove(new Set(byId.keys()));
}

async function sendAlone(entry: SentEntry): Promise<boolean> {
  try {
    await sendBatch([entry]);
  } catch (error) {
    if (!isRejection(error)) return false;
    refuse(entry, (error as ApiError).message);
    remove(new Set([entry.id]));
  }
  return true;
}

/** A 4xx is final; anything else may pass. */
const isRejection = (error: unknown): boolean =>
  error instanceof ApiError && !isUnreachable(error) && error.status >= 400 && error.status < 500;

function refuse(entry: SentEntry, reason: string): void {
  for (const listener of refusalListeners) listener({ entry, reason });
}

function remove(ids: ReadonlySet<string>): void {
  for (const id of ids) localStorage.removeItem(PREFIX + id);
  change(waiting.filter((entry) => !ids.has(entry.id)));
}

function change(next: readonly SentEntry[]): void {
  waiting = next;
  for (const listener of listeners) listener();
}
