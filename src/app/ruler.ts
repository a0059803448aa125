// The ruler: one tick a date, as high as the highest compartment visited.
import { type ChartTimeline, chartOnDay } from "../core/box/chart-timeline.ts";
import { compartmentAfter } from "../core/box/rechart.ts";
import { type Calendar, daysAhead, isRestDay, workingDays } from "../core/calendar/calendar.ts";
import { addDays, type LocalDate } from "../core/calendar/local-date.ts";
import { type BoxDay, type Chart, chartDay, visitsOn } from "../core/chart/chart.ts";
import type { ExpectedDay } from "../core/load/expected.ts";
import { chartsOf } from "./charts.ts";
import type { Today } from "./days.ts";
import type { BoxRecord, Session, SittingRecord } from "./ports.ts";
import type { RulerTick } from "./views.ts";

/** Dates on the ruler before and after today. */
const RULER = { back: 28, ahead: 42 } as const;

/** The ticks from four weeks back to six weeks ahead. `load` is the expected work from today's box day on. */
export async function drawRuler(
  session: Session,
  box: BoxRecord,
  now: Today,
  load: readonly ExpectedDay[],
): Promise<readonly RulerTick[]> {
  const begun = firstDate(box);
  const from = [begun, addDays(now.date, -RULER.back)].sort().at(-1) as LocalDate;
  const sittings = await session.boxes.sittingsBetween(box.id, from, now.date);
  const past = pastTicks({ ...box, charts: await chartsOf(session, box) }, from, now.date, sittings);
  return [...past, ...comingTicks(box, now, load, sittings)];
}

/** A box with the charts that it has gone by. */
interface BoxOverTime extends BoxRecord {
  readonly charts: ChartTimeline;
}

/** The box's first date: its anchor is the start or a later sitting, and nothing is drawn before it was sat. */
const firstDate = ({ calendar }: BoxRecord): LocalDate =>
  calendar.anchor.day === 1 ? calendar.anchor.date : "0000-01-01";

function pastTicks(
  box: BoxOverTime,
  from: LocalDate,
  today: LocalDate,
  sittings: readonly SittingRecord[],
): readonly RulerTick[] {
  const ticks: RulerTick[] = [];
  let mark: { date: LocalDate; day: BoxDay } | null = null;
  for (let date = from; date < today; date = addDays(date, 1)) {
    const own = sittings.filter((sitting) => sitting.date === date && sitting.asked + sitting.touched > 0);
    const sat = own[0];
    if (!sat && mark === null) continue;
    if (sat) mark = { date, day: sat.day };
    const rest = isRestDay(box.calendar, date);
    const day: BoxDay | null = sat ? sat.day : rest || !mark ? null : missedDay(box.calendar, mark, date);
    const reviews = own.reduce((sum, one) => sum + one.asked, 0);
    ticks.push({ date, day, ...pastVisit(box, day), rest, sat: sat !== undefined, reviews });
  }
  return ticks;
}

/** What the chart of that time says of a day, with the compartment as high as the present chart has it. */
function pastVisit({ chart, charts }: BoxOverTime, day: BoxDay | null): Pick<RulerTick, "chartDay" | "top"> {
  if (day === null) return visitOn(chart, day);
  const then = chartOnDay(charts, day);
  const { chartDay: number, top } = visitOn(then, day);
  return { chartDay: number, top: top === 0 ? 0 : compartmentAfter(then, chart, top) };
}

/** The number a missed date would have borne: none if the chart waits. */
const missedDay = (calendar: Calendar, mark: { date: LocalDate; day: BoxDay }, date: LocalDate): BoxDay | null =>
  calendar.policy === "chart-waits" ? null : mark.day + workingDays(calendar, mark.date, date);

function comingTicks(
  box: BoxRecord,
  now: Today,
  load: readonly ExpectedDay[],
  sittings: readonly SittingRecord[],
): readonly RulerTick[] {
  const expected = new Map(load.map((one) => [one.day, one.reviews]));
  const today = sittings.filter((sitting) => sitting.date === now.date);
  const asked = today.reduce((sum, sitting) => sum + sitting.asked, 0);
  return daysAhead(box.calendar, now.date, now.last, RULER.ahead + 1).map((day, i) => {
    const reviews = (day === null ? 0 : (expected.get(day) ?? 0)) + (i === 0 ? asked : 0);
    const sat = i === 0 && today.some((sitting) => sitting.asked + sitting.touched > 0);
    const date = addDays(now.date, i);
    return { date, day, ...visitOn(box.chart, day), rest: day === null, sat, reviews };
  });
}

const visitOn = (chart: Chart, day: BoxDay | null): Pick<RulerTick, "chartDay" | "top"> =>
  day === null
    ? { chartDay: null, top: 0 }
    : { chartDay: chartDay(chart, day), top: visitsOn(chart, day)[0]?.compartment ?? 0 };
