// One sitting open in two windows: what one has done reaches the other early, late or twice.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyPlan, eventFor, visitedBy } from "../../../tests/support/any-sitting.ts";
import { inLogOrder, type OutcomeEntry } from "../log/entry.ts";
import { applyEvent, nextStep, replaySitting, type SittingEvent, type SittingState, startSitting } from "./sitting.ts";

interface Turn {
  readonly window: 0 | 1;
  readonly recalled: boolean;
  /** Before the answer, the window hears what the other has done so far. */
  readonly hears: boolean;
}

const anyTurns = fc.array(
  fc.record<Turn>({ window: fc.constantFrom(0, 1), recalled: fc.boolean(), hears: fc.boolean() }),
  { maxLength: 80 },
);

const hear = (state: SittingState, events: readonly SittingEvent[]): SittingState => {
  const known = new Set(state.events.map((event) => event.id));
  return events
    .filter((event) => !known.has(event.id))
    .reduce((now, event) => {
      const next = applyEvent(now, event);
      return next.ok ? next.value : now;
    }, state);
};

const visitsIn = (events: readonly SittingEvent[]) =>
  events.filter((event): event is OutcomeEntry => event.kind === "outcome" && event.pass === "visit");

/** Plays the turns in both windows; their last states and all that was sent. */
function play(plan: Parameters<typeof startSitting>[0], turns: readonly Turn[]) {
  const windows: [SittingState, SittingState] = [startSitting(plan), startSitting(plan)];
  const sent: SittingEvent[] = [];
  turns.forEach(({ window, recalled, hears }, i) => {
    if (hears) windows[window] = hear(windows[window], sent);
    const step = nextStep(windows[window]);
    if (step.kind === "done") return;
    const event = eventFor(plan, step, recalled ? "recalled" : "missed", i + 1);
    sent.push(event);
    windows[window] = hear(windows[window], [event]);
  });
  return { windows, sent };
}

describe("a sitting in two windows", () => {
  it("never counts a card twice in either window", () => {
    fc.assert(
      fc.property(anyPlan, anyTurns, (plan, turns) => {
        for (const state of play(plan, turns).windows) {
          const cards = visitsIn(state.events).map((event) => event.card);
          expect(new Set(cards).size).toBe(cards.length);
          expect([...state.visited.keys()].sort()).toEqual([...cards].sort());
        }
      }),
    );
  });

  it("never asks in a window what that window has heard of", () => {
    fc.assert(
      fc.property(anyPlan, anyTurns, (plan, turns) => {
        const { sent } = play(
          plan,
          turns.map((turn) => ({ ...turn, hears: true })),
        );
        const cards = visitsIn(sent).map((event) => event.card);
        expect(new Set(cards).size).toBe(cards.length);
      }),
    );
  });

  it("lets the first answer stand when all that was sent is read in order", () => {
    fc.assert(
      fc.property(anyPlan, anyTurns, (plan, turns) => {
        const { sent } = play(plan, turns);
        const state = replaySitting(plan, inLogOrder(sent));
        const first = new Map<string, string>();
        for (const { card, answer } of visitsIn(sent)) if (!first.has(card)) first.set(card, answer);
        expect(state.visited).toEqual(first);
      }),
    );
  });

  it("comes to the same end in a window that hears of everything and goes on alone", () => {
    fc.assert(
      fc.property(anyPlan, anyTurns, (plan, turns) => {
        const { windows, sent } = play(plan, turns);
        let state = hear(windows[0], sent);
        for (let i = 1; nextStep(state).kind !== "done"; i++) {
          const step = nextStep(state);
          if (step.kind === "done") break;
          state = hear(state, [eventFor(plan, step, "recalled", 1000 + i)]);
          expect(i).toBeLessThanOrEqual(3 * 16);
        }
        expect([...state.visited.keys()].sort()).toEqual([...visitedBy(plan)].sort());
        expect(state.newPile).toEqual([]);
        expect(state.secondPile).toEqual([]);
      }),
    );
  });

  it("takes an answer ahead of its turn and does not ask that card again", () => {
    fc.assert(
      fc.property(anyPlan, fc.nat(), (plan, n) => {
        const cards = visitedBy(plan);
        fc.pre(cards.length > 1);
        const early = cards[n % cards.length] as string;
        const pile = plan.piles.find((one) => one.cards.some((ref) => ref.card === early));
        const step = {
          kind: "visit" as const,
          card: { card: early, fact: early },
          compartment: pile?.compartment ?? 0,
          bundle: pile?.bundle ?? 0,
          left: 1,
        };
        let state = hear(startSitting(plan), [eventFor(plan, step, "recalled", 1)]);
        expect(state.visited.get(early)).toBe("recalled");
        for (let i = 2; ; i++) {
          const next = nextStep(state);
          if (next.kind !== "visit") break;
          expect(next.card.card).not.toBe(early);
          state = hear(state, [eventFor(plan, next, "recalled", i)]);
        }
      }),
    );
  });
});

describe("an event that does not belong", () => {
  it("is refused with a reason and changes nothing", () => {
    fc.assert(
      fc.property(anyPlan, fc.constantFrom("visit", "introduce", "second", "look"), (plan, kind) => {
        const stranger = { card: "Halley's comet:forward", fact: "Halley's comet" };
        const step = { kind, card: stranger, compartment: 1, bundle: 1, left: 1 } as const;
        const event = eventFor(plan, step as Parameters<typeof eventFor>[1], "recalled", 1);
        const state = startSitting(plan);
        const result = applyEvent(state, event);
        expect(result.ok).toBe(false);
        expect(replaySitting(plan, [event])).toEqual(state);
      }),
    );
  });
});
