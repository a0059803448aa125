import fc from "fast-check";
import { expect, test } from "vitest";
import { anyPlan, eventFor } from "../../../tests/support/any-sitting.ts";
import { applyEvent, nextStep, startSitting } from "../../core/sitting/sitting.ts";
import { progressOf } from "./progress.ts";

test("the bar is full exactly when nothing remains, and every first look moves it", () => {
  fc.assert(
    fc.property(anyPlan, fc.infiniteStream(fc.boolean()), (plan, luck) => {
      let state = startSitting(plan);
      for (let n = 0; n < 400; n++) {
        const step = nextStep(state);
        const { done, total } = progressOf(state);
        expect(done === total).toBe(step.kind === "done");
        if (step.kind === "done") break;
        const next = applyEvent(state, eventFor(plan, step, luck.next().value ? "recalled" : "missed", n));
        if (!next.ok) break;
        state = next.value;
        if (step.kind === "look") expect(progressOf(state).done).toBe(done + 1);
      }
    }),
  );
});
