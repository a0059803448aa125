// Which day it is, for a box.
import { boxDayOn, type DayMark, passIdleDays } from "../core/calendar/calendar.ts";
import { type LocalDate, localDateAt } from "../core/calendar/local-date.ts";
import type { BoxDay } from "../core/chart/chart.ts";
import type { Boxes, BoxRecord, Context, Session } from "./ports.ts";

/** Today's date and box day, and the last day that is done: a sitting in which anything happened, or a day with nothing to do. */
export interface Today {
  readonly date: LocalDate;
  readonly day: BoxDay;
  readonly last: DayMark | null;
}

/** Today's date, by the clock and the box's calendar. */
export const localToday = ({ clock }: Pick<Context, "clock">, { calendar }: BoxRecord): LocalDate =>
  localDateAt(clock(), calendar.timeZone, calendar.rollOverHour);

/** Today, by the clock and the box's own calendar. */
export async function today(context: Pick<Context, "clock">, session: Session, box: BoxRecord): Promise<Today> {
  const { calendar } = box;
  const date = localToday(context, box);
  const sitting = await session.boxes.lastSitting(box.id, date);
  if (!sitting) return { date, day: boxDayOn(calendar, date, null), last: null };
  const last = passIdleDays(
    calendar,
    date,
    { date: sitting.date, day: sitting.day },
    await firstWork(session.boxes, box),
  );
  return { date, day: boxDayOn(calendar, date, last), last };
}

/** The first box day on which nothing has been asked yet: today, or the day after the last sitting. */
export const nextFreeDay = ({ day, last }: Today): BoxDay => (last ? Math.max(day, last.day + 1) : day);

/** The first box day on which there is anything to do: now, while there are new cards to introduce. */
export async function firstWork(boxes: Pick<Boxes, "stock" | "firstDue">, box: BoxRecord): Promise<BoxDay> {
  if (box.newPerDay > 0 && (await boxes.stock(box.id, 1)).length > 0) return 0;
  return (await boxes.firstDue(box.id)) ?? Number.POSITIVE_INFINITY;
}
