// The ruler: one tick a date, as high as the highest compartment visited.
import { type Calendar, daysAhead, isRestDay, workingDays } from "../core/calendar/calendar.ts";
import { addDays, type LocalDate } from "../core/calendar/local-date.ts";
import { type BoxDay, chartDay, visitsOn } from "../core/chart/chart.ts";
import type { ExpectedDay } from "../core/load/expected.ts";
import type { Today } from "./days.ts";
import type { BoxRecord, Session, SittingRecord } from "./ports.ts";
import type { RulerTick } from "./views.ts";

/** Dates on the ruler before and after today. */
const RULER = { back: 28, ahead: 42 } as const;

/** The ticks from four weeks back to six weeks ahead. `load` is the expected work from today's box day on. */
export async function drawRuler(
  { boxes }: Session,
  box: BoxRecord,
  now: Today,
  load: readonly ExpectedDay[],
): Promise<readonly RulerTick[]> {
  const begun = firstDate(box);
  const from = [begun, addDays(now.date, -RULER.back)].sort().at(-1) as LocalDate;
  const sittings = await boxes.sittingsBetween(box.id, from, now.date);
  const past = pastTicks(box, from, now.date, sittings);
  return [...past, ...comingTicks(box, now, load, sittings)];
}

/** The box's first date: its anchor is the start or a later sitting, and nothing is drawn before it was sat. */
const firstDate = ({ calendar }: BoxRecord): LocalDate =>
  calendar.anchor.day === 1 ? calendar.anchor.date : "0000-01-01";

function pastTicks(
  box: BoxRecord,
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
    ticks.push(
      tick(box, date, day, { rest, sat: sat !== undefined, reviews: own.reduce((sum, one) => sum + one.asked, 0) }),
    );
  }
  return ticks;
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
    return tick(box, addDays(now.date, i), day, { rest: day === null, sat, reviews });
  });
}

function tick(
  box: BoxRecord,
  date: LocalDate,
  day: BoxDay | null,
  rest: Pick<RulerTick, "rest" | "sat" | "reviews">,
): RulerTick {
  const top = day === null ? 0 : (visitsOn(box.chart, day)[0]?.compartment ?? 0);
  return { date, day, chartDay: day === null ? null : chartDay(box.chart, day), top, ...rest };
}
