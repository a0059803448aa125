// Sittings for properties: any plan, and events that answer its steps.
import fc from "fast-check";
import type { Answer } from "../../src/core/log/entry.ts";
import { type CardRef, type DueCard, planSitting, type SittingPlan } from "../../src/core/sitting/plan.ts";
import type { SittingEvent, Step } from "../../src/core/sitting/sitting.ts";
import { idAt } from "./any-log.ts";

const refOf = (n: number): CardRef => ({
  card: `star ${Math.floor(n / 2)}:${n % 2}`,
  fact: `star ${Math.floor(n / 2)}`,
});

/** Cards that are due, in any piles, and new cards; each card once. */
export const anyPlan: fc.Arbitrary<SittingPlan> = fc
  .record({
    cards: fc.uniqueArray(fc.nat(40), { maxLength: 16 }),
    fresh: fc.nat(6),
    places: fc.array(fc.tuple(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 1, max: 3 })), {
      minLength: 16,
      maxLength: 16,
    }),
    sitting: fc.nat(20).map((n) => idAt(n, 0)),
  })
  .map(({ cards, fresh, places, sitting }) => {
    const due = cards.slice(fresh).map((n, i): DueCard => {
      const [compartment, bundle] = places[i] as [number, number];
      return { ...refOf(n), compartment, bundle };
    });
    return planSitting({ sitting, day: 12, due, fresh: cards.slice(0, fresh).map(refOf) });
  });

/** What the person does at a step. */
export function eventFor(
  plan: SittingPlan,
  step: Exclude<Step, { kind: "done" }>,
  answer: Answer,
  n: number,
): SittingEvent {
  const { sitting, day } = plan;
  const base = { id: idAt(30, n), box: "box", at: 0, sitting, day, card: step.card.card };
  if (step.kind === "look") return { ...base, kind: "look" };
  const pass = step.kind === "introduce" ? "introduction" : step.kind;
  const { compartment, bundle } = step.kind === "visit" ? step : { compartment: 0, bundle: 0 };
  return { ...base, kind: "outcome", pass, answer, compartment, bundle, seconds: 4 };
}

/** All cards that a plan visits. */
export const visitedBy = (plan: SittingPlan): readonly string[] =>
  plan.piles.flatMap((pile) => pile.cards.map((ref) => ref.card));
