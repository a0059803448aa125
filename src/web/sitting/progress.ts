// How far a sitting has come, counted in steps: every asking and every first look.
import type { SittingState } from "../../core/sitting/sitting.ts";

/** Steps done and steps in all, as far as they are known: a missed card adds one for the second pass. */
export interface Progress {
  readonly done: number;
  readonly total: number;
}

/** Counts visits, first looks, introductions and the second pass. */
export function progressOf({ plan, events, visited, looked, newPile, secondPile }: SittingState): Progress {
  const due = plan.piles.reduce((sum, pile) => sum + pile.cards.length, 0);
  const fresh = plan.newCards.length;
  const seen = plan.newCards.filter((ref) => looked.has(ref.card)).length;
  const again = new Set(
    events.flatMap((event) =>
      event.kind === "outcome" && event.pass === "second" && event.answer === "recalled" ? [event.card] : [],
    ),
  ).size;
  return {
    done: visited.size + seen + (fresh - newPile.length) + again,
    total: due + 2 * fresh + again + secondPile.length,
  };
}
