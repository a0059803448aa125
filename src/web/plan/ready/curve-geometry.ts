// Where the curve of the trade-off runs: last date of new cards from left to right, number recalled upwards.
import { daysBetween, type LocalDate } from "../../../core/calendar/local-date.ts";
import type { DeadlineChoice } from "../../../core/load/deadline.ts";

/** Fixed measures of the drawing, in CSS pixels. */
export const CURVE_PLOT = { left: 44, right: 16, head: 24, height: 150, foot: 28 } as const;

/** Height of the axis from the top of the drawing. */
export const CURVE_BASE = CURVE_PLOT.head + CURVE_PLOT.height;

/** How a drawing is stretched. */
export interface CurveFrame {
  readonly width: number;
  readonly from: LocalDate;
  readonly to: LocalDate;
  /** The number at the top. */
  readonly top: number;
}

/** A date's distance from the left. */
export function dateX(date: LocalDate, { width, from, to }: Omit<CurveFrame, "top">): number {
  const span = Math.max(1, daysBetween(from, to));
  return CURVE_PLOT.left + (daysBetween(from, date) / span) * (width - CURVE_PLOT.left - CURVE_PLOT.right);
}

/** A number's distance from the top. */
export const numberY = (value: number, top: number): number => CURVE_BASE - (CURVE_PLOT.height * value) / top;

/** The place of the choice that is nearest to a distance from the left; 0 where there is none. */
export function nearestChoice(curve: readonly DeadlineChoice[], x: number, frame: Omit<CurveFrame, "top">): number {
  const away = (at: number): number => Math.abs(dateX(curve[at]?.last ?? frame.from, frame) - x);
  return curve.reduce((best, _, at) => (away(at) < away(best) ? at : best), 0);
}

/** The line of the mean and the outline of the band. */
export function curvePaths(curve: readonly DeadlineChoice[], frame: CurveFrame) {
  const point = ({ last }: DeadlineChoice, value: number): string =>
    `${dateX(last ?? frame.from, frame).toFixed(1)} ${numberY(value, frame.top).toFixed(1)}`;
  const line = (choices: readonly DeadlineChoice[], value: (choice: DeadlineChoice) => number): string =>
    choices.map((choice) => point(choice, value(choice))).join("L");
  const low = ({ recalled }: DeadlineChoice): number => recalled.quantiles[0] ?? recalled.mean;
  const high = ({ recalled }: DeadlineChoice): number => recalled.quantiles[1] ?? recalled.mean;
  if (curve.length === 0) return { mean: "", band: "" };
  return {
    mean: `M${line(curve, ({ recalled }) => recalled.mean)}`,
    band: `M${line(curve, high)}L${line(curve.toReversed(), low)}Z`,
  };
}
