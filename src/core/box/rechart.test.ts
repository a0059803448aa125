import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anyChart } from "../../../tests/support/any-chart.ts";
import { arrival, bundleVisited, type Chart, compartmentCount, step, visitsOn } from "../chart/chart.ts";
import { LEVELLED_CHART, plainChart, spreadChart } from "../chart/make-chart.ts";
import type { Waiting } from "../load/expected.ts";
import type { InCompartment, Place } from "./placement.ts";
import { compartmentAfter, rechartPlace, rechartWaiting } from "./rechart.ts";

const all = (from: Chart, to: Chart): readonly number[] =>
  from.compartments.map((_, i) => compartmentAfter(from, to, i + 1));

// Worked by hand from the ratios of the periods.
describe("the compartment after a change of chart", () => {
  it("has the nearest period by ratio", () => {
    // Periods 1, 2, 4, 8, 16, 32, 64 to 1, 3, 9, 27, 81.
    expect(all(plainChart(7), spreadChart([1, 3, 9, 27, 81]))).toEqual([1, 2, 2, 3, 4, 4, 5]);
    expect(all(spreadChart([1, 3, 9, 27, 81]), plainChart(7))).toEqual([1, 3, 4, 6, 7]);
  });

  it("is the lower one of two whose periods are as near", () => {
    expect(all(spreadChart([1, 4, 6]), spreadChart([1, 2, 8, 9]))).toEqual([1, 2, 3]);
    expect(all(spreadChart([6]), spreadChart([4, 9]))).toEqual([1]);
  });

  it("keeps its number where the periods are the same, whatever the bundles", () => {
    expect(all(plainChart(7), LEVELLED_CHART)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(all(plainChart(7), plainChart(5))).toEqual([1, 2, 3, 4, 5, 5, 5]);
    expect(all(plainChart(5), plainChart(7))).toEqual([1, 2, 3, 4, 5]);
  });

  it("stays as close to its number as periods that occur more than once allow", () => {
    const from = spreadChart([1, 2, 2, 2, 4]);
    expect(all(from, from)).toEqual([1, 2, 3, 4, 5]);
    expect(all(from, spreadChart([1, 1, 2, 2, 4]))).toEqual([1, 3, 3, 4, 5]);
  });

  it("rises with the old compartment, and is one that the new chart has", () => {
    fc.assert(
      fc.property(anyChart, anyChart, (from, to) => {
        const after = all(from, to);
        expect([...after].sort((a, b) => a - b)).toEqual(after);
        for (const k of after) expect(to.compartments[k - 1]).toBeDefined();
      }),
    );
  });

  it("is the same compartment under the same periods", () => {
    fc.assert(
      fc.property(anyChart, (chart) => {
        expect(all(chart, chart)).toEqual(chart.compartments.map((_, i) => i + 1));
      }),
    );
  });

  it("does not exist for a compartment that the old chart does not have", () => {
    for (const k of [0, 8]) expect(() => compartmentAfter(plainChart(7), plainChart(5), k)).toThrow("no compartment");
  });
});

/** A card that arrived on some day, and a day on which the chart is changed; overdue by then, or not. */
const anyMove = fc.tuple(anyChart, anyChart).chain(([from, to]) =>
  fc
    .record({
      k: fc.integer({ min: 1, max: compartmentCount(from) }),
      arrived: fc.integer({ min: 1, max: 300 }),
      after: fc.integer({ min: 0, max: 90 }),
    })
    .map(({ k, arrived, after }) => {
      const place: InCompartment = { kind: "compartment", compartment: k, ...arrival(from, k, arrived) };
      return { from, to, place, day: arrived + after };
    }),
);

/** Days on which bundles of a compartment are met next, from `day` on, found by looking at the calendar day by day. */
function nextVisits(chart: Chart, k: number, day: number): readonly number[] {
  const period = chart.compartments[k - 1]?.period ?? 0;
  return Array.from({ length: period + 1 }, (_, i) => day + i).filter((one) =>
    visitsOn(chart, one).some(({ compartment }) => compartment === k),
  );
}

const moved = ({ from, to, day, place }: { from: Chart; to: Chart; day: number; place: InCompartment }) =>
  rechartPlace(from, to, day, place) as InCompartment;

describe("a card in a compartment", () => {
  it("goes to the compartment with the nearest period, into the bundle visited on its due day", () => {
    fc.assert(
      fc.property(anyMove, (move) => {
        const { compartment, bundle, due } = moved(move);
        expect(compartment).toBe(compartmentAfter(move.from, move.to, move.place.compartment));
        expect(bundleVisited(move.to, compartment, due)).toBe(bundle);
      }),
    );
  });

  it("waits for the visit nearest to its own due day, the earlier of two", () => {
    fc.assert(
      fc.property(anyMove, (move) => {
        const { compartment, due } = moved(move);
        const wanted = Math.max(move.place.due, move.day);
        const [nearest] = nextVisits(move.to, compartment, move.day)
          .map((day) => ({ day, far: Math.abs(day - wanted) }))
          .sort((a, b) => a.far - b.far || a.day - b.day);
        expect(due).toBe(nearest?.day);
      }),
    );
  });

  it("waits at most its remaining wait and one bundle step, and never for a day that is past", () => {
    fc.assert(
      fc.property(anyMove, (move) => {
        const { compartment, due } = moved(move);
        const longest = Math.max(0, move.place.due - move.day) + step(at(move.to, compartment));
        expect(due).toBeGreaterThanOrEqual(move.day);
        expect(due - move.day).toBeLessThanOrEqual(longest);
      }),
    );
  });

  it("stays before those of its compartment that are due later", () => {
    fc.assert(
      fc.property(anyMove, fc.nat(90), (move, later) => {
        const behind = { ...move, place: { ...move.place, due: move.place.due + later } };
        expect(moved(behind).due).toBeGreaterThanOrEqual(moved(move).due);
      }),
    );
  });

  it("stays where it is if the chart stays the same and it is not overdue", () => {
    fc.assert(
      fc.property(anyMove, ({ from, place, day }) => {
        fc.pre(place.due >= day);
        expect(rechartPlace(from, from, day, place)).toBe(place);
      }),
    );
  });

  // Compartment 3 of the plain chart is visited on days 2, 6, 10, 14.
  it("counts as due today if it is overdue", () => {
    const place: Place = { kind: "compartment", compartment: 3, bundle: 1, due: 6 };
    const chart = plainChart(7);
    expect(rechartPlace(chart, chart, 9, place)).toEqual({ ...place, due: 10 });
  });
});

const at = (chart: Chart, k: number) => chart.compartments[k - 1] as Chart["compartments"][number];

describe("a card elsewhere", () => {
  it("stays in the stock and on the kept shelf", () => {
    for (const place of [{ kind: "stock" }, { kind: "kept" }] as const) {
      const out = { kind: "withdrawn", from: place } as const;
      expect(rechartPlace(plainChart(7), plainChart(3), 5, place)).toBe(place);
      expect(rechartPlace(plainChart(7), plainChart(3), 5, out)).toBe(out);
    }
  });

  it("comes back, if it was withdrawn, to where it would have been moved", () => {
    fc.assert(
      fc.property(anyMove, (move) => {
        const { from, to, day, place } = move;
        const out = { kind: "withdrawn", from: place } as const;
        expect(rechartPlace(from, to, day, out)).toEqual({ kind: "withdrawn", from: moved(move) });
      }),
    );
  });
});

describe("counted cards", () => {
  it("come to wait as each of them would, and none is lost", () => {
    const anyPiles = fc.tuple(anyChart, anyChart, fc.integer({ min: 1, max: 200 })).chain(([from, to, day]) =>
      fc.record({
        from: fc.constant(from),
        to: fc.constant(to),
        day: fc.constant(day),
        waiting: fc.array(
          fc.record<Waiting>({
            compartment: fc.integer({ min: 1, max: compartmentCount(from) }),
            due: fc.integer({ min: 1, max: 300 }),
            count: fc.integer({ min: 1, max: 4 }),
          }),
          { maxLength: 12 },
        ),
      }),
    );
    fc.assert(
      fc.property(anyPiles, ({ from, to, day, waiting }) => {
        const single = waiting.flatMap(({ compartment, due, count }) => {
          const place = moved({ from, to, day, place: { kind: "compartment", compartment, bundle: 1, due } });
          return Array.from({ length: count }, () => `${place.compartment} ${place.due}`);
        });
        const piles = rechartWaiting(from, to, day, waiting);
        const counted = piles.flatMap(({ compartment, due, count }) =>
          Array.from({ length: count }, () => `${compartment} ${due}`),
        );
        expect([...counted].sort()).toEqual([...single].sort());
        expect(new Set(piles.map(({ compartment, due }) => `${compartment} ${due}`)).size).toBe(piles.length);
      }),
    );
  });
});
