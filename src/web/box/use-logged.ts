// What is done to a card by hand: written to the log, told in words, and offered to be taken back.
import { useMutation } from "@tanstack/react-query";
import type { SentEntry } from "../client.ts";
import { newId } from "../data/new-id.ts";
import { useRefresh } from "../data/queries.ts";
import { deliver, type Fate } from "../outbox/outbox.ts";
import { useNotify } from "../shell/notices.tsx";

/** An entry and what to say once it is saved. */
export interface Deed {
  readonly entry: SentEntry;
  readonly done: string;
}

/** Says what really became of an entry; a refusal is told by the page around this one. */
function useTell() {
  const notify = useNotify();
  return (fate: Fate, done: string, undo?: () => void): void => {
    if (fate.kind === "saved") notify(done, undo);
    if (fate.kind === "held") notify(`Not done yet, but kept here. ${fate.reason}`);
    if (fate.kind === "waiting") notify("Not done yet: it is kept here until Longhold answers.");
  };
}

/** Takes an entry back and says so. */
export function useTakeBack(): (entry: Pick<SentEntry, "id" | "box">) => Promise<void> {
  const refresh = useRefresh();
  const tell = useTell();
  return async ({ id, box }) => {
    tell(await deliver({ id: newId(), box, at: Date.now(), kind: "take-back", entry: id }), "Taken back.");
    await refresh();
  };
}

/** Writes an entry and says what really became of it. */
export function useLogged() {
  const refresh = useRefresh();
  const tell = useTell();
  const takeBack = useTakeBack();
  return useMutation({
    mutationFn: ({ entry }: Deed) => deliver(entry),
    onSuccess: (fate, { entry, done }) => {
      tell(fate, done, () => void takeBack(entry));
      return refresh();
    },
  });
}
