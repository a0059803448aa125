import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chartWithRecall, shortCycleChart } from "../../../tests/support/short-cycle.ts";
import { arrival, bundleVisited, cycleLength } from "./chart.ts";
import { createFlowSolver, eliminateFlow, meanFlows, meanReviews, timetable, unbrokenRun } from "./chart-flow.ts";

/** Share of the mean: the solver's own tolerance here, and as much again for rounding. */
const SOLVED = 2e-11;

describe("a compartment's timetable", () => {
  it("says of every day of the cycle what the chart says", () => {
    fc.assert(
      fc.property(shortCycleChart(4), (chart) => {
        const cycle = cycleLength(chart);
        chart.compartments.forEach((own, i) => {
          const { visits, due, wait } = timetable(own, cycle);
          const visited = Array.from({ length: cycle }, (_, day) => day).filter(
            (day) => bundleVisited(chart, i + 1, day) !== null,
          );
          expect([...visits]).toEqual(visited);
          for (let day = 0; day < cycle; day++) {
            const asked = arrival(chart, i + 1, day).due;
            expect(due[day]).toBe(asked % cycle);
            expect(wait[day]).toBe(asked - day);
          }
        });
      }),
    );
  });
});

describe("the mean flows", () => {
  // By hand, recalls 1/2, 1/2, 1/2: of 8 cards that begin compartment 1, 4 are asked in compartment 2, 2 in 3, 1 is kept.
  it("are 8, 4 and 2 cards a day for one that is kept when every second is recalled", () => {
    expect(meanFlows([0.5, 0.5, 0.5])).toEqual([8, 4, 2]);
    expect(meanReviews([0.5, 0.5, 0.5])).toBe(14);
    expect(unbrokenRun([0.5, 0.5, 0.5])).toBe(1 / 8);
  });
});

describe("the flow", () => {
  it("is the same by sweeps and by elimination", () => {
    fc.assert(
      fc.property(chartWithRecall(5, 0.5), ({ chart, recall }) => {
        const cycle = cycleLength(chart);
        const rows = chart.compartments.map((one) => timetable(one, cycle));
        const swept = createFlowSolver(cycle, recall)(rows, 1e-11, 100_000);
        const eliminated = eliminateFlow(cycle, recall, rows);
        expect(swept.settled).toBe(true);
        expect(eliminated.settled).toBe(true);
        const mean = meanReviews(recall);
        for (const [day, asked] of swept.asked.entries()) {
          expect(Math.abs(asked - (eliminated.asked[day] ?? 0)) / mean).toBeLessThan(SOLVED);
        }
      }),
    );
  });

  // Cards that slosh between two days lose the share q of a sweep's difference; below half a unit in the last place
  // of the cards begun on a day, rounding swallows that loss and the sweeps stand still.
  it("says that it has not settled where the recall is so low that rounding stops the sweeps", () => {
    const recall = [0.3, 0.3, 0.3, 0.3, 0.3];
    const rows = [
      { period: 15, bundles: 1, offset: 14 },
      { period: 5, bundles: 5, offset: 0 },
      { period: 2, bundles: 1, offset: 0 },
      { period: 5, bundles: 5, offset: 2 },
      { period: 3, bundles: 3, offset: 0 },
    ].map((one) => timetable(one, 30));
    const swept = createFlowSolver(30, recall)(rows, 1e-11, 20_000);
    expect(swept.settled).toBe(false);
    const exact = eliminateFlow(30, recall, rows);
    expect(exact.settled).toBe(true);
    for (const [day, asked] of swept.asked.entries()) {
      expect(Math.abs(asked - (exact.asked[day] ?? 0)) / meanReviews(recall)).toBeLessThanOrEqual(swept.error + SOLVED);
    }
  });

  it("is never further from its value than the error that a rough answer names", () => {
    fc.assert(
      fc.property(chartWithRecall(5, 0.3), fc.integer({ min: 1, max: 8 }), ({ chart, recall }, sweeps) => {
        const cycle = cycleLength(chart);
        const rows = chart.compartments.map((one) => timetable(one, cycle));
        const rough = createFlowSolver(cycle, recall)(rows, 1e-11, sweeps);
        const exact = eliminateFlow(cycle, recall, rows);
        for (const [day, asked] of rough.asked.entries()) {
          const off = Math.abs(asked - (exact.asked[day] ?? 0)) / meanReviews(recall);
          expect(off).toBeLessThanOrEqual(rough.error + SOLVED);
        }
      }),
    );
  });

  it("does not depend on what was solved before", () => {
    fc.assert(
      fc.property(chartWithRecall(4, 0.5), fc.nat(29), ({ chart, recall }, turn) => {
        const cycle = cycleLength(chart);
        const rows = chart.compartments.map((one) => timetable(one, cycle));
        const turned = chart.compartments.map((one) =>
          timetable({ ...one, offset: (one.offset + turn) % one.period }, cycle),
        );
        const solve = createFlowSolver(cycle, recall);
        const first = [...solve(rows, 1e-11, 10_000).asked];
        const other = [...solve(turned, 1e-11, 10_000).asked];
        const again = [...solve(rows, 1e-11, 10_000).asked];
        for (let day = 0; day < cycle; day++) {
          const mean = meanReviews(recall);
          expect(Math.abs((first[day] ?? 0) - (again[day] ?? 0)) / mean).toBeLessThan(SOLVED);
          expect(Math.abs((first[day] ?? 0) - (other[(day + turn) % cycle] ?? 0)) / mean).toBeLessThan(SOLVED);
        }
      }),
    );
  });

  it("says that it has not settled when the sweeps run out", () => {
    const rows = [1, 2, 4].map((period) => timetable({ period, bundles: 1, offset: 0 }, 4));
    const flow = createFlowSolver(4, [0.5, 0.5, 0.5])(rows, 1e-12, 2);
    expect(flow.settled).toBe(false);
    expect(flow.error).toBeGreaterThan(1e-12);
  });
});
