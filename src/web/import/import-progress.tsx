// Watches a list being kept, and says what came of it.
import { useMutation, useQuery } from "@tanstack/react-query";
import { useEffect } from "react";
import { Link } from "wouter";
import type { ImportStatus } from "../../app/views.ts";
import { api } from "../client.ts";
import { useRefresh, useToday } from "../data/queries.ts";
import { Loaded, Trouble } from "../shell/states.tsx";
import { count, counted } from "../words.ts";
import { workshopAddress } from "../workshop/use-place.ts";

const POLL_MS = 250;

const underWay = (status: ImportStatus | undefined): boolean =>
  status === undefined || ["waiting", "reading", "saving"].includes(status.state);

/** Progress with a way to stop, then the result. */
export function ImportProgress({ id, again }: { readonly id: string; readonly again: () => void }) {
  const refresh = useRefresh();
  const status = useQuery({
    queryKey: ["import-status", id],
    queryFn: () => api.importStatus(id),
    refetchInterval: ({ state }) => (underWay(state.data) ? POLL_MS : false),
    refetchIntervalInBackground: true,
  });
  const over = !underWay(status.data);
  useEffect(() => {
    if (over) void refresh();
  }, [over, refresh]);
  return (
    <Loaded query={status} what="the import">
      {(shown) => (over ? <Result status={shown} again={again} /> : <Progress status={shown} />)}
    </Loaded>
  );
}

function Progress({ status }: { readonly status: ImportStatus }) {
  const stop = useMutation({ mutationFn: () => api.stopImport(status.id) });
  return (
    <section className="sheet" aria-labelledby="keeping">
      <h2 id="keeping">Keeping the facts</h2>
      <progress max={Math.max(1, status.total)} value={status.done} aria-label="Rows kept so far" />
      <p>
        {count(status.done)} of {count(status.total)} rows
      </p>
      <p>
        <button type="button" disabled={stop.isPending} onClick={() => stop.mutate()}>
          Stop
        </button>{" "}
        <span className="hint">If you stop now, nothing is kept.</span>
      </p>
      {stop.error ? <Trouble error={stop.error} /> : null}
    </section>
  );
}

function Result({ status, again }: { readonly status: ImportStatus; readonly again: () => void }) {
  if (status.state === "done") return <Kept status={status} />;
  return (
    <section className="sheet" role="status">
      <h2>{status.state === "stopped" ? "Stopped: nothing was saved" : "The list could not be kept"}</h2>
      {status.message ? <p dir="auto">{status.message}</p> : null}
      <button type="button" className="primary" onClick={again}>
        Bring a list again
      </button>
    </section>
  );
}

function Kept({ status }: { readonly status: ImportStatus }) {
  const today = useToday();
  const place = workshopAddress({ subject: status.subject, fact: null });
  return (
    <section className="sheet" role="status">
      <h2>{counted(status.saved, "fact")} kept</h2>
      <p>
        {status.duplicates > 0 ? `${counted(status.duplicates, "duplicate")} skipped. ` : ""}
        {status.problems > 0 ? `${counted(status.problems, "row")} left out because of problems.` : ""}
      </p>
      <p className="row">
        <Link href="/" className="button big primary">
          {today.data?.box ? "Go to Today" : "Set up the box"}
        </Link>
        <Link href={place} className="button">
          Look at the facts
        </Link>
      </p>
    </section>
  );
}
