// What the Plan page starts from: the box as it is, what is known of its learner, and the days ahead.
import { freshCalendar } from "../core/calendar/calendar.ts";
import { addDays, localDateAt } from "../core/calendar/local-date.ts";
import { DEFAULT_PACE } from "../core/load/minutes.ts";
import { chartsOf } from "./charts.ts";
import { today } from "./days.ts";
import { paceOf, recentVisits } from "./measures.ts";
import type { BoxRecord, Context, Session } from "./ports.ts";
import { BOX_DEFAULTS, boxView } from "./set-up.ts";
import type { PlanView } from "./views.ts";

/** The Plan page. Before a box is set up it plans one that begins today, empty. */
export const planView = (context: Context, timeZone: string): Promise<PlanView> =>
  context.store.read(async (session) => {
    const box = await session.boxes.box();
    return box ? planOfBox(context, session, box) : emptyPlan(context, timeZone);
  });

async function planOfBox(context: Context, session: Session, box: BoxRecord): Promise<PlanView> {
  const { date, last } = await today(context, session, box);
  const { pace, measured } = await paceOf(session, box);
  return {
    box: boxView(box),
    calendar: box.calendar,
    date,
    // Today is still ahead until it was sat.
    from: last?.date === date ? addDays(date, 1) : date,
    last,
    waiting: await session.boxes.waiting(box.id),
    visits: await recentVisits(session, box),
    pace,
    paceMeasured: measured,
    stock: await session.boxes.countStock(box.id),
    chartChange: await openChange(session, box),
  };
}

/** The newest change of chart, while nothing has happened since that would keep it from being taken back. */
async function openChange(session: Session, box: BoxRecord): Promise<string | null> {
  const newest = (await chartsOf(session, box)).changes.at(-1);
  return newest && !(await session.boxes.cardsTouchedSince(box.id, newest.id)) ? newest.id : null;
}

function emptyPlan({ clock }: Context, timeZone: string): PlanView {
  const { rollOverHour } = BOX_DEFAULTS;
  const date = localDateAt(clock(), timeZone, rollOverHour);
  const calendar = freshCalendar(date, timeZone, rollOverHour);
  const nothing = { last: null, waiting: [], visits: [], stock: 0, chartChange: null };
  return { box: null, calendar, date, from: date, pace: DEFAULT_PACE, paceMeasured: false, ...nothing };
}
