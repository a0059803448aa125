// A calendar file: RFC 5545 (iCalendar), with the refresh interval and the name of RFC 7986.
import { createHash } from "node:crypto";
import ical, { escape as escapeText, ICalCalendarMethod, ICalEventTransparency } from "ical-generator";
import type { CalendarPlan, PracticeDay } from "../app/calendar-days.ts";
import type { LocalDate } from "../core/calendar/local-date.ts";
import type { Chart, Visit } from "../core/chart/chart.ts";
import { cleanText } from "../core/facts/clean-text.ts";
import { about, count, counted } from "../core/words.ts";

/** What a calendar is called unless somebody names it. */
export const CALENDAR_TITLE = "Longhold";

/** How often a program that subscribes should look again: a sitting changes what is expected. */
const REFRESH_SECONDS = 6 * 3_600;

/**
 * The iCalendar text of a plan: an all-day event for every practice day, free time in the eyes of other programs.
 * A rest day has none: a calendar is looked at for what asks for time, and an empty date says just that. If there
 * are only rest days the first has one, since a calendar without events is no valid one (RFC 5545, 3.6). `stamp`
 * is the time of making, in milliseconds since 1970. Equal plans, titles and stamps give equal text.
 */
export function calendarFile(
  { id, chart, days }: CalendarPlan,
  { title = CALENDAR_TITLE, stamp }: { readonly title?: string | undefined; readonly stamp: number },
): string {
  const name = cleanText(title);
  const calendar = ical({
    prodId: { company: "Longhold", product: "Longhold", language: "EN" },
    method: ICalCalendarMethod.PUBLISH,
    // The library escapes what stands in an event, and leaves the name as it is.
    name: escapeText(name, false),
    ttl: REFRESH_SECONDS,
  });
  const practice = days.filter((day) => !day.rest);
  for (const day of practice.length > 0 ? practice : days.slice(0, 1)) {
    calendar.createEvent({
      id: eventId(id, day.date),
      stamp: new Date(stamp),
      start: new Date(`${day.date}T00:00:00Z`),
      allDay: true,
      summary: `${name}: ${day.rest ? "rest day" : summaryOf(day)}`,
      description: day.rest ? "Rest days as far as this calendar goes" : descriptionOf(chart, day),
      transparency: ICalEventTransparency.TRANSPARENT,
    });
  }
  // The last line needs its end too (RFC 5545, 3.1); the library leaves it open.
  return `${calendar.toString()}\r\n`;
}

/**
 * The same for a calendar's date whenever the file is made, so that it replaces what was there. A hash, since the
 * box's own identity is part of the address of its subscription and a calendar may be shown to others.
 */
const eventId = (calendar: string, date: LocalDate): string =>
  `longhold-${createHash("sha256").update(`${calendar} ${date}`).digest("hex").slice(0, 32)}`;

const summaryOf = ({ chartDay, minutes }: PracticeDay): string =>
  `chart day ${chartDay}, ${minutes > 0 ? about(minutes) : "nothing to do"}`;

function descriptionOf(chart: Chart, { visits, late, reviews, newCards }: PracticeDay): string {
  const piles = (list: readonly Visit[]): string => list.map((visit) => pileName(chart, visit)).join(", then ");
  const due = reviews < 0.5 ? "No cards due" : `About ${counted(reviews, "card")} due`;
  return [
    visits.length > 0 ? `Compartments to visit: ${piles(visits)}` : "No compartment to visit",
    ...(late.length > 0 ? [`Left from earlier days: ${piles(late)}`] : []),
    `${due}, ${newCards > 0 ? count(newCards) : "none"} new`,
  ].join("\n");
}

/** "7 bundle 3", or only "7" where the compartment is not divided. */
const pileName = (chart: Chart, { compartment, bundle }: Visit): string =>
  (chart.compartments[compartment - 1]?.bundles ?? 1) > 1 ? `${compartment} bundle ${bundle}` : `${compartment}`;
