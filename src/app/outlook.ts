// What a box has before it: what is left to do today, and the expected work of the practice days that follow.
import { daysAhead, isRestDay } from "../core/calendar/calendar.ts";
import { type ExpectedDay, expectedLoad, type Waiting } from "../core/load/expected.ts";
import type { Pace } from "../core/load/minutes.ts";
import { type Today, today } from "./days.ts";
import { paceOf, recallOf } from "./measures.ts";
import type { BoxRecord, Context, Session, SittingRecord } from "./ports.ts";
import { unfinishedSitting } from "./sit.ts";

/** As far as the end of a holiday is looked for, in days. */
const LONGEST_REST = 400;

/** What the work of a box's coming days is worked out from. */
export interface Outlook {
  readonly now: Today;
  /** Chance of recall in compartment 1…K. */
  readonly recall: readonly number[];
  readonly pace: Pace;
  /** Whether `pace` comes from this learner's own answers. */
  readonly paceMeasured: boolean;
  readonly waiting: readonly Waiting[];
  readonly stock: number;
  /** Today's sittings, oldest first, and the one of them that can go on. */
  readonly sittings: readonly SittingRecord[];
  readonly open: SittingRecord | null;
  readonly introducedToday: number;
  /** New cards that a sitting begun or resumed now would introduce. */
  readonly newCards: number;
}

/** How things stand with a box now. */
export async function outlookOf(context: Pick<Context, "clock">, session: Session, box: BoxRecord): Promise<Outlook> {
  const now = await today(context, session, box);
  const sittings = await session.boxes.sittingsBetween(box.id, now.date, now.date);
  const open = await unfinishedSitting(session, box, now);
  const introducedToday = await introduced(session, sittings);
  const planned = open ? open.newCards - (await introduced(session, [open])) : box.newPerDay - introducedToday;
  const stock = await session.boxes.countStock(box.id);
  const { pace, measured } = await paceOf(session, box);
  return {
    now,
    recall: await recallOf(session, box),
    pace,
    paceMeasured: measured,
    waiting: await session.boxes.waiting(box.id),
    stock,
    sittings,
    open,
    introducedToday,
    newCards: Math.max(0, Math.min(planned, stock)),
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
export const newCardsAhead =
  (box: BoxRecord, planned: number, stock: number) =>
  (after: number): number =>
    after === 0 ? planned : Math.max(0, Math.min(box.newPerDay, stock - planned - (after - 1) * box.newPerDay));

/**
 * Expected work of the next `days` practice days, if all of them are kept. The first is today, of which only
 * what is left is counted; on a rest day it is the next day that is none.
 */
export function loadAhead(box: BoxRecord, outlook: Outlook, days: number): readonly ExpectedDay[] {
  const { recall, waiting, stock } = outlook;
  const { date, day, last } = outlook.now;
  const ahead = daysAhead(box.calendar, date, last, Math.max(LONGEST_REST, days));
  const from = ahead.find((one) => one !== null) ?? day;
  const planned = isRestDay(box.calendar, date) ? Math.min(box.newPerDay, stock) : outlook.newCards;
  const newCards = newCardsAhead(box, planned, stock);
  return expectedLoad({ chart: box.chart, recall, waiting, from, days, newCards });
}
