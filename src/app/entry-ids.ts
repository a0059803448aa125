// Identities for entries that are made here rather than by a page.
import { createEntryId, type EntryId } from "../core/log/entry-id.ts";
import type { Context, Session } from "./ports.ts";

/** A maker of identities that all sort behind what is in the log of the box. */
export async function entryIds({ clock, random }: Context, { boxes }: Session, box: string): Promise<() => EntryId> {
  let last = (await boxes.lastEntryId(box)) ?? undefined;
  return () => {
    last = createEntryId(clock(), random(10), last);
    return last;
  };
}

/** A fresh identity for something that is not in the log: a subject, a fact, a box. */
export const freshId = ({ clock, random }: Context): string => createEntryId(clock(), random(10));
