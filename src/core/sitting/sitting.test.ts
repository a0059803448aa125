import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyPlan, eventFor, visitedBy } from "../../../tests/support/any-sitting.ts";
import type { Answer } from "../log/entry.ts";
import { planSitting, type SittingPlan } from "./plan.ts";
import {
  applyEvent,
  lastEvent,
  nextStep,
  replaySitting,
  type SittingEvent,
  type SittingState,
  type Step,
  startSitting,
  summarise,
  withoutEvent,
} from "./sitting.ts";

/** Answers and interruptions as they may come: true is a recall, or a page that is closed and opened again. */
const anyFate = fc.infiniteStream(
  fc.record({ recalled: fc.boolean(), closed: fc.integer({ min: 0, max: 3 }).map((n) => n === 0) }),
);

function apply(state: SittingState, event: SittingEvent): SittingState {
  const next = applyEvent(state, event);
  if (!next.ok) throw new Error(next.error);
  return next.value;
}

/** Sits through a plan to its end, closing the page now and then; all steps that were shown. */
function sitThrough(plan: SittingPlan, fate: Iterator<{ recalled: boolean; closed: boolean }, unknown>) {
  let state = startSitting(plan);
  const steps: { step: Exclude<Step, { kind: "done" }>; answer: Answer }[] = [];
  for (;;) {
    const step = nextStep(state);
    if (step.kind === "done") return { state, steps };
    const { recalled, closed } = fate.next().value as { recalled: boolean; closed: boolean };
    const answer = recalled ? "recalled" : "missed";
    steps.push({ step, answer });
    state = apply(state, eventFor(plan, step, answer, steps.length));
    if (closed) {
      const resumed = replaySitting(plan, state.events);
      expect(resumed).toEqual(state);
      state = resumed;
    }
  }
}

function* always(recalled: boolean) {
  for (;;) yield { recalled, closed: false };
}

describe("a sitting, with any answers and however often it is interrupted", () => {
  it("asks every card of its piles for the record once, from the highest compartment to the lowest", () => {
    fc.assert(
      fc.property(anyPlan, anyFate, (plan, fate) => {
        const { steps } = sitThrough(plan, fate);
        const visits = steps.flatMap(({ step }) => (step.kind === "visit" ? [step] : []));
        expect(visits.map((step) => step.card.card)).toEqual(visitedBy(plan));
        const compartments = visits.map((step) => step.compartment);
        expect(compartments).toEqual([...compartments].sort((a, b) => b - a));
      }),
    );
  });

  it("looks at each new card once, then asks them in turn until each is recalled", () => {
    fc.assert(
      fc.property(anyPlan, anyFate, (plan, fate) => {
        const { state, steps } = sitThrough(plan, fate);
        const looks = steps.flatMap(({ step }) => (step.kind === "look" ? [step.card.card] : []));
        expect(looks).toEqual(plan.newCards.map((ref) => ref.card));
        for (const { card } of plan.newCards) {
          const answers = steps.filter(({ step }) => step.kind === "introduce" && step.card.card === card);
          expect(answers.map(({ answer }) => answer).indexOf("recalled")).toBe(answers.length - 1);
        }
        expect(state.newPile).toEqual([]);
      }),
    );
  });

  it("asks exactly the missed cards again at the end, in turn, until each is recalled", () => {
    fc.assert(
      fc.property(anyPlan, anyFate, (plan, fate) => {
        const { state, steps } = sitThrough(plan, fate);
        const missed = steps.filter(({ step, answer }) => step.kind === "visit" && answer === "missed");
        const second = steps.filter(({ step }) => step.kind === "second");
        expect(new Set(second.map(({ step }) => step.card.card))).toEqual(
          new Set(missed.map(({ step }) => step.card.card)),
        );
        expect(second.filter(({ answer }) => answer === "recalled")).toHaveLength(missed.length);
        expect(state.secondPile).toEqual([]);
      }),
    );
  });

  it("comes to its passes in order: visits, looks, introductions, second pass", () => {
    fc.assert(
      fc.property(anyPlan, anyFate, (plan, fate) => {
        const order = sitThrough(plan, fate).steps.map(({ step }) =>
          ["visit", "look", "introduce", "second"].indexOf(step.kind),
        );
        expect(order).toEqual([...order].sort((a, b) => a - b));
      }),
    );
  });

  it("can have any event taken back, and then stands as if it had not happened", () => {
    fc.assert(
      fc.property(anyPlan, anyFate, fc.nat(), (plan, fate, n) => {
        const { state } = sitThrough(plan, fate);
        fc.pre(state.events.length > 0);
        expect(lastEvent(state)).toEqual(state.events.at(-1));
        const at = n % state.events.length;
        const gone = state.events[at] as SittingEvent;
        const others = state.events.filter((event) => event !== gone);
        expect(withoutEvent(state, gone.id)).toEqual(replaySitting(plan, others));
        const last = state.events.at(-1) as SittingEvent;
        const before = withoutEvent(state, last.id);
        expect(nextStep(before)).toMatchObject({ card: { card: last.card } });
      }),
    );
  });
});

describe("a missed card", () => {
  /** Sits with these answers, card by card, recalled where none is given. */
  const asked = (plan: SittingPlan, answers: readonly boolean[]) => {
    const fate = function* () {
      for (const recalled of answers) yield { recalled, closed: false };
      yield* always(true);
    };
    return sitThrough(plan, fate()).steps.map(({ step }) => `${step.kind} ${step.card.card}`);
  };
  const refs = ["Vega", "Deneb", "Rigel"].map((card) => ({ card, fact: card }));

  it("goes to the back of the pile of new cards, behind all that wait", () => {
    const plan = planSitting({ sitting: "s", day: 1, due: [], fresh: refs });
    const [a, b, c] = plan.newCards.map(({ card }) => card);
    // Three looks; then the first is missed, the second recalled, the third missed.
    const steps = asked(plan, [true, true, true, false, true, false]).slice(3);
    expect(steps).toEqual([a, b, c, a, c].map((card) => `introduce ${card}`));
  });

  it("waits its turn in the second pass, however often it is missed", () => {
    const due = refs.map((ref) => ({ ...ref, compartment: 1, bundle: 1 }));
    const plan = planSitting({ sitting: "s", day: 1, due, fresh: [] });
    const [a, b, c] = plan.piles[0]?.cards.map(({ card }) => card) ?? [];
    const steps = asked(plan, [false, true, false, false, false, false]).slice(3);
    expect(steps).toEqual([a, c, a, c, a].map((card) => `second ${card}`));
    expect(steps.some((step) => step.endsWith(`${b}`))).toBe(false);
  });
});

describe("a step", () => {
  it("says how many cards of its pile are left, itself included", () => {
    const due = ["Vega", "Deneb", "Rigel"].map((card) => ({ card, fact: card, compartment: 1, bundle: 1 }));
    const plan = planSitting({ sitting: "s", day: 1, due, fresh: [] });
    const { steps } = sitThrough(plan, always(true));
    expect(steps.map(({ step }) => step.left)).toEqual([3, 2, 1]);
  });
});

describe("the closing page", () => {
  it("counts what moved up, went back, was kept and was introduced, and adds the seconds", () => {
    const due = [
      { card: "Vega", fact: "Vega", compartment: 7, bundle: 1 },
      { card: "Rigel", fact: "Rigel", compartment: 2, bundle: 1 },
    ];
    const plan = planSitting({ sitting: "s", day: 1, due, fresh: [{ card: "Spica", fact: "Spica" }] });
    const { state } = sitThrough(plan, always(true));
    // Two visits and one introduction at 4 seconds each; looks are not timed.
    expect(summarise(state, 7)).toEqual({ movedUp: 1, sentBack: 0, kept: 1, introduced: 1, seconds: 12 });
  });

  it("accounts for every card of the plan, whatever was answered", () => {
    fc.assert(
      fc.property(anyPlan, anyFate, (plan, fate) => {
        const { movedUp, sentBack, kept, introduced } = summarise(sitThrough(plan, fate).state, 7);
        expect(movedUp + sentBack + kept).toBe(visitedBy(plan).length);
        expect(introduced).toBe(plan.newCards.length);
      }),
    );
  });
});
