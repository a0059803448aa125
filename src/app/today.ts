// The Today page: what to do now, how long it will take, and what a missed day means.
import {
  boxDayOn,
  type Calendar,
  changeCalendar,
  isRestDay,
  type MissedDayPolicy,
  missedDays,
} from "../core/calendar/calendar.ts";
import { localDateAt } from "../core/calendar/local-date.ts";
import { chartDay, cycleLength } from "../core/chart/chart.ts";
import { expectedLoad } from "../core/load/expected.ts";
import { DEFAULT_PACE, minutesFor } from "../core/load/minutes.ts";
import { loadAhead, newCardsAhead, type Outlook, outlookOf } from "./outlook.ts";
import type { BoxRecord, Context, Session } from "./ports.ts";
import { drawRuler } from "./ruler.ts";
import { BOX_DEFAULTS, boxView } from "./set-up.ts";
import type { PolicyPreview, TodayView } from "./views.ts";

/** Practice days whose load the ruler may need: as many as it shows ahead, and a few more. */
const RULER_LOAD = 60;

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
  const outlook = await outlookOf(context, session, box);
  const { now, recall, pace, stock, newCards, open } = outlook;
  const newest = outlook.sittings.at(-1);
  const piles = await session.boxes.duePiles(box.id, now.day);
  const due = piles.reduce((sum, pile) => sum + pile.count, 0);
  const missed = piles.reduce((sum, pile) => sum + pile.count * (1 - (recall[pile.compartment - 1] ?? 1)), 0);
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
    introducedToday: outlook.introducedToday,
    minutes: minutesFor(pace, { reviews: due, missed, newCards }),
    pace,
    paceMeasured: outlook.paceMeasured,
    recall,
    sitting:
      newest && (newest.finished || open) ? { id: newest.id, finished: newest.finished, asked: newest.asked } : null,
    lastEntry: await session.boxes.lastEntryId(box.id),
    ruler: await drawRuler(session, box, now, loadAhead(box, outlook, RULER_LOAD)),
    policies: previewPolicies(box, outlook),
  };
}

function previewPolicies(box: BoxRecord, outlook: Outlook): readonly PolicyPreview[] {
  const { now, recall, waiting } = outlook;
  const newCards = newCardsAhead(box, outlook.newCards, outlook.stock);
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
