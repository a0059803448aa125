// Sitting down: beginning or resuming today's sitting, and looking ahead from its closing page.

import { type ChartTimeline, chartOfSitting } from "../core/box/chart-timeline.ts";
import { foldCard } from "../core/box/fold-log.ts";
import { type DayMark, isRestDay } from "../core/calendar/calendar.ts";
import { addDays, type LocalDate } from "../core/calendar/local-date.ts";
import { compartmentCount } from "../core/chart/chart.ts";
import { groupBy } from "../core/lists.ts";
import { minutesFor } from "../core/load/minutes.ts";
import type { BeginEntry, OutcomeEntry } from "../core/log/entry.ts";
import type { EntryId } from "../core/log/entry-id.ts";
import { chooseNewCards, type DueCard, planSitting } from "../core/sitting/plan.ts";
import type { SittingEvent } from "../core/sitting/sitting.ts";
import { chartsOf } from "./charts.ts";
import { today } from "./days.ts";
import { FailureError, found } from "./failure.ts";
import { paceOf, recallOf } from "./measures.ts";
import { momentOfWriting } from "./moment-of-writing.ts";
import type { BoxRecord, Context, Session, SittingRecord } from "./ports.ts";
import { isTooFarAhead } from "./record.ts";
import type { AheadView, SittingView } from "./views.ts";

/**
 * Begins a sitting under the given identity, or resumes: the one of that identity if it exists, else
 * today's unfinished one. Fails with `invalid-input` if the identity lies in the future.
 */
export const beginSitting = (context: Context, id: EntryId, newCards: number): Promise<SittingView> =>
  context.store.write(async (session) => {
    const box = found(await session.boxes.box(), "box");
    const { date, day } = await today(context, session, box);
    const known = (await session.boxes.sitting(id)) ?? (await unfinishedSitting(session, box, { date, day }));
    if (!known && isTooFarAhead(context, await session.boxes.lastEntryId(box.id), id)) {
      throw new FailureError(
        "invalid-input",
        "The clock of this device is more than a day ahead. Set it right and try again.",
      );
    }
    const sitting = known ?? (await openSitting(context, session, box, { id, date, day, newCards }));
    return sittingView(session, box, sitting);
  });

/** Today's newest sitting that can go on. One in which nothing happened goes stale with a new day or a new chart. */
export async function unfinishedSitting(
  { boxes }: Session,
  box: BoxRecord,
  { date, day }: DayMark,
): Promise<SittingRecord | null> {
  const newest = (await boxes.sittingsBetween(box.id, date, date)).at(-1);
  if (!newest || newest.finished) return null;
  if (newest.asked + newest.touched > 0) return newest;
  return newest.day === day && !(await boxes.chartChangedSince(box.id, newest.id)) ? newest : null;
}

async function openSitting(
  context: Context,
  session: Session,
  box: BoxRecord,
  begin: Pick<BeginEntry, "id" | "date" | "day" | "newCards">,
): Promise<SittingRecord> {
  const busy = await factsIntroduced(session, box, begin.date);
  // Enough spare cards that facts already introduced today can be passed over.
  const stock = await session.boxes.stock(box.id, 4 * begin.newCards + busy.size + 50);
  const fresh = chooseNewCards(stock, begin.newCards, busy).map((ref) => ref.card);
  const at = await momentOfWriting(session, box, context.clock());
  const entry: BeginEntry = { ...begin, fresh, box: box.id, at, kind: "begin" };
  await session.boxes.appendEntries([entry]);
  const sitting: SittingRecord = { ...begin, fresh, finished: false, asked: 0, touched: 0 };
  await session.boxes.saveSitting(box.id, sitting);
  return sitting;
}

async function sittingView(session: Session, box: BoxRecord, sitting: SittingRecord): Promise<SittingView> {
  const { boxes } = session;
  const events = (await boxes.eventsOfSitting(sitting.id)) as readonly SittingEvent[];
  const outdated = await boxes.chartChangedSince(box.id, sitting.id);
  const charts = outdated ? await chartsOf(session, box) : null;
  const due: DueCard[] = [
    ...(charts ? await dueByPastChart(session, box, sitting, charts) : await boxes.dueCards(box.id, sitting.day)),
    ...(await visitedCards(session, box, events)),
  ];
  const fresh = await freshCards(session, box, sitting, events);
  return {
    plan: planSitting({ sitting: sitting.id, day: sitting.day, due, fresh }),
    events,
    finished: sitting.finished,
    compartments: compartmentCount(charts ? chartOfSitting(charts, sitting.id) : box.chart),
    lastEntry: (await boxes.lastEntryId(box.id)) ?? sitting.id,
  };
}

/**
 * What a sitting begun before a change of chart has still to visit: by the chart it goes by, cards whose visit was taken
 * back. Others that were due have been moved, and the next sitting asks them.
 */
async function dueByPastChart(
  { boxes }: Session,
  box: BoxRecord,
  { id, day }: SittingRecord,
  charts: ChartTimeline,
): Promise<readonly DueCard[]> {
  const visits = (await boxes.entriesOfSitting(id)).filter((entry) => entry.kind === "outcome");
  const cards = [...new Set(visits.map((entry) => entry.card))];
  const { entries, takenBack } = await boxes.entriesOfCards(box.id, cards);
  const own = groupBy(entries, (entry) => entry.card);
  return (await boxes.placements(box.id, cards)).flatMap(({ card, fact }) => {
    const { place } = foldCard(charts, own.get(card) ?? [], takenBack, id);
    if (place.kind !== "compartment" || place.due > day) return [];
    return [{ card, fact, compartment: place.compartment, bundle: place.bundle }];
  });
}

/** Cards visited already, laid back into the piles they came from. */
async function visitedCards(
  { boxes }: Session,
  box: BoxRecord,
  events: readonly SittingEvent[],
): Promise<readonly DueCard[]> {
  const visits = events.filter((event): event is OutcomeEntry => event.kind === "outcome" && event.pass === "visit");
  // Of two visits of a card, made in two windows, the first stands.
  const byCard = new Map(visits.toReversed().map((visit) => [visit.card, visit]));
  return (await boxes.placements(box.id, [...byCard.keys()])).map(({ card, fact, state }) => {
    const { compartment, bundle } = byCard.get(card) as OutcomeEntry;
    return { card, fact, compartment, bundle, ...(state.place.kind === "withdrawn" ? { out: true } : {}) };
  });
}

/** The new cards of a sitting: those chosen when it began, less what has left the stock in another way since. */
async function freshCards(
  { boxes }: Session,
  box: BoxRecord,
  { fresh }: SittingRecord,
  events: readonly SittingEvent[],
) {
  const introduced = new Set(events.filter(isIntroduced).map((event) => event.card));
  const placements = await boxes.placements(box.id, fresh);
  return placements
    .filter(({ card, state }) => state.place.kind === "stock" || introduced.has(card))
    .map(({ card, fact }) => ({ card, fact }));
}

const isIntroduced = (event: SittingEvent): boolean =>
  event.kind === "outcome" && event.pass === "introduction" && event.answer === "recalled";

/** Facts of which a card was introduced or looked at on a date. */
async function factsIntroduced({ boxes }: Session, box: BoxRecord, date: LocalDate): Promise<ReadonlySet<string>> {
  const cards: string[] = [];
  for (const { id } of await boxes.sittingsBetween(box.id, date, date)) {
    const events = (await boxes.eventsOfSitting(id)) as readonly SittingEvent[];
    cards.push(
      ...events.filter((event) => event.kind === "look" || event.pass === "introduction").map((event) => event.card),
    );
  }
  return new Set((await boxes.placements(box.id, cards)).map((placement) => placement.fact));
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
