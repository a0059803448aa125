// Identities for entries that are made here rather than by a page.
import { createEntryId, type EntryId } from "../core/log/entry-id.ts";
import type { Context, Session } from "./ports.ts";

/** A maker of identities of which each sorts behind the one before, and all behind `after`. */
export function idSeries({ clock, random }: Context, after?: EntryId): () => EntryId {
  let last = after;
  return () => {
    last = createEntryId(clock(), random(10), last);
    return last;
  };
}

/** A maker of identities that all sort behind what is in the log of the box. */
export const entryIds = async (context: Context, { boxes }: Session, box: string): Promise<() => EntryId> =>
  idSeries(context, (await boxes.lastEntryId(box)) ?? undefined);

/** A fresh identity for something that is not in the log: a subject, a fact, a box. */
export const freshId = ({ clock, random }: Context): string => createEntryId(clock(), random(10));
