// The year's load as SVG. What it says stands in the sentences and the table beside it.
import { memo } from "react";
import { isoWeekday } from "../../../core/calendar/local-date.ts";
import type { PlanDay } from "../../../core/load/plan-load.ts";
import { count } from "../../words.ts";
import { niceScale } from "../plots/nice-scale.ts";
import type { LoadUnit } from "../workers/mix-worker.ts";
import { monthName, yearOf } from "./month-names.ts";
import { type MonthPart, monthParts, spreadIn } from "./year-figures.ts";
import { barPath, dayX, EDGE, type Frame, highest, loadPaths, valueY, weekPath, YEAR_PLOT } from "./year-geometry.ts";

const { left, right, head, body } = YEAR_PLOT;
const HEIGHT = EDGE + body;
/** How deep today's notch is cut, and half as wide. */
const NOTCH = 9;
/** Least width of a day with which ticks of weeks can be told apart. */
const WEEK_ROOM = 1.2;
/** What the name of a month takes; with a year it takes more. */
const NAME_ROOM = 46;

interface YearDrawingProps {
  readonly days: readonly PlanDay[];
  readonly pinned: readonly PlanDay[] | null;
  readonly unit: LoadUnit;
  readonly width: number;
  readonly step: number;
  /** The day under the cursor. */
  readonly at: number;
}

/** The drawing; `width` in CSS pixels. */
export function YearDrawing({ days, pinned, unit, width, step, at }: YearDrawingProps) {
  const most = Math.max(highest(days, unit), pinned ? highest(pinned, unit) : 0);
  const { top, marks } = niceScale(most);
  return (
    <svg className="year-drawing" width={width} height={HEIGHT} viewBox={`0 0 ${width} ${HEIGHT}`} aria-hidden="true">
      <Axis top={top} marks={marks} unit={unit} width={width} />
      <Skyline days={days} unit={unit} step={step} top={top} />
      {pinned ? <path className="pinned-line" d={weekPath(pinned, unit, { step, top })} /> : null}
      <MonthRuler days={days} width={width} step={step} />
      <Cursor day={days[at]} x={dayX(at, step) + step / 2} unit={unit} top={top} />
    </svg>
  );
}

const Axis = memo(function Axis(props: {
  readonly top: number;
  readonly marks: readonly number[];
  readonly unit: LoadUnit;
  readonly width: number;
}) {
  const { top, marks, unit, width } = props;
  return (
    <>
      <text className="axis-name" x={left} y={13}>
        {unit === "cards" ? "cards asked a day" : "minutes a day"}
      </text>
      {marks.slice(1).map((mark) => (
        <g key={mark}>
          <path className="grid-line" d={`M${left} ${valueY(mark, top)}H${width - right}`} />
          <text className="axis-mark" x={left - 7} y={valueY(mark, top) + 4} textAnchor="end">
            {count(mark)}
          </text>
        </g>
      ))}
    </>
  );
}, sameAxis);

/** Marks follow from the top. */
function sameAxis(
  one: { top: number; unit: LoadUnit; width: number },
  other: { top: number; unit: LoadUnit; width: number },
): boolean {
  return one.top === other.top && one.unit === other.unit && one.width === other.width;
}

const Skyline = memo(function Skyline({
  days,
  unit,
  step,
  top,
}: Frame & { readonly days: readonly PlanDay[]; readonly unit: LoadUnit }) {
  const { ground, band, days: roofs, weeks } = loadPaths(days, unit, { step, top });
  return (
    <>
      <path className="load-area" d={ground} />
      <path className="load-band" d={band} />
      <path className="day-roofs" d={roofs} />
      <path className="load-mean" d={weeks} />
    </>
  );
});

/** The ruler: months along the edge, a tick for every Monday, today a notch, bars where nobody sits. */
const MonthRuler = memo(
  function MonthRuler(props: { readonly days: readonly PlanDay[]; readonly width: number; readonly step: number }) {
    const { days, width, step } = props;
    const months = monthParts(days);
    const named = namedMonths(months, step);
    const tick = (i: number, length: number): string => `M${dayX(i, step).toFixed(1)} ${EDGE}v${length}`;
    const mondays = days.map(({ date }, i) => (isoWeekday(date) === 1 ? tick(i, 12) : ""));
    const ends = months.slice(1).map(({ month, first }) => {
      return tick(first, named.some((one) => one.month === month) ? body - 6 : 17);
    });
    return (
      <>
        <path className="ruler-body" d={bodyPath(width)} />
        {step >= WEEK_ROOM ? <path className="week-ticks" d={mondays.join("")} /> : null}
        <path className="month-ticks" d={ends.join("")} />
        <path className="rest-bar" d={barPath(days, "rest", { step })} />
        <path className="missed-bar" d={barPath(days, "missed", { step })} />
        <path className="now-line" d={`M${left} ${EDGE + NOTCH}V${head - 6}`} />
        {named.map(({ month, x }) => (
          <text key={month} className="ruler-date" x={x + 5} y={EDGE + 31}>
            {monthName(month)}
            {month.endsWith("-01") ? ` ${yearOf(month)}` : ""}
          </text>
        ))}
      </>
    );
  },
  (one, other) => one.width === other.width && one.step === other.step && sameDates(one.days, other.days),
);

/** Whether the ruler looks the same for both: the dates, and who sits on them. */
function sameDates(one: readonly PlanDay[], other: readonly PlanDay[]): boolean {
  if (one === other) return true;
  return (
    one.length === other.length && one.every(({ date, kind }, i) => date === other[i]?.date && kind === other[i]?.kind)
  );
}

/** The ruler's outline, with a notch cut into the edge at today, where the year begins. */
function bodyPath(width: number): string {
  return `M${left - NOTCH} ${EDGE}L${left} ${EDGE + NOTCH}L${left + NOTCH} ${EDGE}H${width - 1}V${HEIGHT - 5}q0 4-4 4H5q-4 0-4-4V${EDGE}Z`;
}

/** Months whose names have room, with where they begin. */
function namedMonths(months: readonly MonthPart[], step: number) {
  const named: { readonly month: string; readonly x: number }[] = [];
  const last = months.at(-1);
  const end = last ? dayX(last.first + last.days, step) : 0;
  let free = 0;
  for (const { month, first, days } of months) {
    const x = dayX(first, step);
    const room = month.endsWith("-01") ? 1.7 * NAME_ROOM : NAME_ROOM;
    // The rest of a month in which the year begins may be too short to bear its name.
    if (x < free || x + room > end || (first === 0 && days * step < room)) continue;
    named.push({ month, x });
    free = x + room;
  }
  return named;
}

function Cursor(props: {
  readonly day: PlanDay | undefined;
  readonly x: number;
  readonly unit: LoadUnit;
  readonly top: number;
}) {
  const { day, x, unit, top } = props;
  if (!day) return null;
  return (
    <g data-screen="">
      <path className="cursor-line" d={`M${x} ${head - 6}V${EDGE + 14}`} />
      <circle className="cursor-dot" cx={x} cy={valueY(spreadIn(day, unit).mean, top)} r={4.5} />
    </g>
  );
}
