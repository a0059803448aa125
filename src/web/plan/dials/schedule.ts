// Changing how many new cards come when, without losing what else was chosen.
import type { LocalDate } from "../../../core/calendar/local-date.ts";
import type { NewCardSchedule } from "../../../core/load/new-cards.ts";
import { counted, yearDate } from "../../words.ts";

const DAYS_A_WEEK = 7;

/** The last date with new cards; null if there is none. */
export const lastDateOf = (schedule: NewCardSchedule): LocalDate | null =>
  schedule.kind === "list" ? null : (schedule.until ?? null);

/** New cards of each weekday, Monday first; of a list, its first number. */
export const eachWeekday = (schedule: NewCardSchedule): readonly number[] =>
  schedule.kind === "weekdays" ? schedule.each : Array.from({ length: DAYS_A_WEEK }, () => eachDay(schedule));

/** New cards of a day: of weekdays that differ, the mean; of a list, its first number. */
export function eachDay(schedule: NewCardSchedule): number {
  if (schedule.kind === "steady") return schedule.each;
  if (schedule.kind === "list") return schedule.each[0] ?? 0;
  return Math.round(schedule.each.reduce((sum, one) => sum + one, 0) / DAYS_A_WEEK);
}

const lasting = (schedule: NewCardSchedule) => {
  const until = lastDateOf(schedule);
  return until === null ? {} : { until };
};

/** The same number every day, up to the same last date. */
export const steadily = (schedule: NewCardSchedule, each: number): NewCardSchedule => ({
  kind: "steady",
  each,
  ...lasting(schedule),
});

/** A number for each weekday, Monday first, up to the same last date. */
export const byWeekday = (schedule: NewCardSchedule, each: readonly number[]): NewCardSchedule => ({
  kind: "weekdays",
  each,
  ...lasting(schedule),
});

/** The same numbers, up to a date; null for no end. */
export function until(schedule: NewCardSchedule, date: LocalDate | null): NewCardSchedule {
  const { kind, each } = schedule.kind === "list" ? steadily(schedule, eachDay(schedule)) : schedule;
  const end = date === null ? {} : { until: date };
  return kind === "steady" ? { kind, each: each as number, ...end } : { kind, each: each as readonly number[], ...end };
}

/** Longest list that is read, and the most new cards a day. */
export const LIST = { days: 366, cards: 1_000 } as const;

/** A list as it is typed, "20, 20, 15"; null if it is none. */
export function typedList(text: string): NewCardSchedule | null {
  const each = text.split(/[\s,;]+/).filter((part) => part !== "");
  const good = each.every((part) => /^\d{1,4}$/.test(part) && Number(part) <= LIST.cards);
  return good && each.length > 0 && each.length <= LIST.days ? { kind: "list", each: each.map(Number) } : null;
}

/** "12 new cards a day until 3 March 2027". */
export function scheduleWords(schedule: NewCardSchedule): string {
  if (schedule.kind === "list") {
    const all = schedule.each.reduce((sum, one) => sum + one, 0);
    return `${counted(all, "new card")} on the next ${counted(schedule.each.length, "practice day")}, day by day`;
  }
  const last = lastDateOf(schedule);
  const pace = counted(eachDay(schedule), "new card");
  const words = schedule.kind === "weekdays" ? `about ${pace} a day, by weekday` : `${pace} a day`;
  return last === null ? words : `${words} until ${yearDate(last)}`;
}
