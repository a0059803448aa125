// A small sign that answers are still on their way.
import { useEffect, useState, useSyncExternalStore } from "react";
import { isAnswering, onAnsweringChange } from "../data/connection.ts";
import { useUnsent } from "../outbox/use-outbox.ts";
import { counted } from "../words.ts";

const QUIET_MS = 1_000;

/** Shows how many answers wait here, once one has waited noticeably. */
export function Unsent() {
  const waiting = useUnsent();
  const oldest = waiting[0]?.id;
  const [noticed, setNoticed] = useState<string | undefined>(undefined);
  useEffect(() => {
    const timer = setTimeout(() => setNoticed(oldest), QUIET_MS);
    return () => clearTimeout(timer);
  }, [oldest]);
  // While the server is away a notice above says the same.
  const answering = useSyncExternalStore(onAnsweringChange, isAnswering);
  if (!oldest || noticed !== oldest || !answering) return null;
  return <span className="unsent">{counted(waiting.length, "answer")} to send</span>;
}
