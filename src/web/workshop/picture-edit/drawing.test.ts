import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  cropStep,
  type Drawing,
  LEAST_PIXELS,
  NEW_DRAWING,
  redone,
  type Step,
  sizeAfter,
  undone,
  withStep,
} from "./drawing.ts";

const stroke: Step = { kind: "stroke", points: [[1, 2, 0.5]], width: 4, ink: "black" };
const turn: Step = { kind: "turn", clockwise: true };

describe("a drawing", () => {
  it("is undone and done again, step by step", () => {
    const step = fc.constantFrom(stroke, turn);
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), fc.nat(12), (steps, back) => {
        const made = steps.reduce(withStep, NEW_DRAWING);
        const times = Math.min(back, steps.length);
        const repeat = (drawing: Drawing, act: (drawing: Drawing) => Drawing): Drawing =>
          Array.from({ length: times }).reduce<Drawing>((all) => act(all), drawing);
        const gone = repeat(made, undone);
        expect(gone.steps).toEqual(steps.slice(0, steps.length - times));
        expect(repeat(gone, redone)).toEqual(made);
      }),
    );
  });

  it("has nothing to do again after a new step", () => {
    expect(redone(withStep(undone(withStep(NEW_DRAWING, turn)), stroke)).steps).toEqual([stroke]);
  });

  it("knows its size after turning and cropping", () => {
    expect(sizeAfter([400, 300], [stroke, turn])).toEqual([300, 400]);
    expect(sizeAfter([400, 300], [{ kind: "crop", x: 10, y: 20, width: 100, height: 50 }, turn])).toEqual([50, 100]);
  });
});

describe("a crop", () => {
  const share = fc.double({ min: -0.5, max: 1.5, noNaN: true });
  it("lies inside the picture and leaves something, or is none", () => {
    fc.assert(
      fc.property(share, share, share, share, (x, y, width, height) => {
        const step = cropStep([400, 300], { x, y, width, height });
        if (step?.kind !== "crop") return;
        expect(step.x).toBeGreaterThanOrEqual(0);
        expect(step.y).toBeGreaterThanOrEqual(0);
        expect(step.x + step.width).toBeLessThanOrEqual(400);
        expect(step.y + step.height).toBeLessThanOrEqual(300);
        expect(Math.min(step.width, step.height)).toBeGreaterThanOrEqual(LEAST_PIXELS);
      }),
    );
  });

  it("of the whole is none", () => expect(cropStep([400, 300], { x: 0, y: 0, width: 1, height: 1 })).toBeNull());
});
