// A sitting as this browser knows it: the server's view with what has not been sent yet.
import type { BoxView, SittingView } from "../../app/views.ts";
import type { SittingEvent } from "../../core/sitting/sitting.ts";
import type { SentEntry } from "../client.ts";

/** A sitting and the box it belongs to. */
export interface Seated {
  readonly box: BoxView;
  readonly view: SittingView;
}

/** The sitting with the entries that still wait in this browser; those that do not fit are passed over later. */
export function withUnsent(view: SittingView, waiting: readonly SentEntry[]): SittingView {
  const { sitting } = view.plan;
  const known = new Set(view.events.map(({ id }) => id));
  const own = waiting.filter((entry) => "sitting" in entry && entry.sitting === sitting);
  const added = own.filter(
    (entry): entry is SittingEvent & SentEntry => entry.kind !== "finish" && !known.has(entry.id),
  );
  const events: readonly SittingEvent[] = [...view.events, ...added];
  const gone = new Set(waiting.flatMap((entry) => (entry.kind === "take-back" ? [entry.entry] : [])));
  const standing = events.filter(({ id }) => !gone.has(id));
  const last = own.at(-1);
  const finished = last ? last.kind === "finish" : view.finished && standing.length === events.length;
  return { ...view, events: standing, finished };
}
