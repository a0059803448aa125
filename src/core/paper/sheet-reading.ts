// What a sitting on paper says, once it was read and accepted.
import type { LocalDate } from "../calendar/local-date.ts";

/** The results of a printed sheet, by card number. */
export interface SheetReading {
  /** Tells the sheet from every other. */
  readonly sheet: string;
  readonly date: LocalDate;
  /** Box day. */
  readonly day: number;
  /** Missed at the first asking; all of them were asked. */
  readonly missed: readonly number[];
  /** Asked at all, missed or recalled. */
  readonly asked: readonly number[];
}
