// A small sign that answers are still here, once they have waited noticeably.
import { useSyncExternalStore } from "react";
import { isAnswering, onAnsweringChange } from "../data/connection.ts";
import { keptWords } from "./kept-words.ts";
import { useNoticed, useOutbox } from "./use-outbox.ts";

/** How many answers wait in this browser and why; nothing while the server is away, when a notice says it. */
export function KeptHere({ className }: { readonly className: string }) {
  const outbox = useOutbox();
  const noticed = useNoticed(outbox);
  const answering = useSyncExternalStore(onAnsweringChange, isAnswering);
  if (!noticed || !answering) return null;
  return (
    <span className={className} role="status">
      {keptWords(outbox)}
    </span>
  );
}
