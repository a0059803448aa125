import { describe, expect, it } from "vitest";
import { planOfBox } from "../../../../tests/support/plan-scene.ts";
import { LEVELLED_CHART, spreadChart } from "../../../core/chart/make-chart.ts";
import { overallRecall, recallBy } from "./by-chart.ts";

const TRIPLING = spreadChart([1, 3, 9, 27, 81]);

describe("recall by another chart", () => {
  it("is what the plan says where it says something", () => {
    expect(recallBy(planOfBox(), 0.8, TRIPLING)).toEqual([0.8, 0.8, 0.8, 0.8, 0.8]);
  });

  it("is planned by compartment, where the last number holds for all beyond", () => {
    expect(recallBy(planOfBox(), [0.7, 0.8, 0.9], TRIPLING)).toEqual([0.7, 0.8, 0.9, 0.9, 0.9]);
    expect(recallBy(planOfBox(), [0.7, 0.8, 0.9, 0.6, 0.5, 0.4], TRIPLING)).toEqual([0.7, 0.8, 0.9, 0.6, 0.5]);
    expect(overallRecall(planOfBox(), [0.5, 0.75, 1])).toBe(0.75);
  });

  it("is what was measured in the box's own compartments", () => {
    const view = planOfBox(LEVELLED_CHART, { visits: [{ compartment: 3, recalled: 30, missed: 20 }] });
    // The prior counts for nine recalls and a miss: (9 + 30) / (10 + 50).
    expect(recallBy(view, null, LEVELLED_CHART)).toEqual([0.9, 0.9, 39 / 60, 0.9, 0.9, 0.9, 0.9]);
  });

  it("comes from the compartments whose cards would be moved there, added up", () => {
    // Of 1, 3, 9, 27 and 81 days, 9 is nearest to 8 and 27 to 16 and 32.
    const view = planOfBox(LEVELLED_CHART, {
      visits: [
        { compartment: 4, recalled: 0, missed: 10 },
        { compartment: 5, recalled: 10, missed: 0 },
        { compartment: 6, recalled: 0, missed: 10 },
      ],
    });
    expect(recallBy(view, null, TRIPLING)).toEqual([0.9, 0.9, 9 / 20, 19 / 30, 0.9]);
  });
});

describe("recall over all compartments", () => {
  it("is the plan's, or that of all answers together", () => {
    const visits = [
      { compartment: 1, recalled: 40, missed: 5 },
      { compartment: 2, recalled: 31, missed: 14 },
    ];
    expect(overallRecall(planOfBox(LEVELLED_CHART, { visits }), 0.7)).toBe(0.7);
    // (9 + 71) / (10 + 90).
    expect(overallRecall(planOfBox(LEVELLED_CHART, { visits }), null)).toBe(0.8);
  });
});
