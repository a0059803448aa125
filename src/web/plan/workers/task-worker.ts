// A worker for one task: takes a question, gives the answer.
import { TASKS, type TaskName } from "./tasks.ts";

addEventListener("message", (event: MessageEvent<{ readonly name: TaskName; readonly question: never }>) => {
  postMessage(TASKS[event.data.name](event.data.question));
});
