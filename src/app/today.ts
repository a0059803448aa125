// The Today page: what to do now, how long it will take, and what a missed day means.
import {
  boxDayOn,
  type Calendar,
  changeCalendar,
  daysAhead,
  isRestDay,
  type MissedDayPolicy,
  missedDays,
} from "../core/calendar/calendar.ts";
import { localDateAt } from "../core/calendar/local-date.ts";
import { chartDay, cycleLength } from "../core/chart/chart.ts";
import { expectedLoad, type Waiting } from "../core/load/expected.ts";
import { DEFAULT_PACE, minutesFor } from "../core/load/minutes.ts";
import { type Today, today } from "./days.ts";
import { paceOf, recallOf } from "./measures.ts";
import type { BoxRecord, Context, Session, SittingRecord } from "./ports.ts";
import { drawRuler } from "./ruler.ts";
import { BOX_DEFAULTS, boxView } from "./set-up.ts";
import { unfinishedSitting } from "./sit.ts";
import type { PolicyPreview, TodayView } from "./views.ts";

/** As far as the end of a holiday is looked for, in days. */
const LONGEST_REST = 400;

/** Practice days that a policy's preview looks ahead. */
const PREVIEW_DAYS = 14;

/** The Today page. Before a box is set up it only says how many facts there are. */
export const todayView = (context: Context, timeZone: string): Promise<TodayView> =>
  context.store.read(async (session) => {
    const box = await session.boxes.box();
    const facts = [...(await session.library.countBySubject("fact")).values()].reduce((sum, count) => sum + count, 0);
    const demo = (await session.library.subjects()).some((subject) => subject.demo);
    if (!box) return emptyToday(localDateAt(context.clock(), timeZone, BOX_DEFAULTS.rollOverHour), facts, demo);
    return { ...(await boxToday(context, session, box)), facts, demo };
  });

async function boxToday(context: Context, session: Session, box: BoxRecord): Promise<TodayView> {
  const now = await today(context, session, box);
  const sittings = await session.boxes.sittingsBetween(box.id, now.date, now.date);
  const newest = sittings.at(-1);
  const recall = await recallOf(session, box);
  const { pace, measured } = await paceOf(session, box);
  const waiting = await session.boxes.waiting(box.id);
  const piles = await session.boxes.duePiles(box.id, now.day);
  const due = piles.reduce((sum, pile) => sum + pile.count, 0);
  const missed = piles.reduce((sum, pile) => sum + pile.count * (1 - (recall[pile.compartment - 1] ?? 1)), 0);
  const stock = await session.boxes.countStock(box.id);
  const introducedToday = await introduced(session, sittings);
  const open = await unfinishedSitting(session, box, now);
  const planned = open ? open.newCards - (await introduced(session, [open])) : box.newPerDay - introducedToday;
  const newCards = Math.max(0, Math.min(planned, stock));
  const load = loadAhead(box, recall, waiting, now, newCards, stock);
  return {
    box: boxView(box),
    demo: false,
    facts: 0,
    date: now.date,
    day: now.day,
    chartDay: chartDay(box.chart, now.day),
    cycle: cycleLength(box.chart),
    restDay: isRestDay(box.calendar, now.date),
    missedDays: missedDays(box.calendar, now.date, now.last),
    piles: piles.map(({ compartment, bundle, count }) => ({ compartment, bundle, count })),
    due,
    stock,
    newCards,
    introducedToday,
    minutes: minutesFor(pace, { reviews: due, missed, newCards }),
    pace,
    paceMeasured: measured,
    recall,
    sitting:
      newest && (newest.finished || open) ? { id: newest.id, finished: newest.finished, asked: newest.asked } : null,
    lastEntry: await session.boxes.lastEntryId(box.id),
    ruler: await drawRuler(session, box, now, load),
    policies: previewPolicies(box, recall, waiting, now, newCardsAhead(box, newCards, stock)),
  };
}

/** Cards introduced in these sittings. */
async function introduced({ boxes }: Session, sittings: readonly SittingRecord[]): Promise<number> {
  const cards = new Set<string>();
  for (const { id } of sittings.filter((sitting) => sitting.touched > 0)) {
    for (const event of await boxes.eventsOfSitting(id)) {
      if (event.kind === "outcome" && event.pass === "introduction" && event.answer === "recalled")
        cards.add(event.card);
    }
  }
  return cards.size;
}

/** New cards so many practice days from now: what is planned for the first, then the daily number while the stock lasts. */
const newCardsAhead =
  (box: BoxRecord, planned: number, stock: number) =>
  (after: number): number =>
    after === 0 ? planned : Math.max(0, Math.min(box.newPerDay, stock - planned - (after - 1) * box.newPerDay));

/** Expected load from the next practice day on, which is today unless today is a rest day on which nobody sat. */
function loadAhead(
  box: BoxRecord,
  recall: readonly number[],
  waiting: readonly Waiting[],
  now: Today,
  newToday: number,
  stock: number,
) {
  const next = daysAhead(box.calendar, now.date, now.last, LONGEST_REST).find((day) => day !== null) ?? now.day;
  const resting = isRestDay(box.calendar, now.date) && now.last?.date !== now.date;
  const newCards = newCardsAhead(box, resting ? Math.min(box.newPerDay, stock) : newToday, stock);
  return expectedLoad({ chart: box.chart, recall, waiting, from: next, days: 60, newCards });
}

function previewPolicies(
  box: BoxRecord,
  recall: readonly number[],
  waiting: readonly Waiting[],
  now: Today,
  newCards: (after: number) => number,
): readonly PolicyPreview[] {
  const preview = (policy: MissedDayPolicy): PolicyPreview => {
    const day = boxDayOn(changeCalendar(box.calendar, { policy }, now.last), now.date, now.last);
    const load = expectedLoad({ chart: box.chart, recall, waiting, from: day, days: PREVIEW_DAYS, newCards });
    return { policy, today: day, dueToday: load[0]?.reviews ?? 0, ahead: load.map((one) => one.reviews) };
  };
  return [preview("chart-waits"), preview("chart-goes-on")];
}

const emptyToday = (date: Calendar["anchor"]["date"], facts: number, demo: boolean): TodayView => ({
  box: null,
  demo,
  facts,
  date,
  day: 1,
  chartDay: 1,
  cycle: 1,
  restDay: false,
  missedDays: 0,
  piles: [],
  due: 0,
  stock: 0,
  newCards: 0,
  introducedToday: 0,
  minutes: 0,
  pace: DEFAULT_PACE,
  paceMeasured: false,
  recall: [],
  sitting: null,
  lastEntry: null,
  ruler: [],
  policies: [],
});
