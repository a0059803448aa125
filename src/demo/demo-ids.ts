// Identities for made-up history: as if they had been made at their time, yet the same on every run.
import { createEntryId, type EntryId } from "../core/log/entry-id.ts";
import { hash32 } from "../core/random.ts";

/** Gives the next identity for an instant; each sorts behind the one before. */
export type IdMaker = (at: number) => EntryId;

const ID_BYTES = 10;

/** A maker of identities whose random part follows from `seed`. */
export function seededIds(seed: string): IdMaker {
  let last: EntryId | undefined;
  let count = 0;
  return (at) => {
    const key = `${at}/${count++}`;
    const random = Uint8Array.from({ length: ID_BYTES }, (_, i) => hash32(seed, `${key}/${i}`) & 0xff);
    last = createEntryId(at, random, last);
    return last;
  };
}
