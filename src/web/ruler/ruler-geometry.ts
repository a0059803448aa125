// Where the lines of the ruler run. The ruler lies with its measuring edge up: ticks hang from the edge,
// the longer the higher the compartment, and the load stands on it like a skyline.
import type { RulerTick } from "../../app/views.ts";
import type { Chart } from "../../core/chart/chart.ts";
import { cycleLength, visitsOn } from "../../core/chart/chart.ts";

/** Fixed measures of the drawing, in CSS pixels. */
export const RULER = { load: 64, shortest: 9, longest: 58, body: 104, leastStep: 15, pad: 18 } as const;

/** One tick as the drawing needs it. */
export interface Tick extends RulerTick {
  readonly x: number;
  readonly length: number;
  readonly when: "past" | "today" | "ahead";
  /** A practice day of the past on which nobody sat. */
  readonly missed: boolean;
}

/** Ticks placed along the ruler; `step` is the distance from day to day. */
export function placeTicks(
  ruler: readonly RulerTick[],
  today: string | null,
  compartments: number,
  step: number,
): readonly Tick[] {
  const growth = (RULER.longest - RULER.shortest) / Math.max(1, compartments - 1);
  return ruler.map((tick, i) => {
    const when = today !== null && tick.date < today ? "past" : tick.date === today ? "today" : "ahead";
    const missed = when === "past" && !tick.rest && !tick.sat;
    // While the chart waits a missed day bears no number and visits nothing: it is drawn short.
    const top = tick.top === 0 && missed ? 1 : tick.top;
    return {
      ...tick,
      x: RULER.pad + (i + 0.5) * step,
      length: top === 0 ? 0 : RULER.shortest + growth * (top - 1),
      when,
      missed,
    };
  });
}

/** The load line through some ticks, as an SVG path. */
export function loadPath(ticks: readonly Tick[], most: number): string {
  return ticks
    .map((tick, i) => `${i === 0 ? "M" : "L"}${tick.x.toFixed(1)} ${loadHeight(tick.reviews, most).toFixed(1)}`)
    .join("");
}

/** How high a number of reviews stands above the edge. */
export const loadHeight = (reviews: number, most: number): number =>
  RULER.load - 4 - (most > 0 ? (reviews / most) * (RULER.load - 22) : 0);

/** The bare pattern of a chart, for an empty table. */
export function patternTicks(chart: Chart): readonly RulerTick[] {
  return Array.from({ length: Math.min(cycleLength(chart), 128) }, (_, i) => ({
    date: `${i + 1}`,
    day: i + 1,
    chartDay: i + 1,
    top: visitsOn(chart, i + 1)[0]?.compartment ?? 0,
    rest: false,
    sat: false,
    reviews: 0,
  }));
}
