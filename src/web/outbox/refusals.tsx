// Tells the reader, on whatever page, that an answer or a move was not taken.
import { useCallback } from "react";
import { useNotify } from "../shell/notices.tsx";
import type { Refusal } from "./outbox.ts";
import { useRefusals } from "./use-outbox.ts";

/** Draws nothing; every refused entry becomes a notice. */
export function Refusals() {
  const notify = useNotify();
  const tell = useCallback(
    ({ entry, reason }: Refusal) => notify(`${"sitting" in entry ? "An answer" : "A change"} was not taken. ${reason}`),
    [notify],
  );
  useRefusals(tell);
  return null;
}
