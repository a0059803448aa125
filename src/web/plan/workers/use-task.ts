// One task at a time in a worker of its own, which is ended when the question changes or nobody waits any more.
import { useCallback, useEffect, useRef, useState } from "react";
import type { TaskAnswer, TaskName, TaskQuestion } from "./tasks.ts";

/** A task under way or done. */
export interface Task<N extends TaskName> {
  /** The newest answer; it stays while the next is worked out. */
  readonly answer: TaskAnswer<N> | null;
  /** The question that it answers. */
  readonly answered: TaskQuestion<N> | null;
  readonly busy: boolean;
  /** The worker broke: a bug, or no memory. */
  readonly failed: boolean;
  readonly start: (question: TaskQuestion<N>) => void;
  /** Ends the work; the last answer stays. */
  readonly stop: () => void;
}

interface Done<N extends TaskName> {
  readonly question: TaskQuestion<N>;
  readonly answer: TaskAnswer<N>;
}

/** A task that is started when it is wanted; a new question ends the old one. */
export function useTask<N extends TaskName>(name: N): Task<N> {
  const [done, setDone] = useState<Done<N> | null>(null);
  const [state, setState] = useState<"idle" | "busy" | "failed">("idle");
  const worker = useRef<Worker | null>(null);
  const end = useCallback((next: "idle" | "failed") => {
    worker.current?.terminate();
    worker.current = null;
    setState(next);
  }, []);
  const start = useCallback(
    (question: TaskQuestion<N>) => {
      worker.current?.terminate();
      const own = new Worker(new URL("./task-worker.ts", import.meta.url), { type: "module" });
      worker.current = own;
      setState("busy");
      own.onmessage = (event: MessageEvent<TaskAnswer<N>>) => {
        setDone({ question, answer: event.data });
        end("idle");
      };
      own.onerror = () => end("failed");
      own.postMessage({ name, question });
    },
    [name, end],
  );
  useEffect(() => () => worker.current?.terminate(), []);
  return {
    answer: done?.answer ?? null,
    answered: done?.question ?? null,
    busy: state === "busy",
    failed: state === "failed",
    start,
    stop: useCallback(() => end("idle"), [end]),
  };
}
