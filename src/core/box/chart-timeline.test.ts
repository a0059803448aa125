import { describe, expect, it } from "vitest";
import { setUpWith } from "../../../tests/support/any-log.ts";
import type { Chart } from "../chart/chart.ts";
import { plainChart } from "../chart/make-chart.ts";
import type { LogEntry } from "../log/entry.ts";
import { chartAfter, chartNow, chartOfSitting, chartOnDay, chartTimeline } from "./chart-timeline.ts";

const [three, four, five] = [plainChart(3), plainChart(4), plainChart(5)];
const changed = (id: string, chart: Chart, day: number): LogEntry => ({
  id,
  box: "box",
  at: 0,
  kind: "chart",
  chart,
  day,
});
const log: readonly LogEntry[] = [
  changed("e", five, 20),
  changed("c", four, 10),
  changed("d", three, 15),
  { ...setUpWith(four), id: "b" },
  { ...setUpWith(three), id: "a" },
];

describe("the charts of a box", () => {
  const charts = chartTimeline(log, new Set(["d"]));

  it("begin with that of its first set-up, and change in the order of the log, those taken back left out", () => {
    expect(charts.first).toEqual(three);
    expect(charts.changes.map(({ id }) => id)).toEqual(["c", "e"]);
    expect([0, 1, 2].map((count) => chartAfter(charts, count))).toEqual([three, four, five]);
    expect(chartNow(charts)).toEqual(five);
    expect(chartNow({ ...charts, changes: [] })).toEqual(three);
  });

  it("hold for a sitting from its beginning to its end", () => {
    expect(["bz", "cc", "dz", "ee"].map((sitting) => chartOfSitting(charts, sitting))).toEqual([
      three,
      four,
      four,
      five,
    ]);
  });

  it("hold from their box day on", () => {
    expect([9, 10, 19, 20].map((day) => chartOnDay(charts, day))).toEqual([three, four, four, five]);
  });

  it("cannot be told from a log without a set-up", () => {
    expect(() => chartTimeline(log.slice(0, 3), new Set())).toThrow("without its set-up");
  });
});
