// Identities made in this browser, always later than any it has seen.
import { createEntryId, type EntryId } from "../../core/log/entry-id.ts";

let latest: EntryId | undefined;

/** Makes sure that identities made from now on sort behind `id`, even if this clock is slow. */
export function noteId(id: EntryId): void {
  if (latest === undefined || id > latest) latest = id;
}

/** A new identity for this instant. */
export function newId(): EntryId {
  latest = createEntryId(Date.now(), crypto.getRandomValues(new Uint8Array(10)), latest);
  return latest;
}
