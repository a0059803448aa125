// Results from paper: the piles of a day are known, so the numbers of the missed cards say everything else.
import { addDays, type LocalDate } from "../core/calendar/local-date.ts";
import type { CardId } from "../core/cards/cards.ts";
import { groupBy } from "../core/lists.ts";
import { chooseNewCards, type DueCard } from "../core/sitting/plan.ts";
import { boxOn, firstDate } from "./box-then.ts";
import { localToday } from "./days.ts";
import { FailureError, found } from "./failure.ts";
import { momentOfWriting } from "./moment-of-writing.ts";
import { enterDay, type PaperDay } from "./paper-entry.ts";
import { paperUndo } from "./paper-undo.ts";
import type { BoxRecord, Context, Session } from "./ports.ts";
import type { PaperDayView, PaperOutcome } from "./views.ts";

/** The latest days that can be entered at once. */
const MOST_DAYS = 31;

/** A day that is read against what was due on it, once the days before it are entered. */
export interface UnreadDay {
  /** Left out: today. */
  readonly date?: LocalDate | undefined;
  readonly read: (view: PaperDayView) => PaperDay;
}

/** A day as it comes. */
type GivenDay = PaperDay | UnreadDay;

/**
 * What can be entered for a date: its piles, and the new cards that a sheet of that day names. `before` are days that
 * are to be entered with it and count as entered. Fails as `enterPaper` does.
 */
export const paperDay = (
  context: Context,
  date?: LocalDate,
  before: readonly PaperDay[] = [],
): Promise<PaperDayView> =>
  before.length === 0
    ? context.store.read((session) => dayView(context, session, date))
    : givenUp(context, async (session) => {
        await enter(context, session, before);
        return dayView(context, session, date);
      });

/** What entering these days would do; nothing is recorded. */
export const previewPaper = (context: Context, days: readonly GivenDay[]): Promise<readonly PaperOutcome[]> =>
  givenUp(context, (session) => enter(context, session, days));

/**
 * Records these days, the earliest first, as sittings of their dates: all of them or, if one cannot be right, none. A
 * day before one that is recorded already is placed as if it had been entered then.
 */
export const enterPaper = (context: Context, days: readonly GivenDay[]): Promise<readonly PaperOutcome[]> =>
  context.store.write((session) => enter(context, session, days));

/** Does something as it would be done, and then gives it up. */
async function givenUp<T>(context: Context, work: (session: Session) => Promise<T>): Promise<T> {
  let result: { readonly of: T } | undefined;
  const over = Symbol("given up");
  await context.store
    .write(async (session) => {
      result = { of: await work(session) };
      throw over;
    })
    .catch((error: unknown) => {
      if (error !== over) throw error;
    });
  return found(result ?? null, "result").of;
}

async function enter(context: Context, session: Session, days: readonly GivenDay[]): Promise<readonly PaperOutcome[]> {
  if (days.length > MOST_DAYS) throw new FailureError("too-large", `At most ${MOST_DAYS} days can be entered at once.`);
  const box = found(await session.boxes.box(), "box");
  const now = context.clock();
  // One moment for all of them: they are one step, and undone as one.
  const at = await momentOfWriting(session, box, now);
  const outcomes: PaperOutcome[] = [];
  const still = { ...context, clock: () => now };
  for (const given of [...days].sort((a, b) => ((a.date ?? "") < (b.date ?? "") ? -1 : 1))) {
    const day = "read" in given ? given.read(await dayView(still, session, given.date)) : given;
    outcomes.push(await enterDay(still, session, box, { ...day, at }));
  }
  return outcomes;
}

async function dayView(context: Context, session: Session, chosen?: LocalDate): Promise<PaperDayView> {
  const box = found(await session.boxes.box(), "box");
  const date = chosen ?? localToday(context, box);
  const then = await boxOn(context, session, box, date);
  const { newPerDay } = then.box;
  const stock = await then.places.stock(box.id, 4 * newPerDay + 50);
  const fresh = chooseNewCards(stock, newPerDay, new Set()).map((ref) => ref.card);
  return {
    ...(await openDates(context, session, box)),
    date,
    day: then.day,
    piles: await pilesOf(session, await then.places.dueCards(box.id, then.day)),
    newCards: rising((await numbersOf(session, fresh)).values()),
    undo: await paperUndo(session, box),
  };
}

async function pilesOf(session: Session, due: readonly DueCard[]): Promise<PaperDayView["piles"]> {
  const numbers = await numbersOf(
    session,
    due.map(({ card }) => card),
  );
  return [...groupBy(due, ({ compartment, bundle }) => `${compartment}/${bundle}`).values()]
    .flatMap((pile) => {
      const [first] = pile;
      if (!first) return [];
      const { compartment, bundle } = first;
      return { compartment, bundle, numbers: rising(pile.map(({ card }) => numbers.get(card) ?? 0)) };
    })
    .sort((a, b) => b.compartment - a.compartment || a.bundle - b.bundle);
}

const rising = (numbers: Iterable<number>): readonly number[] => [...numbers].sort((a, b) => a - b);

async function openDates(
  context: Context,
  session: Session,
  box: BoxRecord,
): Promise<Pick<PaperDayView, "dates" | "recorded">> {
  const today = localToday(context, box);
  const first = await firstDate(context, session, box);
  const dates: LocalDate[] = [];
  for (let date = today; date >= first && dates.length < MOST_DAYS; date = addDays(date, -1)) dates.unshift(date);
  const sittings = await session.boxes.sittingsBetween(box.id, dates[0] ?? today, today);
  const recorded = new Set(sittings.filter(({ asked, touched }) => asked + touched > 0).map((one) => one.date));
  return { dates, recorded: [...recorded].sort() };
}

async function numbersOf(session: Session, cards: readonly CardId[]): Promise<ReadonlyMap<CardId, number>> {
  return new Map((await session.library.cards(cards)).map((card) => [card.id, card.number]));
}
