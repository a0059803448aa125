// The coming dates of a box: chart day, what is visited, and how much work is expected.
import { type Calendar, type DateRange, daysAhead, freshCalendar } from "../core/calendar/calendar.ts";
import { addDays, type LocalDate } from "../core/calendar/local-date.ts";
import { type BoxDay, type Chart, chartDay, type Visit, visitsOn } from "../core/chart/chart.ts";
import { type ExpectedDay, expectedLoad } from "../core/load/expected.ts";
import { minutesFor, type Pace } from "../core/load/minutes.ts";
import type { Today } from "./days.ts";
import { found } from "./failure.ts";
import { loadAhead, outlookOf } from "./outlook.ts";
import type { Context } from "./ports.ts";

/** Dates that are laid out unless another number is asked for, and the most: two years, a leap year among them. */
export const CALENDAR_DAYS = { usual: 64, most: 731 } as const;

/** A date on which there is no practice. */
export interface RestDay {
  readonly date: LocalDate;
  readonly rest: true;
}

/** A date with practice, if every practice day before it is kept. */
export interface PracticeDay {
  readonly date: LocalDate;
  readonly rest: false;
  readonly day: BoxDay;
  readonly chartDay: number;
  /** What the chart visits on it, highest compartment first. */
  readonly visits: readonly Visit[];
  /** What fell due earlier and was left, highest compartment first; only the first practice day can have any. */
  readonly late: readonly Visit[];
  /** Expected reviews of cards already in the box; today, those that are left. */
  readonly reviews: number;
  readonly newCards: number;
  readonly minutes: number;
}

/** One date of a calendar. */
export type CalendarDay = RestDay | PracticeDay;

/** The coming dates of a box, one after another. */
export interface CalendarPlan {
  /** Names the calendar: a date of a later plan of this name takes the place of the same date of an earlier one. */
  readonly id: string;
  readonly chart: Chart;
  readonly days: readonly CalendarDay[];
}

/** The next `count` dates of the box, today first; 1 ≤ `count` ≤ 731. Fails with `not-found` before it is set up. */
export const calendarDays = (context: Context, count: number = CALENDAR_DAYS.usual): Promise<CalendarPlan> =>
  context.store.read(async (session) => {
    const box = found(await session.boxes.box(), "box yet; set one up first");
    const outlook = await outlookOf(context, session, box);
    const load = loadAhead(box, outlook, count);
    const first = load[0]?.day ?? outlook.now.day;
    const visited = new Set(visitsOn(box.chart, first).map(visitKey));
    const late = (await session.boxes.duePiles(box.id, first))
      .filter((pile) => !visited.has(visitKey(pile)))
      .map(({ compartment, bundle }) => ({ compartment, bundle }));
    const days = layOut({ ...box, pace: outlook.pace, from: outlook.now, load, late }, count);
    return { id: box.id, chart: box.chart, days };
  });

const visitKey = ({ compartment, bundle }: Visit): string => `${compartment}/${bundle}`;

/** A box that is yet to be begun, empty, with as many new cards as are wanted every day. */
export interface BoxToCome {
  readonly chart: Chart;
  readonly start: LocalDate;
  /** Weekdays without practice, 1 Monday … 7 Sunday; not all seven. */
  readonly restWeekdays: readonly number[];
  /** Dates and ranges without practice. */
  readonly restDates: readonly DateRange[];
  readonly newPerDay: number;
  /** Chance of recall in compartment 1…K. */
  readonly recall: readonly number[];
  readonly pace: Pace;
}

/** The first `count` dates of a box to come, its start first. Its box day 1 is its first practice day. */
export function daysToCome(box: BoxToCome, count: number): readonly CalendarDay[] {
  const { chart, recall, pace, start, newPerDay } = box;
  const load = expectedLoad({ chart, recall, waiting: [], from: 1, days: count, newCards: () => newPerDay });
  const calendar = calendarToCome(box);
  return layOut({ chart, calendar, pace, from: { date: start, last: null }, load, late: [] }, count);
}

/** A chart that waits keeps day 1 for the first practice day. */
const calendarToCome = ({ start, restWeekdays, restDates }: BoxToCome): Calendar => ({
  ...freshCalendar(start),
  restWeekdays,
  restDates,
});

interface Course {
  readonly chart: Chart;
  readonly calendar: Calendar;
  readonly pace: Pace;
  readonly from: Pick<Today, "date" | "last">;
  /** Expected work from the first practice day on. */
  readonly load: readonly ExpectedDay[];
  readonly late: readonly Visit[];
}

function layOut({ chart, calendar, pace, from, load, late }: Course, count: number): readonly CalendarDay[] {
  const expected = new Map(load.map((one) => [one.day, one]));
  return daysAhead(calendar, from.date, from.last, count).map((day, i) => {
    const date = addDays(from.date, i);
    if (day === null) return { date, rest: true };
    const work = expected.get(day) as ExpectedDay;
    return {
      date,
      rest: false,
      day,
      chartDay: chartDay(chart, day),
      visits: visitsOn(chart, day),
      late: work === load[0] ? late : [],
      reviews: work.reviews,
      newCards: work.newCards,
      minutes: minutesFor(pace, work),
    };
  });
}
