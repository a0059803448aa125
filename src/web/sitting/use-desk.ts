// The state of a sitting in this browser: the core decides what comes next, the outbox keeps every answer.
import { useQueryClient } from "@tanstack/react-query";
import { useCallback, useEffect, useMemo, useState } from "react";
import type { Answer } from "../../core/log/entry.ts";
import {
  applyEvent,
  askedAs,
  lastEvent,
  nextStep,
  replaySitting,
  type SittingEvent,
  type SittingState,
  type Step,
  withoutEvent,
} from "../../core/sitting/sitting.ts";
import { newId, noteId } from "../data/new-id.ts";
import { KEYS } from "../data/queries.ts";
import { post } from "../outbox/outbox.ts";
import type { Seated } from "./seated.ts";

/** Everything a person can do at the desk. */
export interface Desk {
  readonly state: SittingState;
  readonly step: Step;
  readonly canTakeBack: boolean;
  /** Marks the shown new card as seen on both sides. */
  readonly seen: () => void;
  /** Records the outcome of the card that is asked. */
  readonly answer: (answer: Answer, seconds: number) => void;
  /** Undoes the latest event; again undoes the one before. */
  readonly takeBack: () => void;
}

/** The desk of a sitting. `trouble` is told, in words, when an event does not fit. */
export function useDesk({ box, view }: Seated, trouble: (reason: string) => void): Desk {
  const client = useQueryClient();
  const [state, setState] = useState(() => openSitting(view));
  // What became due again after the closing page is for the next sitting.
  const [finished, setFinished] = useState(view.finished);
  const step = useMemo((): Step => (finished ? { kind: "done" } : nextStep(state)), [state, finished]);

  const keep = useCallback(
    (next: SittingState, done: boolean): void => {
      setState(next);
      setFinished(done);
      // Coming back to this page goes on from here, even while the server is away.
      client.setQueryData<Seated>(KEYS.sitting, { box, view: { ...view, events: next.events, finished: done } });
    },
    [client, box, view],
  );

  const record = (event: SittingEvent): void => {
    const next = applyEvent(state, event);
    if (!next.ok) {
      trouble(next.error);
      return;
    }
    post(event);
    keep(next.value, false);
  };

  const entry = () => ({ id: newId(), box: box.id, at: Date.now(), day: view.plan.day, sitting: view.plan.sitting });

  const seen = (): void => {
    if (step.kind === "look") record({ ...entry(), kind: "look", card: step.card.card });
  };

  const answer = (given: Answer, seconds: number): void => {
    if (step.kind === "done" || step.kind === "look") return;
    record({ ...entry(), kind: "outcome", card: step.card.card, answer: given, ...askedAs(state, step), seconds });
  };

  const takeBack = (): void => {
    const last = lastEvent(state);
    if (!last) return;
    post({ id: newId(), box: box.id, at: Date.now(), kind: "take-back", entry: last.id });
    keep(withoutEvent(state, last.id), false);
  };

  useEffect(() => {
    if (step.kind !== "done" || finished) return;
    post({ id: newId(), box: box.id, at: Date.now(), kind: "finish", sitting: view.plan.sitting });
    keep(state, true);
  }, [step.kind, finished, box.id, view.plan.sitting, keep, state]);

  return { state, step, canTakeBack: state.events.length > 0, seen, answer, takeBack };
}

function openSitting(view: Seated["view"]): SittingState {
  noteId(view.plan.sitting);
  noteId(view.lastEntry);
  for (const event of view.events) noteId(event.id);
  return replaySitting(view.plan, view.events);
}
