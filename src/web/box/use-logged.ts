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

/** Writes an entry and says what really became of it. */
export function useLogged() {
  const refresh = useRefresh();
  const notify = useNotify();
  const tell = (fate: Fate, done: string, undo?: () => void): void => {
    // A refusal is told by the page around this one.
    if (fate.kind === "saved") notify(done, undo);
    if (fate.kind === "held") notify(`Not done yet, but kept here. ${fate.reason}`);
    if (fate.kind === "waiting") notify("Not done yet: it is kept here until Longhold answers.");
  };
  const takeBack = async ({ id, box }: SentEntry): Promise<void> => {
    tell(await deliver({ id: newId(), box, at: Date.now(), kind: "take-back", entry: id }), "Taken back.");
    await refresh();
  };
  return useMutation({
    mutationFn: ({ entry }: Deed) => deliver(entry),
    onSuccess: (fate, { entry, done }) => {
      tell(fate, done, () => void takeBack(entry));
      return refresh();
    },
  });
}
