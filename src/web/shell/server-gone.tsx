// Says so when the server does not answer, and looks again until it does.
import { useEffect, useSyncExternalStore } from "react";
import { api } from "../client.ts";
import { isAnswering, onAnsweringChange } from "../data/connection.ts";
import { useRefresh } from "../data/queries.ts";
import { keptWords } from "../outbox/kept-words.ts";
import { useOutbox } from "../outbox/use-outbox.ts";

const LOOK_AGAIN_MS = 3_000;

/** A notice while the server is away; nothing otherwise. */
export function ServerGone() {
  const answering = useSyncExternalStore(onAnsweringChange, isAnswering);
  const outbox = useOutbox();
  const refresh = useRefresh();
  useEffect(() => {
    if (answering) return;
    const timer = setInterval(() => {
      api.today().then(refresh, () => undefined);
    }, LOOK_AGAIN_MS);
    return () => clearInterval(timer);
  }, [answering, refresh]);
  return (
    <div role="status" className="server-gone-region">
      {answering ? null : (
        <p className="server-gone">
          <strong>Longhold is not answering.</strong> {keptWords(outbox)}
        </p>
      )}
    </div>
  );
}
