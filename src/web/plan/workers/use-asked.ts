// A task that is worked out for a question as soon as the question stands still.
import { useEffect, useState } from "react";
import { useDebounced } from "../../data/use-debounced.ts";
import type { TaskAnswer, TaskName, TaskQuestion } from "./tasks.ts";
import { type Task, useTask } from "./use-task.ts";

/** How long a question stands still before work on it begins. */
const PAUSE_MS = 350;

/** A task with the question that its answer belongs to. */
export interface Asked<N extends TaskName> {
  readonly task: Task<N>;
  /** The newest answer, and whether it answers what is asked now. */
  readonly answer: TaskAnswer<N> | null;
  readonly current: boolean;
  /** Whether work stopped before there was an answer to what is asked now. */
  readonly waiting: boolean;
  readonly again: () => void;
}

/** Works `question` out after a pause; a question of null rests. */
export function useAsked<N extends TaskName>(name: N, question: TaskQuestion<N> | null): Asked<N> {
  const task = useTask(name);
  const { start, stop, busy, answered } = task;
  const settled = useDebounced(question, PAUSE_MS);
  const [begun, setBegun] = useState<TaskQuestion<N> | null>(null);
  useEffect(() => {
    setBegun(settled);
    if (settled === null) stop();
    else start(settled);
  }, [settled, start, stop]);
  const current = question !== null && answered === question;
  return {
    task,
    answer: task.answer,
    current,
    waiting: question !== null && begun === question && !busy && !current,
    again: () => {
      if (question !== null) start(question);
    },
  };
}
