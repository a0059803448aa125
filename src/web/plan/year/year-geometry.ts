// Where the lines of the year's load run: a skyline of days that stands on the edge of a ruler of months.
import type { PlanDay } from "../../../core/load/plan-load.ts";
import type { LoadUnit } from "../workers/mix-worker.ts";
import { spreadIn } from "./year-figures.ts";

/** Fixed measures of the drawing, in CSS pixels. */
export const YEAR_PLOT = { left: 44, right: 8, head: 24, load: 170, body: 46 } as const;

/** Height of the ruler's edge from the top of the drawing. */
export const EDGE = YEAR_PLOT.head + YEAR_PLOT.load;

/** How a drawing is stretched. */
export interface Frame {
  /** CSS pixels from day to day. */
  readonly step: number;
  /** The value at the top of the skyline. */
  readonly top: number;
}

/** The step that fits so many days into a width. */
export const stepFor = (width: number, days: number): number =>
  Math.max(0, width - YEAR_PLOT.left - YEAR_PLOT.right) / Math.max(1, days);

/** Left edge of a day. */
export const dayX = (i: number, step: number): number => YEAR_PLOT.left + i * step;

/** The day at a distance from the left. */
export const dayAt = (x: number, step: number): number => Math.floor((x - YEAR_PLOT.left) / step);

/** How high a value stands. */
export const valueY = (value: number, top: number): number => EDGE - (YEAR_PLOT.load * value) / top;

/** The largest value that is drawn of a load. */
export const highest = (days: readonly PlanDay[], unit: LoadUnit): number =>
  days.reduce((most, day) => {
    const { mean, quantiles } = spreadIn(day, unit);
    return Math.max(most, mean, quantiles.at(-1) ?? 0);
  }, 0);

/** The paths of a load. */
export interface LoadPaths {
  /** From the edge up to the mean. */
  readonly ground: string;
  /** From the lower quantile to the upper. */
  readonly band: string;
  readonly days: string;
  readonly weeks: string;
}

/** Skylines of sittings; they break off where nobody sits. Where there are no quantiles the mean stands for them. */
export function loadPaths(days: readonly PlanDay[], unit: LoadUnit, frame: Frame): LoadPaths {
  const low = (i: number): number => quantileOf(days[i], unit, 0);
  const high = (i: number): number => quantileOf(days[i], unit, 1);
  const all = runs(days, ({ kind }) => kind === "sitting");
  return {
    ground: all
      .map((run) => `${skyline(run, (i) => meanOf(days[i], unit), frame)}V${EDGE}H${x(run.first, frame)}Z`)
      .join(""),
    band: all.map((run) => `${skyline(run, high, frame)}${backwards(run, low, frame)}Z`).join(""),
    days: roofs(days, unit, frame),
    weeks: weekPath(days, unit, frame),
  };
}

/** The mean of each day: a roof without walls, which would hide one another in a narrow drawing. */
const roofs = (days: readonly PlanDay[], unit: LoadUnit, frame: Frame): string =>
  days
    .map((day, i) =>
      day.kind === "sitting" ? `M${x(i, frame)} ${y(meanOf(day, unit), frame)}H${x(i + 1, frame)}` : "",
    )
    .join("");

const WEEK = 7;

/** The mean sitting of each whole week, from the first day on; broken where nobody sits for a week. */
export function weekPath(days: readonly PlanDay[], unit: LoadUnit, frame: Frame): string {
  let path = "";
  let drawn = false;
  for (let first = 0; first + WEEK <= days.length; first += WEEK) {
    const week = days.slice(first, first + WEEK).filter(({ kind }) => kind === "sitting");
    const mean = week.reduce((sum, day) => sum + meanOf(day, unit), 0) / week.length;
    if (week.length > 0) path += `${drawn ? "L" : "M"}${x(first + WEEK / 2, frame)} ${y(mean, frame)}`;
    drawn = week.length > 0;
  }
  return path;
}

/** Bars along the edge under days of one kind; neighbours join. */
export const barPath = (days: readonly PlanDay[], kind: PlanDay["kind"], { step }: Pick<Frame, "step">): string =>
  runs(days, (day) => day.kind === kind)
    .map(({ first, end }) => `M${x(first, { step })} ${EDGE + 2}H${x(end, { step })}v5H${x(first, { step })}Z`)
    .join("");

interface Run {
  readonly first: number;
  /** The day after the last. */
  readonly end: number;
}

/** Unbroken runs of days. */
function runs(days: readonly PlanDay[], belongs: (day: PlanDay) => boolean): readonly Run[] {
  const all: Run[] = [];
  for (const [i, day] of days.entries()) {
    if (!belongs(day)) continue;
    const last = all.at(-1);
    if (last?.end === i) all[all.length - 1] = { first: last.first, end: i + 1 };
    else all.push({ first: i, end: i + 1 });
  }
  return all;
}

function skyline({ first, end }: Run, value: (i: number) => number, frame: Frame): string {
  let path = `M${x(first, frame)} ${y(value(first), frame)}H${x(first + 1, frame)}`;
  for (let i = first + 1; i < end; i++) path += `V${y(value(i), frame)}H${x(i + 1, frame)}`;
  return path;
}

function backwards({ first, end }: Run, value: (i: number) => number, frame: Frame): string {
  let path = "";
  for (let i = end - 1; i >= first; i--) path += `V${y(value(i), frame)}H${x(i, frame)}`;
  return path;
}

const meanOf = (day: PlanDay | undefined, unit: LoadUnit): number => (day ? spreadIn(day, unit).mean : 0);

function quantileOf(day: PlanDay | undefined, unit: LoadUnit, which: 0 | 1): number {
  if (!day) return 0;
  const { mean, quantiles } = spreadIn(day, unit);
  return quantiles[which] ?? mean;
}

const short = (n: number): number => Math.round(n * 10) / 10;
const x = (i: number, { step }: Pick<Frame, "step">): number => short(dayX(i, step));
const y = (value: number, { top }: Pick<Frame, "top">): number => short(valueY(value, top));
