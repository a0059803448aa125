// An evening's sitting in a scene, through the use cases, everything recalled.
import { recordEntries } from "../../src/app/record.ts";
import { beginSitting } from "../../src/app/sit.ts";
import { nextStep, replaySitting } from "../../src/core/sitting/sitting.ts";
import { idAt } from "./any-log.ts";
import { eventFor } from "./any-sitting.ts";
import type { BoxScene } from "./box-scene.ts";

let sent = 0;

/** Sits through a sitting of that evening as far as `steps` go, and finishes it if it comes to its end. */
export async function sitEvening(
  { context, box, world }: BoxScene,
  evening: number,
  { newCards, steps = Number.POSITIVE_INFINITY }: { readonly newCards: number; readonly steps?: number },
): Promise<void> {
  const { plan, events } = await beginSitting(context, idAt(evening, ++sent, world), newCards);
  let state = replaySitting(plan, events);
  for (let n = 0; n < steps; n++) {
    const step = nextStep(state);
    const id = idAt(evening, ++sent, world);
    if (step.kind === "done") {
      await recordEntries(context, [{ id, box, at: 0, kind: "finish", sitting: plan.sitting }]);
      return;
    }
    const event = { ...eventFor(plan, step, "recalled", n), box, id };
    const [receipt] = await recordEntries(context, [event]);
    if (receipt?.status !== "saved") throw new Error(`the answer was ${receipt?.status}: ${receipt?.reason}`);
    state = replaySitting(plan, [...state.events, event]);
  }
}
