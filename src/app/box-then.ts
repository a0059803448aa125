// A box on a date: as it is now or, where the log has gone on since, as it was then.
import { chartOfSitting } from "../core/box/chart-timeline.ts";
import { boxDayOn, passIdleDays } from "../core/calendar/calendar.ts";
import { addDays, type LocalDate, lastInstantOf } from "../core/calendar/local-date.ts";
import type { BoxDay } from "../core/chart/chart.ts";
import type { SettingsEntry, SetUpEntry } from "../core/log/entry.ts";
import { createEntryId, type EntryId, entryTime } from "../core/log/entry-id.ts";
import { chartsOf } from "./charts.ts";
import { firstWork, localToday } from "./days.ts";
import { FailureError, found } from "./failure.ts";
import { type Places, placesBefore } from "./places-before.ts";
import type { BoxRecord, Context, Session, SittingRecord } from "./ports.ts";

/** A box on one date, for a sitting that is written into the log at that date's place. */
export interface BoxThen {
  /** With the chart and the settings of then. */
  readonly box: BoxRecord;
  readonly places: Places;
  readonly day: BoxDay;
  /** The identity with which the sitting begins: behind all that was recorded until that date, before all of later dates. */
  readonly begin: EntryId;
  /** Makes identities that follow on `begin`, each behind the one before. */
  readonly nextId: () => EntryId;
}

const DAY_MS = 86_400_000;

/** The latest possible date. */
const LAST_DATE: LocalDate = "9999-12-31";

/** The first date that can have a sitting: that of the set-up, or today where the calendar has been set back behind it. */
export async function firstDate(context: Context, session: Session, box: BoxRecord): Promise<LocalDate> {
  const { date } = (await setUpOf(session, box)).calendar.anchor;
  const [first = date] = [date, localToday(context, box)].sort();
  return first;
}

/**
 * The box on a date. Fails with `invalid-input` for a date that is still to come or before the box was set up. Cost: for
 * a date behind which the log has gone on, the entries of all cards that were touched since.
 */
export async function boxOn(context: Context, session: Session, box: BoxRecord, date: LocalDate): Promise<BoxThen> {
  const today = localToday(context, box);
  if (date > today) throw new FailureError("invalid-input", `${date} is still to come.`);
  if (date < (await firstDate(context, session, box)))
    throw new FailureError("invalid-input", `There was no box on ${date} yet.`);
  const last = await session.boxes.lastSitting(box.id, date);
  const later = await firstSittingAfter(session, box, date, last);
  const ids = await idsFor(context, session, box, { date, isToday: date === today && !later, last, later });
  const past = ids.begin < ((await session.boxes.lastEntryId(box.id)) ?? "");
  const then = past ? await settingsBefore(session, box, ids.begin) : box;
  const places = past ? await placesBefore(session, box, ids.begin) : session.boxes;
  const day = await dayThen(then, places, date, last);
  // Days only move forward: where the chart waited, the later sitting has taken this day's number.
  return { box: then, places, day: later ? Math.min(day, later.day) : day, ...ids };
}

async function dayThen(box: BoxRecord, places: Places, date: LocalDate, last: SittingRecord | null): Promise<BoxDay> {
  if (!last) return boxDayOn(box.calendar, date, null);
  const mark = { date: last.date, day: last.day };
  return boxDayOn(box.calendar, date, passIdleDays(box.calendar, date, mark, await firstWork(places, box)));
}

/**
 * Of the sittings of later dates in which anything happened, the one that the log has first behind `last`. Dates run back
 * where somebody travels west, and a sitting of a later date can come first in the log.
 */
async function firstSittingAfter(
  session: Session,
  box: BoxRecord,
  date: LocalDate,
  last: SittingRecord | null,
): Promise<SittingRecord | null> {
  const later = await session.boxes.sittingsBetween(box.id, addDays(date, 1), LAST_DATE);
  return later.find(({ id, asked, touched }) => asked + touched > 0 && id > (last?.id ?? "")) ?? null;
}

interface Around {
  readonly date: LocalDate;
  readonly isToday: boolean;
  readonly last: SittingRecord | null;
  readonly later: SittingRecord | null;
}

/** Identities for a sitting of a date: those of its last instant, as far as the sittings around it leave room. */
async function idsFor(
  { clock, random }: Context,
  session: Session,
  box: BoxRecord,
  { date, isToday, last, later }: Around,
): Promise<Pick<BoxThen, "begin" | "nextId">> {
  const { timeZone, rollOverHour } = box.calendar;
  const end = later?.id ?? null;
  const latest = Math.min(clock(), end === null ? Number.POSITIVE_INFINITY : entryTime(end) - 1);
  let previous = isToday ? await session.boxes.lastEntryId(box.id) : await lastEntryOf(session, box, last, end);
  const reached = previous === null ? 0 : entryTime(previous);
  const wanted = Math.min(latest, lastInstantOf(date, timeZone, rollOverHour));
  // Behind a sitting that was finished days late, room is left to the days that may still come before this one.
  const isFollowing = wanted >= reached || last?.date === date;
  const time = isFollowing ? wanted : Math.min(reached + DAY_MS, Math.floor((reached + latest) / 2));
  const nextId = (): EntryId => {
    previous = createEntryId(time, random(10), previous ?? undefined);
    if (end !== null && previous >= end)
      throw new FailureError("conflict", `There is no room before the answers of ${later?.date} in the log.`);
    return previous;
  };
  return { begin: nextId(), nextId };
}

/** The newest entry of a sitting that stands before `end`; without a sitting, the box's set-up. */
async function lastEntryOf(
  session: Session,
  box: BoxRecord,
  sitting: SittingRecord | null,
  end: EntryId | null,
): Promise<EntryId> {
  if (!sitting) return (await setUpOf(session, box)).id;
  const entries = await session.boxes.entriesOfSitting(sitting.id);
  const before = entries.filter(({ kind, id }) => kind !== "take-back" && (end === null || id < end));
  return before.at(-1)?.id ?? sitting.id;
}

const isSetUp = (entry: { readonly kind: string }): entry is SetUpEntry => entry.kind === "set-up";
const isSettings = (entry: { readonly kind: string }): entry is SettingsEntry => entry.kind === "settings";

const setUpOf = async ({ boxes }: Session, box: BoxRecord): Promise<SetUpEntry> =>
  found((await boxes.entriesOfKind(box.id, ["set-up"])).find(isSetUp), "set-up of the box");

async function settingsBefore(session: Session, box: BoxRecord, moment: EntryId): Promise<BoxRecord> {
  const changes = (await session.boxes.entriesOfKind(box.id, ["settings"])).filter(isSettings);
  const { calendar, newPerDay } = changes.findLast(({ id }) => id < moment) ?? (await setUpOf(session, box));
  return { ...box, calendar, newPerDay, chart: chartOfSitting(await chartsOf(session, box), moment) };
}
