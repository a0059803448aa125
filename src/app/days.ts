// Which day it is, for a box.
import { boxDayOn, type DayMark } from "../core/calendar/calendar.ts";
import { type LocalDate, localDateAt } from "../core/calendar/local-date.ts";
import type { BoxDay } from "../core/chart/chart.ts";
import type { BoxRecord, Context, Session } from "./ports.ts";

/** Today's date and box day, and the last sitting in which anything happened. */
export interface Today {
  readonly date: LocalDate;
  readonly day: BoxDay;
  readonly last: DayMark | null;
}

/** Today, by the clock and the box's own calendar. */
export async function today({ clock }: Pick<Context, "clock">, { boxes }: Session, box: BoxRecord): Promise<Today> {
  const { calendar } = box;
  const date = localDateAt(clock(), calendar.timeZone, calendar.rollOverHour);
  const sitting = await boxes.lastSitting(box.id, date);
  const last = sitting ? { date: sitting.date, day: sitting.day } : null;
  return { date, day: boxDayOn(calendar, date, last), last };
}
