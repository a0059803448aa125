// The outbox as seen by pages.
import { useEffect, useState, useSyncExternalStore } from "react";
import { type OutboxState, onRefusal, onUnsentChange, outboxState, type Refusal } from "./outbox.ts";

const QUIET_MS = 1_000;

/** What the server does not have yet. */
export const useOutbox = (): OutboxState => useSyncExternalStore(onUnsentChange, outboxState);

/** Whether something has waited noticeably: most answers are gone before anybody could read of them. */
export function useNoticed({ waiting }: OutboxState): boolean {
  const oldest = waiting[0]?.id;
  const [noticed, setNoticed] = useState<string | undefined>(undefined);
  useEffect(() => {
    const timer = setTimeout(() => setNoticed(oldest), QUIET_MS);
    return () => clearTimeout(timer);
  }, [oldest]);
  return oldest !== undefined && noticed === oldest;
}

/** Calls `listener` for every refused entry while the component is shown. */
export function useRefusals(listener: (refusal: Refusal) => void): void {
  useEffect(() => onRefusal(listener), [listener]);
}
