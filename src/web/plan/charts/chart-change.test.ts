import { describe, expect, it } from "vitest";
import { planOfBox } from "../../../../tests/support/plan-scene.ts";
import { LEVELLED_CHART, plainChart, spreadChart } from "../../../core/chart/make-chart.ts";
import { draftOf } from "../plan-draft.ts";
import { heaviest, meanLoad, previewChange } from "./chart-change.ts";

const TRIPLING = spreadChart([1, 3, 9, 27, 81]);

describe("a change of chart before it is made", () => {
  it("moves nothing and changes no load where the chart stays the same", () => {
    const view = planOfBox();
    const preview = previewChange(view, draftOf(view), LEVELLED_CHART);
    expect(preview).toMatchObject({ cards: 35, moved: 0 });
    expect(preview.days).toHaveLength(60);
    for (const { before, after } of preview.days) expect(after).toBe(before);
  });

  // By hand: compartment 2 is visited on odd days and by the new chart on even ones, so its cards due on day 47 come on
  // day 46, in the only bundle as before; compartment 1 is visited every day by both.
  it("counts the cards that come on another day", () => {
    const plain = plainChart(2);
    const chart = { compartments: plain.compartments.map((one) => ({ ...one, offset: 0 })) };
    const waiting = [
      { compartment: 1, due: 45, count: 5 },
      { compartment: 2, due: 47, count: 3 },
    ];
    const view = planOfBox(plain, { waiting });
    expect(previewChange(view, { ...draftOf(view), chart }, plain)).toMatchObject({ cards: 8, moved: 3 });
  });

  it("counts the cards that come to lie in another bundle or compartment", () => {
    const plain = plainChart(3);
    const waiting = [{ compartment: 3, due: 46, count: 4 }];
    const view = planOfBox(plain, { waiting });
    // Compartment 3 has four bundles then; that of day 46 is the first if its offset is 46 mod 4.
    const divided = (offset: number) => ({
      compartments: plain.compartments.with(2, { period: 4, bundles: 4, offset }),
    });
    const moved = (offset: number) => previewChange(view, { ...draftOf(view), chart: divided(offset) }, plain).moved;
    expect(moved(2)).toBe(0);
    expect(moved(1)).toBe(4);
    const shorter = plainChart(2);
    expect(previewChange(view, { ...draftOf(view), chart: shorter }, plain).moved).toBe(4);
  });

  it("counts the cards that come to another compartment on their own day", () => {
    // The chart of 1 and 4 days has no compartment of 2; its cards go to the first, which is visited every day too.
    const from = { compartments: [1, 2, 4].map((period) => ({ period, bundles: 1, offset: 1 % period })) };
    const chart = { compartments: [1, 4].map((period) => ({ period, bundles: 1, offset: 1 % period })) };
    const view = planOfBox(from, { waiting: [{ compartment: 2, due: 45, count: 2 }] });
    expect(previewChange(view, { ...draftOf(view), chart }, from).moved).toBe(2);
  });

  it("counts overdue cards, which are due on the first day ahead then", () => {
    const view = planOfBox(plainChart(2), { waiting: [{ compartment: 1, due: 30, count: 6 }] });
    expect(previewChange(view, { ...draftOf(view), chart: plainChart(3) }, plainChart(2)).moved).toBe(6);
  });

  // By hand: in the plain chart of 1, 2 and 4 days compartment 2 is visited on odd days and compartment 3 on days 2, 6 …
  // 46. A card asked on day 45 in compartment 2 comes again on day 46; with a tab for every day it waits all 4 days.
  it("follows a card that is always recalled by either chart", () => {
    const plain = plainChart(3);
    const view = planOfBox(plain, { waiting: [{ compartment: 2, due: 45, count: 1 }] });
    const chart = spreadChart([1, 2, 4], [1, 2, 4]);
    const draft = { ...draftOf(view), recall: 1, schedule: { kind: "steady", each: 0 }, chart } as const;
    const { days } = previewChange(view, draft, plain);
    const asked = (when: "before" | "after") => days.flatMap((day, i) => (day[when] > 0 ? [[i, day[when]]] : []));
    expect(asked("before")).toEqual([
      [0, 1],
      [1, 1],
    ]);
    expect(asked("after")).toEqual([
      [0, 1],
      [4, 1],
    ]);
  });

  it("has overdue cards asked on the first day as it is", () => {
    const view = planOfBox(LEVELLED_CHART, { waiting: [{ compartment: 7, due: 30, count: 12 }] });
    const draft = { ...draftOf(view), chart: TRIPLING };
    const { days } = previewChange(view, draft, LEVELLED_CHART);
    expect(days[0]?.before).toBe(12);
  });

  it("has nothing to ask on rest days, which count for no mean", () => {
    const view = planOfBox();
    const draft = { ...draftOf(view), restWeekdays: [6, 7], chart: TRIPLING };
    const { days } = previewChange(view, draft, LEVELLED_CHART);
    const rest = days.filter(({ sits }) => !sits);
    expect(rest.length).toBeGreaterThan(14);
    expect(rest.every(({ before, after }) => before + after === 0)).toBe(true);
    const total = days.reduce((sum, day) => sum + day.after, 0);
    expect(meanLoad(days, "after")).toBeCloseTo(total / (60 - rest.length), 9);
  });
});

describe("the heaviest day", () => {
  it("is the first of those with the most cards, by either chart", () => {
    const days = [
      { date: "2026-11-25", sits: true, before: 3, after: 9 },
      { date: "2026-11-26", sits: true, before: 8, after: 1 },
      { date: "2026-11-27", sits: true, before: 8, after: 2 },
    ];
    expect(heaviest(days, "before")?.date).toBe("2026-11-26");
    expect(heaviest(days, "after")?.date).toBe("2026-11-25");
    expect(heaviest([], "after")).toBeNull();
  });
});
