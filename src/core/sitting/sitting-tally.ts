// What a box remembers of each sitting, worked out from the log.
import type { LocalDate } from "../calendar/local-date.ts";
import type { BoxDay } from "../chart/chart.ts";
import { inLogOrder, type LogEntry } from "../log/entry.ts";
import type { EntryId } from "../log/entry-id.ts";

/** A sitting and its counts; entries that were taken back do not count. */
export interface SittingTally {
  readonly id: EntryId;
  readonly date: LocalDate;
  readonly day: BoxDay;
  readonly newCards: number;
  /** Its newest entry is the finish: a take-back afterwards opens it again. */
  readonly finished: boolean;
  /** Visits asked. */
  readonly asked: number;
  /** Looks and introductions. */
  readonly touched: number;
}

/** The effect of one more entry of a sitting; `taken` if the entry is being taken back instead. */
export function tallyEntry(tally: SittingTally, entry: LogEntry, taken: boolean): SittingTally {
  const by = taken ? -1 : 1;
  if (entry.kind === "finish") return { ...tally, finished: !taken };
  if (entry.kind === "look") return { ...tally, finished: false, touched: tally.touched + by };
  if (entry.kind !== "outcome") return tally;
  if (entry.pass === "visit") return { ...tally, finished: false, asked: tally.asked + by };
  if (entry.pass === "introduction") return { ...tally, finished: false, touched: tally.touched + by };
  return { ...tally, finished: false };
}

/** Every sitting in the log, oldest first, whatever the order of the entries. */
export function tallySittings(entries: Iterable<LogEntry>): readonly SittingTally[] {
  const ordered = inLogOrder(entries);
  const byId = new Map(ordered.map((entry) => [entry.id, entry]));
  const gone = new Set(ordered.flatMap((entry) => (entry.kind === "take-back" ? [entry.entry] : [])));
  const tallies = new Map<EntryId, SittingTally>();
  for (const entry of ordered) {
    if (entry.kind === "begin") {
      const { id, date, day, newCards } = entry;
      tallies.set(id, { id, date, day, newCards, finished: false, asked: 0, touched: 0 });
    }
    const event = entry.kind === "take-back" ? byId.get(entry.entry) : entry;
    const tally = event && "sitting" in event ? tallies.get(event.sitting) : undefined;
    if (!tally || !event) continue;
    const counts = entry.kind !== "take-back" && !gone.has(entry.id);
    tallies.set(tally.id, counts ? tallyEntry(tally, event, false) : { ...tally, finished: false });
  }
  return [...tallies.values()];
}
