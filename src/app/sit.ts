// Sitting down: beginning or resuming today's sitting, and looking ahead from its closing page.

import { isRestDay } from "../core/calendar/calendar.ts";
import { addDays, type LocalDate } from "../core/calendar/local-date.ts";
import { compartmentCount } from "../core/chart/chart.ts";
import { minutesFor } from "../core/load/minutes.ts";
import type { BeginEntry, OutcomeEntry } from "../core/log/entry.ts";
import type { EntryId } from "../core/log/entry-id.ts";
import { chooseNewCards, type DueCard, planSitting } from "../core/sitting/plan.ts";
import type { SittingEvent } from "../core/sitting/sitting.ts";
import { today } from "./days.ts";
import { found } from "./failure.ts";
import { paceOf, recallOf } from "./measures.ts";
import type { BoxRecord, Context, Session, SittingRecord } from "./ports.ts";
import type { AheadView, SittingView } from "./views.ts";

/**
 * Begins a sitting under the given identity, or resumes: the one of that identity if it exists, else
 * today's unfinished one.
 */
export const beginSitting = (context: Context, id: EntryId, newCards: number): Promise<SittingView> =>
  context.store.write(async (session) => {
    const box = found(await session.boxes.box(), "box");
    const { date, day } = await today(context, session, box);
    const known = (await session.boxes.sitting(id)) ?? (await unfinishedSitting(session, box, date));
    const sitting = known ?? (await openSitting(context, session, box, { id, date, day, newCards }));
    return sittingView(session, box, sitting);
  });

/** Today's newest sitting, if it has not come to its closing page. */
export async function unfinishedSitting(
  { boxes }: Session,
  box: BoxRecord,
  date: LocalDate,
): Promise<SittingRecord | null> {
  const newest = (await boxes.sittingsBetween(box.id, date, date)).at(-1);
  return newest && !newest.finished ? newest : null;
}

async function openSitting(
  context: Context,
  { boxes }: Session,
  box: BoxRecord,
  begin: Pick<BeginEntry, "id" | "date" | "day" | "newCards">,
): Promise<SittingRecord> {
  const entry: BeginEntry = { ...begin, box: box.id, at: context.clock(), kind: "begin" };
  await boxes.appendEntries([entry]);
  const sitting: SittingRecord = { ...begin, finished: false, asked: 0, touched: 0 };
  await boxes.saveSitting(box.id, sitting);
  return sitting;
}

async function sittingView(session: Session, box: BoxRecord, sitting: SittingRecord): Promise<SittingView> {
  const { boxes } = session;
  const events = (await boxes.eventsOfSitting(sitting.id)) as readonly SittingEvent[];
  const due: DueCard[] = [...(await boxes.dueCards(box.id, sitting.day)), ...(await visitedCards(session, events))];
  const fresh = await freshCards(session, box, sitting, events);
  return {
    plan: planSitting({ sitting: sitting.id, day: sitting.day, due, fresh }),
    events,
    finished: sitting.finished,
    compartments: compartmentCount(box.chart),
    lastEntry: (await boxes.lastEntryId(box.id)) ?? sitting.id,
  };
}

/** Cards visited already, laid back into the piles they came from. */
async function visitedCards({ library }: Session, events: readonly SittingEvent[]): Promise<readonly DueCard[]> {
  const visits = events.filter((event): event is OutcomeEntry => event.kind === "outcome" && event.pass === "visit");
  const facts = new Map((await library.cards(visits.map((visit) => visit.card))).map((card) => [card.id, card.fact]));
  return visits.map(({ card, compartment, bundle }) => ({ card, fact: facts.get(card) ?? card, compartment, bundle }));
}

/** The new cards of a sitting: those it has begun with, then more from the stock up to its number. */
async function freshCards(session: Session, box: BoxRecord, sitting: SittingRecord, events: readonly SittingEvent[]) {
  const { boxes, library } = session;
  const begun = new Set(events.filter(isNewCardEvent).map((event) => event.card));
  const mine = (await library.cards([...begun])).map((card) => ({ card: card.id, fact: card.fact }));
  const missing = sitting.newCards - mine.length;
  if (missing <= 0) return mine;
  const earlier = await factsIntroduced(session, box, sitting);
  const busy = new Set([...earlier, ...mine.map((card) => card.fact)]);
  // Enough spare cards that facts already introduced today can be passed over.
  const stock = await boxes.stock(box.id, 4 * sitting.newCards + busy.size + 50);
  return [
    ...mine,
    ...chooseNewCards(
      stock.filter((ref) => !begun.has(ref.card)),
      missing,
      busy,
    ),
  ];
}

const isNewCardEvent = (event: SittingEvent): boolean => event.kind === "look" || event.pass === "introduction";

/** Facts of which a card was introduced in another sitting of the same day. */
async function factsIntroduced(
  { boxes, library }: Session,
  box: BoxRecord,
  sitting: SittingRecord,
): Promise<readonly string[]> {
  const cards: string[] = [];
  for (const other of await boxes.sittingsBetween(box.id, sitting.date, sitting.date)) {
    if (other.id === sitting.id) continue;
    const events = (await boxes.eventsOfSitting(other.id)) as readonly SittingEvent[];
    cards.push(...events.filter(isNewCardEvent).map((event) => event.card));
  }
  return (await library.cards(cards)).map((card) => card.fact);
}

/** What the next practice day will ask, as things stand now. */
export const lookAhead = (context: Context): Promise<AheadView> =>
  context.store.read(async (session) => {
    const box = found(await session.boxes.box(), "box");
    const { date, day } = await today(context, session, box);
    const next = nextPracticeDate(box, date);
    const recall = await recallOf(session, box);
    const { pace } = await paceOf(session, box);
    const piles = await session.boxes.duePiles(box.id, day + 1);
    const reviews = piles.reduce((sum, pile) => sum + pile.count, 0);
    const missed = piles.reduce((sum, pile) => sum + pile.count * (1 - (recall[pile.compartment - 1] ?? 1)), 0);
    const stock = (await session.boxes.stock(box.id, box.newPerDay)).length;
    const newCards = Math.min(box.newPerDay, stock);
    return { date: next, reviews, newCards, minutes: minutesFor(pace, { reviews, missed, newCards }) };
  });

function nextPracticeDate({ calendar }: BoxRecord, date: LocalDate): LocalDate {
  for (let i = 1; i <= 400; i++) {
    const next = addDays(date, i);
    if (!isRestDay(calendar, next)) return next;
  }
  return addDays(date, 1);
}
