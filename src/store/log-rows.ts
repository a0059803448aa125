// Log entries to rows and back. What is searched by has columns; settings travel as JSON.
import type { Insertable, Selectable } from "kysely";
import type { LogEntry } from "../core/log/entry.ts";
import type { Tables } from "./schema.ts";

type LogRow = Selectable<Tables["log"]>;

const EMPTY = {
  card_id: null,
  sitting_id: null,
  day: null,
  pass: null,
  answer: null,
  compartment: null,
  bundle: null,
  seconds: null,
  target_id: null,
  data: null,
} as const;

/** The row that keeps an entry. */
export function entryToRow(entry: LogEntry, learner: string): Insertable<Tables["log"]> {
  const row = { ...EMPTY, id: entry.id, box_id: entry.box, learner_id: learner, at: entry.at, kind: entry.kind };
  switch (entry.kind) {
    case "set-up": {
      const { chart, calendar, newPerDay, seed } = entry;
      return { ...row, data: JSON.stringify({ chart, calendar, newPerDay, seed }) };
    }
    case "settings":
      return { ...row, data: JSON.stringify({ calendar: entry.calendar, newPerDay: entry.newPerDay }) };
    case "chart":
      return { ...row, day: entry.day, data: JSON.stringify({ chart: entry.chart }) };
    case "begin":
      return {
        ...row,
        day: entry.day,
        data: JSON.stringify({ date: entry.date, newCards: entry.newCards, fresh: entry.fresh }),
      };
    case "finish":
      return { ...row, sitting_id: entry.sitting };
    case "look":
      return { ...row, card_id: entry.card, day: entry.day, sitting_id: entry.sitting };
    case "outcome": {
      const { card, day, sitting, pass, answer, compartment, bundle, seconds } = entry;
      return { ...row, card_id: card, day, sitting_id: sitting, pass, answer, compartment, bundle, seconds };
    }
    case "move":
      return { ...row, card_id: entry.card, day: entry.day, data: JSON.stringify({ to: entry.to }) };
    case "withdraw":
      return { ...row, card_id: entry.card, day: entry.day, data: JSON.stringify({ reason: entry.reason }) };
    case "bring-back":
      return { ...row, card_id: entry.card, day: entry.day };
    case "take-back":
      return { ...row, target_id: entry.entry };
  }
}

/** The entry that a row keeps. */
export function entryFromRow(row: LogRow): LogEntry {
  const base = { id: row.id, box: row.box_id, at: Number(row.at), kind: row.kind };
  const data: object = row.data === null ? {} : JSON.parse(row.data);
  const own = {
    ...(row.card_id === null ? {} : { card: row.card_id }),
    ...(row.day === null ? {} : { day: row.day }),
    ...(row.sitting_id === null ? {} : { sitting: row.sitting_id }),
    ...(row.target_id === null ? {} : { entry: row.target_id }),
  };
  const outcome =
    row.kind === "outcome"
      ? { pass: row.pass, answer: row.answer, compartment: row.compartment, bundle: row.bundle, seconds: row.seconds }
      : {};
  return { ...base, ...own, ...outcome, ...data } as LogEntry;
}
