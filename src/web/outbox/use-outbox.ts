// The outbox as seen by pages.
import { useEffect, useSyncExternalStore } from "react";
import type { SentEntry } from "../client.ts";
import { onRefusal, onUnsentChange, type Refusal, unsent } from "./outbox.ts";

/** The entries that the server does not have yet. */
export const useUnsent = (): readonly SentEntry[] => useSyncExternalStore(onUnsentChange, unsent);

/** Calls `listener` for every refused entry while the component is shown. */
export function useRefusals(listener: (refusal: Refusal) => void): void {
  useEffect(() => onRefusal(listener), [listener]);
}
