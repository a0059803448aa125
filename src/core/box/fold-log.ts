// Placement as a pure fold of the log: cards go through their entries, and through the changes of chart between them.
import type { CardId } from "../cards/cards.ts";
import { groupBy } from "../lists.ts";
import { type CardLogEntry, inLogOrder, isCardEntry, type LogEntry, takenBackBy } from "../log/entry.ts";
import type { EntryId } from "../log/entry-id.ts";
import { type ChartTimeline, chartAfter, chartTimeline } from "./chart-timeline.ts";
import { type Applied, applyEntry, type CardState, FRESH_CARD } from "./placement.ts";
import { rechartPlace } from "./rechart.ts";

/** What decides which chart an entry goes by: a sitting keeps to the end the chart that was in force when it was begun. */
export const reckonedFrom = (entry: CardLogEntry): EntryId => ("sitting" in entry ? entry.sitting : entry.id);

/**
 * A card's state after all its entries, in whatever order they are given, and after every change of chart, or those
 * before `until` only; what is `takenBack` no longer counts.
 */
export function foldCard(
  charts: ChartTimeline,
  entries: Iterable<CardLogEntry>,
  takenBack: ReadonlySet<EntryId>,
  until?: EntryId,
): CardState {
  return moveOn(charts, walk(charts, entries, takenBack), until).state;
}

/** What an entry comes to for a card that has the `earlier` entries behind it. */
export function judgeEntry(
  charts: ChartTimeline,
  earlier: Iterable<CardLogEntry>,
  takenBack: ReadonlySet<EntryId>,
  entry: CardLogEntry,
): Applied {
  const { state, changes } = moveOn(charts, walk(charts, earlier, takenBack), reckonedFrom(entry));
  return applyEntry(chartAfter(charts, changes), state, entry);
}

/** Those of a card's entries that stand and yet move nothing, because of what came before them. */
export function passedOver(
  charts: ChartTimeline,
  entries: Iterable<CardLogEntry>,
  takenBack: ReadonlySet<EntryId>,
): ReadonlySet<EntryId> {
  const over = new Set<EntryId>();
  walk(charts, entries, takenBack, (id) => over.add(id));
  return over;
}

/** Every card's state from the whole log of a box; cards without entries are in the stock and not listed. */
export function foldLog(entries: Iterable<LogEntry>): ReadonlyMap<CardId, CardState> {
  const all = [...entries];
  const takenBack = takenBackBy(all);
  const charts = chartTimeline(all, takenBack);
  const byCard = groupBy(all.filter(isCardEntry), (entry) => entry.card);
  return new Map([...byCard].map(([card, own]) => [card, foldCard(charts, own, takenBack)]));
}

/** A card on its way through the log: its state, and how many changes of chart it has gone through. */
interface Walked {
  readonly state: CardState;
  readonly changes: number;
}

function walk(
  charts: ChartTimeline,
  entries: Iterable<CardLogEntry>,
  takenBack: ReadonlySet<EntryId>,
  passOver: (id: EntryId) => void = () => {},
): Walked {
  let walked: Walked = { state: FRESH_CARD, changes: 0 };
  for (const entry of inLogOrder(entries)) {
    if (takenBack.has(entry.id)) continue;
    const { state, changes } = moveOn(charts, walked, reckonedFrom(entry));
    const applied = applyEntry(chartAfter(charts, changes), state, entry);
    // An entry that does not count must not carry the card over a change of chart either.
    if (applied.ignored === null) walked = { state: applied.state, changes };
    else {
      passOver(entry.id);
      walked = { ...walked, state: { ...walked.state, lastEntry: entry.id } };
    }
  }
  return walked;
}

/** The card after the changes of chart that are still ahead of it, all of them or those before `until`. */
function moveOn(charts: ChartTimeline, { state, changes }: Walked, until?: EntryId): Walked {
  const change = charts.changes[changes];
  if (!change || (until !== undefined && change.id > until)) return { state, changes };
  const place = rechartPlace(chartAfter(charts, changes), change.chart, change.day, state.place);
  return moveOn(charts, { state: { ...state, place }, changes: changes + 1 }, until);
}
