// What is seen of a task: that it goes on and can be stopped, that it was stopped, or that it broke.
import { useEffect, useState } from "react";
import type { Task } from "./use-task.ts";

/** Work that is over sooner is not worth a sign. */
const QUIET_MS = 300;

/** A line for a task under way; `again` starts it anew. `waiting` says that it should have an answer and has none. */
export function TaskState(props: {
  readonly task: Pick<Task<never>, "busy" | "failed" | "stop">;
  readonly what: string;
  readonly waiting: boolean;
  readonly again: () => void;
}) {
  const { task, what, waiting, again } = props;
  const noticeable = useLasting(task.busy, QUIET_MS);
  if (task.failed)
    return (
      <div className="trouble" role="alert">
        <p>This could not be worked out.</p>
        <button type="button" onClick={again}>
          Try again
        </button>
      </div>
    );
  if (noticeable)
    return (
      <p className="row task-state" role="status">
        <span>Working out {what}</span>
        <progress aria-label={`Working out ${what}`} />
        <button type="button" onClick={task.stop}>
          Stop
        </button>
      </p>
    );
  if (!task.busy && waiting)
    return (
      <p className="row task-state">
        <span>Not worked out.</span>
        <button type="button" onClick={again}>
          Work it out
        </button>
      </p>
    );
  return null;
}

/** Whether something has lasted for so many milliseconds. */
function useLasting(now: boolean, ms: number): boolean {
  const [lasting, setLasting] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setLasting(now), now ? ms : 0);
    return () => clearTimeout(timer);
  }, [now, ms]);
  return now && lasting;
}
