// Watches a list being saved, and says what came of it.
import { useMutation, useQuery } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import { Link } from "wouter";
import type { ImportStatus } from "../../app/views.ts";
import { api } from "../client.ts";
import { useRefresh, useToday } from "../data/queries.ts";
import { ArrivingHeading } from "../shell/arriving-heading.tsx";
import { BusyButton } from "../shell/busy-button.tsx";
import { Loaded, Trouble } from "../shell/states.tsx";
import { count, counted } from "../words.ts";
import { useUndo } from "../workshop/history/use-undo.ts";
import { workshopAddress } from "../workshop/use-place.ts";

const POLL_MS = 250;

const underWay = (status: ImportStatus | undefined): boolean =>
  status === undefined || ["waiting", "reading", "saving"].includes(status.state);

interface ProgressProps {
  readonly id: string;
  readonly again: () => void;
  /** Called once when the facts are saved. */
  readonly saved: () => void;
}

/** Progress with a way to stop, then the result. */
export function ImportProgress({ id, again, saved }: ProgressProps) {
  const refresh = useRefresh();
  const status = useQuery({
    queryKey: ["import-status", id],
    queryFn: () => api.importStatus(id),
    refetchInterval: ({ state }) => (underWay(state.data) ? POLL_MS : false),
    refetchIntervalInBackground: true,
  });
  const over = !underWay(status.data);
  const isSaved = status.data?.state === "done";
  const onSaved = useRef(saved);
  useEffect(() => {
    if (over) void refresh();
  }, [over, refresh]);
  useEffect(() => {
    if (isSaved) onSaved.current();
  }, [isSaved]);
  return (
    <Loaded query={status} what="the import">
      {(shown) => (over ? <Result status={shown} again={again} /> : <Progress status={shown} />)}
    </Loaded>
  );
}

function Progress({ status }: { readonly status: ImportStatus }) {
  const stop = useMutation({ mutationFn: () => api.stopImport(status.id) });
  return (
    <section className="sheet" aria-labelledby="saving">
      <ArrivingHeading id="saving">Saving the facts</ArrivingHeading>
      <progress max={Math.max(1, status.total)} value={status.done} aria-label="Rows saved so far" />
      <p>
        {count(status.done)} of {count(status.total)} rows
      </p>
      <p>
        <BusyButton busy={stop.isPending} onClick={() => stop.mutate()}>
          Stop
        </BusyButton>{" "}
        <span className="hint">If you stop now, nothing is saved.</span>
      </p>
      {stop.error ? <Trouble error={stop.error} /> : null}
    </section>
  );
}

function Result({ status, again }: { readonly status: ImportStatus; readonly again: () => void }) {
  if (status.state === "done") return <Saved status={status} again={again} />;
  return (
    <section className="sheet" role="status">
      <ArrivingHeading>
        {status.state === "stopped" ? "Stopped: nothing was saved" : "The list could not be saved"}
      </ArrivingHeading>
      {status.message ? <p dir="auto">{status.message}</p> : null}
      <button type="button" className="primary" onClick={again}>
        Bring a list again
      </button>
    </section>
  );
}

function Saved({ status, again }: { readonly status: ImportStatus; readonly again: () => void }) {
  const today = useToday();
  const { undo, busy } = useUndo();
  const [undone, setUndone] = useState(false);
  const { edit } = status;
  const place = workshopAddress({ subject: status.subject, fact: null });
  const others = [
    status.duplicates > 0 ? `${counted(status.duplicates, "duplicate")} skipped.` : "",
    status.problems > 0 ? `${counted(status.problems, "row")} left out because of problems.` : "",
  ].filter((text) => text !== "");
  if (undone) {
    return (
      <section className="sheet" role="status">
        <ArrivingHeading>The import was undone</ArrivingHeading>
        <p>Its facts and their cards are put away. “Earlier edits” in the Workshop’s table can bring them back.</p>
        <button type="button" className="primary" onClick={again}>
          Bring a list again
        </button>
      </section>
    );
  }
  return (
    <section className="sheet" role="status">
      <ArrivingHeading>{counted(status.saved, "fact")} saved</ArrivingHeading>
      {others.length > 0 ? <p>{others.join(" ")}</p> : null}
      <p className="row">
        <Link href="/" className="button big primary">
          {today.data?.box ? "Go to Today" : "Set up the box"}
        </Link>
        <Link href={place} className="button">
          Look at the facts
        </Link>
        {edit === null ? null : (
          <BusyButton busy={busy} onClick={() => undo(edit, { onSuccess: () => setUndone(true) })}>
            Undo the import
          </BusyButton>
        )}
      </p>
    </section>
  );
}
