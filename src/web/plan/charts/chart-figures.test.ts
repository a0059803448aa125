import { describe, expect, it } from "vitest";
import { LEVELLED_CHART, plainChart, spreadChart } from "../../../core/chart/make-chart.ts";
import { recallAfter } from "../../../core/recall/forgetting.ts";
import { chartFigures, figuresPace, meanPace } from "./chart-figures.ts";

const RECALL: readonly number[] = Array(7).fill(0.9);

/** Relative: the tolerance of a steady load, and rounding. */
const EXACT = 1e-9;

function figures(chart: Parameters<typeof chartFigures>[0], recall = RECALL, pace = 20) {
  const result = chartFigures(chart, recall, pace);
  if (!result.ok) throw new Error(result.error);
  return result.value;
}

describe("the figures of a chart", () => {
  // Worked values, printed to three decimals, to one and to two.
  it("are 218.150 cards on the mean day and 1,453.1 on the worst for the plain chart at twenty a day", () => {
    const { mean, peak, aboveMean, tabs, cycle } = figures(plainChart(7));
    expect(mean).toBeCloseTo(218.15, 3);
    expect(peak).toBeCloseTo(1453.1, 1);
    expect(1 + aboveMean).toBeCloseTo(6.66, 2);
    expect([tabs, cycle]).toEqual([7, 64]);
  });

  it("grow with the pace, save those of one card", () => {
    const [ten, twenty] = [figures(LEVELLED_CHART, RECALL, 10), figures(LEVELLED_CHART, RECALL, 20)];
    expect(Math.abs(twenty.peak / ten.peak - 2)).toBeLessThan(EXACT);
    expect(Math.abs((twenty.byDay[5] ?? 0) / (ten.byDay[5] ?? 0) - 2)).toBeLessThan(EXACT);
    const ofCard = ({ aboveMean, longestWait, daysUntilKept, reviewsPerCard, recallAYearOn }: typeof ten) => ({
      aboveMean,
      longestWait,
      daysUntilKept,
      reviewsPerCard,
      recallAYearOn,
    });
    expect(ofCard(twenty)).toEqual(ofCard(ten));
  });

  it("take the recall of the last compartment for the year after", () => {
    // Dated cards wait 64 days in the last: 0.9 after the 128 that would follow is 0.867380 after 365; see the tests of
    // forgetting. By the plain chart they wait 32 in the mean, by the levelled one between the two.
    const dated = { compartments: plainChart(7).compartments.map((one) => ({ ...one, bundles: one.period })) };
    expect(figures(dated).recallAYearOn).toBeCloseTo(0.86738, 5);
    const [plain, levelled] = [plainChart(7), LEVELLED_CHART].map((chart) => figures(chart).recallAYearOn);
    expect(plain).toBeCloseTo(recallAfter(0.9, 64, 365), 12);
    expect(plain).toBeLessThan(levelled ?? 0);
    expect(levelled).toBeLessThan(0.86738);
    const weak = figures(LEVELLED_CHART, RECALL.with(6, 0.5));
    expect(weak.recallAYearOn).toBeLessThan(0.5);
    expect(figures(dated, RECALL.with(0, 0.5)).recallAYearOn).toBeCloseTo(0.86738, 5);
  });

  it("are none for a cycle of many years, nor where hardly any card is kept", () => {
    const long = chartFigures(spreadChart([1, 997, 1009]), RECALL.slice(0, 3), 10);
    expect(long).toMatchObject({ ok: false, error: expect.stringContaining("1,005,973 days") });
    expect(chartFigures(plainChart(7), Array(7).fill(0.02), 10)).toMatchObject({ ok: false });
    expect(chartFigures(plainChart(7), Array(7).fill(0), 10)).toMatchObject({ ok: false });
  });
});

describe("the mean pace of a plan", () => {
  it("is that of its practice days", () => {
    expect(meanPace({ schedule: { kind: "steady", each: 12 }, restWeekdays: [7] })).toBe(12);
    const weekdays = { kind: "weekdays", each: [10, 10, 10, 10, 10, 4, 100] } as const;
    expect(meanPace({ schedule: weekdays, restWeekdays: [7] })).toBe(9);
    expect(meanPace({ schedule: { kind: "list", each: [3, 6, 0] }, restWeekdays: [7] })).toBe(3);
    expect(meanPace({ schedule: { kind: "list", each: [] }, restWeekdays: [] })).toBe(0);
  });

  it("is ten for the figures where no new cards are planned", () => {
    expect(figuresPace({ schedule: { kind: "steady", each: 0 }, restWeekdays: [] })).toBe(10);
    expect(figuresPace({ schedule: { kind: "steady", each: 3 }, restWeekdays: [] })).toBe(3);
  });
});
