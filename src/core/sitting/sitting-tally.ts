// What a box remembers of each sitting, worked out from the log.
import type { LocalDate } from "../calendar/local-date.ts";
import type { CardId } from "../cards/cards.ts";
import type { BoxDay } from "../chart/chart.ts";
import { inLogOrder, type LogEntry, takenBackBy } from "../log/entry.ts";
import type { EntryId } from "../log/entry-id.ts";

/** A sitting and its counts; entries that were taken back do not count, nor does a second visit of a card. */
export interface SittingTally {
  readonly id: EntryId;
  readonly date: LocalDate;
  readonly day: BoxDay;
  readonly newCards: number;
  readonly fresh: readonly CardId[];
  /** Its newest entry is the finish: a take-back afterwards opens it again. */
  readonly finished: boolean;
  /** Visits asked. */
  readonly asked: number;
  /** Looks and introductions. */
  readonly touched: number;
}

/** The sitting after one more entry of it, which is its newest and stands. */
export function tallyEntry(tally: SittingTally, entry: LogEntry): SittingTally {
  if (entry.kind === "finish") return { ...tally, finished: true };
  if (entry.kind === "look" || (entry.kind === "outcome" && entry.pass === "introduction")) {
    return { ...tally, finished: false, touched: tally.touched + 1 };
  }
  if (entry.kind !== "outcome") return tally;
  return { ...tally, finished: false, asked: tally.asked + (entry.pass === "visit" ? 1 : 0) };
}

/** Every sitting in the log, oldest first, whatever the order of the entries. */
export function tallySittings(entries: Iterable<LogEntry>): readonly SittingTally[] {
  const ordered = inLogOrder(entries);
  const byId = new Map(ordered.map((entry) => [entry.id, entry]));
  const gone = takenBackBy(ordered);
  const visited = new Set<string>();
  const tallies = new Map<EntryId, SittingTally>();
  for (const entry of ordered) {
    if (entry.kind === "begin") {
      const { id, date, day, newCards, fresh } = entry;
      tallies.set(id, { id, date, day, newCards, fresh, finished: false, asked: 0, touched: 0 });
    }
    const event = entry.kind === "take-back" ? byId.get(entry.entry) : entry;
    const tally = event && "sitting" in event ? tallies.get(event.sitting) : undefined;
    if (!tally || !event) continue;
    const counts = entry.kind !== "take-back" && !gone.has(entry.id) && !seenBefore(visited, entry);
    tallies.set(tally.id, counts ? tallyEntry(tally, event) : { ...tally, finished: false });
  }
  return [...tallies.values()];
}

/** Whether the card of a visit was visited in this sitting before; two windows can do that. */
function seenBefore(visited: Set<string>, entry: LogEntry): boolean {
  if (entry.kind !== "outcome" || entry.pass !== "visit") return false;
  const key = `${entry.sitting}/${entry.card}`;
  const before = visited.has(key);
  visited.add(key);
  return before;
}
