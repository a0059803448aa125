// The worker of the load: answers the newest question at once, then, if no newer one comes, with exact quantiles.
import type { PlanDay, PlanQuestion } from "../../../core/load/plan-load.ts";
import { REACHES } from "../plan-draft.ts";
import { type SlicedLoad, sliceLoad } from "./load-slices.ts";
import { createPreparer } from "./prepare-load.ts";

/** What the worker is asked. */
export interface LoadRequest {
  readonly id: number;
  readonly question: PlanQuestion;
}

/** What it answers: first with quantiles that are a card or so off, then exactly. */
export interface LoadReply {
  readonly id: number;
  readonly days: readonly PlanDay[];
  readonly exact: boolean;
}

/** A moving slider asks again within this time; exact work that it would throw away is not begun. */
const REST_MS = 80;

/** Longest stretch of work during which a newer question has to wait. */
const SLICE_MS = 5;

const prepare = createPreparer();
let newest = 0;

addEventListener("message", ({ data: { id, question } }: MessageEvent<LoadRequest>) => {
  newest = id;
  const load = sliceLoad(question, prepare(question), REACHES);
  reply({ id, days: load.first, exact: false });
  void refine(id, load);
});

async function refine(id: number, load: SlicedLoad): Promise<void> {
  await pause(REST_MS);
  while (newest === id) {
    if (!workFor(SLICE_MS, load.next)) return reply({ id, days: load.exact(), exact: true });
    await pause(0);
  }
}

/** Works for so many milliseconds; false once all is done. */
function workFor(ms: number, next: () => boolean): boolean {
  const end = performance.now() + ms;
  while (performance.now() < end) if (!next()) return false;
  return true;
}

const reply = (answered: LoadReply): void => postMessage(answered);
const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
