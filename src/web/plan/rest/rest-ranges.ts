// Rest days as few ranges of dates: in order, apart from one another, neighbours joined.
import type { DateRange } from "../../../core/calendar/calendar.ts";
import { addDays, type LocalDate } from "../../../core/calendar/local-date.ts";

/** The same dates in as few ranges as they fit in. */
export function mergedRanges(ranges: readonly DateRange[]): readonly DateRange[] {
  const sorted = [...ranges].sort((a, b) => (a.from < b.from ? -1 : 1));
  const merged: DateRange[] = [];
  for (const { from, to } of sorted) {
    const last = merged.at(-1);
    if (last && from <= addDays(last.to, 1)) merged[merged.length - 1] = { from: last.from, to: later(last.to, to) };
    else merged.push({ from, to });
  }
  return merged;
}

/** With these dates too. */
export const withRest = (ranges: readonly DateRange[], added: DateRange): readonly DateRange[] =>
  mergedRanges([...ranges, added]);

/** Without these dates; a range that reaches beyond them is cut. */
export function withoutRest(ranges: readonly DateRange[], taken: DateRange): readonly DateRange[] {
  const left = ranges.flatMap(({ from, to }): DateRange[] => {
    if (to < taken.from || from > taken.to) return [{ from, to }];
    const before = from < taken.from ? [{ from, to: addDays(taken.from, -1) }] : [];
    const after = to > taken.to ? [{ from: addDays(taken.to, 1), to }] : [];
    return [...before, ...after];
  });
  return mergedRanges(left);
}

/** Whether a date lies in one of the ranges. */
export const inRanges = (ranges: readonly DateRange[], date: LocalDate): boolean =>
  ranges.some(({ from, to }) => from <= date && date <= to);

/** The range between two dates, whichever comes first. */
export const between = (one: LocalDate, other: LocalDate): DateRange =>
  one <= other ? { from: one, to: other } : { from: other, to: one };

const later = (one: LocalDate, other: LocalDate): LocalDate => (one > other ? one : other);
