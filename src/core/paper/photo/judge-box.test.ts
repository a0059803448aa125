import { describe, expect, it } from "vitest";
import { type BoxInk, judgeBoxes, type StrokeInk } from "./judge-box.ts";

const clean: BoxInk = { frame: 0.4, strokes: [], pale: 0, middle: 0, even: 1, steady: 1 };
const stroke = (ink: number, more: Partial<StrokeInk> = {}): StrokeInk => ({ stroke: 1, ink, share: 0.9, ...more });
const judge = (box: Partial<BoxInk>) => judgeBoxes([{ ...clean, ...box }])[0];

describe("a box", () => {
  it.each<[string, Partial<BoxInk>, string]>([
    ["without ink", {}, "empty"],
    ["with a speck of dust", { strokes: [stroke(0.002)] }, "empty"],
    ["with a tick through its middle", { strokes: [stroke(0.1)], middle: 0.15 }, "ticked"],
    ["with a faint tick", { strokes: [stroke(0.04)], middle: 0.04 }, "ticked"],
    ["with two strokes of a cross", { strokes: [stroke(0.02), stroke(0.02, { stroke: 2 })], middle: 0.1 }, "ticked"],
    ["with a mark so faint that only the mean shows it", { pale: 0.02 }, "doubtful"],
    [
      "with pale ink where the edge of a shadow lies",
      { strokes: [stroke(0.06)], middle: 0.1, steady: 0.7 },
      "doubtful",
    ],
    ["with a tick across the edge of a shadow", { strokes: [stroke(0.12)], middle: 0.15, steady: 0.7 }, "ticked"],
    ["with a dot", { strokes: [stroke(0.015)], middle: 0.05 }, "doubtful"],
    ["with ink at its edge only", { strokes: [stroke(0.1)], middle: 0.01 }, "doubtful"],
    ["with a stroke that lies mostly outside", { strokes: [stroke(0.1, { share: 0.2 })], middle: 0.1 }, "doubtful"],
    ["that was blacked out", { strokes: [stroke(0.3)], middle: 0.4, even: 0.5 }, "doubtful"],
    ["that was shaded so evenly that no stroke is seen", { even: 0.8 }, "doubtful"],
    ["whose frame was not found", { frame: 0.05 }, "doubtful"],
  ])("%s is %s", (_what, box, judgement) => {
    expect(judge(box)).toBe(judgement);
  });
});

describe("a stroke across two boxes", () => {
  const home: BoxInk = { ...clean, strokes: [stroke(0.15, { share: 0.6 })], middle: 0.2 };

  it("ticks the one that holds most of it, and the other is empty if only a tail reaches in", () => {
    const tail: BoxInk = { ...clean, strokes: [stroke(0.02, { share: 0.1 })] };
    expect(judgeBoxes([home, tail])).toEqual(["ticked", "empty"]);
  });

  it("leaves a doubt about the other if it reaches its middle", () => {
    const deep: BoxInk = { ...clean, strokes: [stroke(0.05, { share: 0.2 })], middle: 0.06 };
    expect(judgeBoxes([home, deep])).toEqual(["ticked", "doubtful"]);
  });

  it("leaves a doubt about the other if something else is in it, be it shading or a faint mark", () => {
    const tail: BoxInk = { ...clean, strokes: [stroke(0.04, { share: 0.15 })] };
    expect(judgeBoxes([home, tail])[1]).toBe("empty");
    expect(judgeBoxes([home, { ...tail, even: 0.8 }])[1]).toBe("doubtful");
    expect(judgeBoxes([home, { ...tail, pale: 0.01 }])[1]).toBe("doubtful");
  });

  it("leaves a doubt about a tail whose home is in doubt itself", () => {
    const poor: BoxInk = { ...clean, strokes: [stroke(0.03, { share: 0.25 })], middle: 0.05 };
    const tail: BoxInk = { ...clean, strokes: [stroke(0.02, { share: 0.1 })] };
    expect(judgeBoxes([poor, tail])).toEqual(["doubtful", "doubtful"]);
  });

  it("leaves a doubt about both if each holds much of it", () => {
    for (const ink of [0.06, 0.12, 0.15]) {
      const half: BoxInk = { ...clean, strokes: [stroke(ink, { share: 0.4 })], middle: 0.2 };
      expect(judgeBoxes([home, half])).toEqual(["doubtful", "doubtful"]);
    }
  });
});
