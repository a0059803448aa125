// Says so when the server does not answer, and looks again until it does.
import { useEffect, useSyncExternalStore } from "react";
import { api } from "../client.ts";
import { isAnswering, onAnsweringChange } from "../data/connection.ts";
import { useRefresh } from "../data/queries.ts";
import { useUnsent } from "../outbox/use-outbox.ts";
import { count } from "../words.ts";

const LOOK_AGAIN_MS = 3_000;

/** A notice while the server is away; nothing otherwise. */
export function ServerGone() {
  const answering = useSyncExternalStore(onAnsweringChange, isAnswering);
  const unsent = useUnsent().length;
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
          <strong>Longhold is not answering.</strong>{" "}
          {unsent > 0
            ? `Your last ${unsent === 1 ? "answer is" : `${count(unsent)} answers are`} kept here and will be sent.`
            : null}
        </p>
      )}
    </div>
  );
}
