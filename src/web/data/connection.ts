// Whether the server answers. Told by the client after every request, shown by the shell.

type Listener = () => void;

let answering = true;
const listeners = new Set<Listener>();

/** Records whether the latest request reached the server. */
export function noteAnswering(now: boolean): void {
  if (now === answering) return;
  answering = now;
  for (const listener of listeners) listener();
}

/** Whether the latest request reached the server. */
export const isAnswering = (): boolean => answering;

/** Calls `listener` whenever the answer changes; returns how to stop. */
export function onAnsweringChange(listener: Listener): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
