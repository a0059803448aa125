import { describe, expect, it } from "vitest";
import { kitCard, kitPlan } from "../../tests/support/kit-plan.ts";
import type { KitProgress } from "./kit-progress.ts";
import { printKit } from "./print-kit.ts";
import { printKitInWorker } from "./print-kit-in-worker.ts";

/** A kit that keeps the engine busy long enough to be stopped. */
const large = kitPlan({
  cards: Array.from({ length: 200 }, (_, i) => kitCard(i + 1, "Brightest star of Lyra", "Vega")),
});

describe("printing in a thread of its own", () => {
  it("gives the very bytes that printing in this thread gives, and tells how far it is", async () => {
    const plan = kitPlan({ cards: [kitCard(1, "Brightest star of Lyra", "Vega")] });
    const steps: KitProgress["step"][] = [];
    const beside = await printKitInWorker(plan, new Map(), { onProgress: ({ step }) => steps.push(step) });
    const here = await printKit(plan, new Map());
    expect(Buffer.from(beside.pdf).equals(Buffer.from(here.pdf))).toBe(true);
    expect({ ...beside, pdf: null }).toEqual({ ...here, pdf: null });
    expect(steps).toEqual(["setting", "finishing"]);
  });

  it("leaves this thread free while the engine works", async () => {
    let turns = 0;
    const clock = setInterval(() => turns++, 1);
    await printKitInWorker(large, new Map());
    clearInterval(clock);
    // In this thread the engine would let no turn through.
    expect(turns).toBeGreaterThan(20);
  });

  it("fails for the reason for which printing here fails", async () => {
    const plan = kitPlan({ card: { width: 400, height: 300 } });
    await expect(printKitInWorker(plan, new Map())).rejects.toMatchObject({ failure: { kind: "invalid-input" } });
  });

  it("stops when it is told to", async () => {
    const stop = new AbortController();
    const printed = printKitInWorker(large, new Map(), { signal: stop.signal, onProgress: () => stop.abort() });
    await expect(printed).rejects.toMatchObject({ failure: { kind: "stopped" } });
    await expect(printKitInWorker(large, new Map(), { signal: stop.signal })).rejects.toMatchObject({
      failure: { kind: "stopped" },
    });
  });
});
