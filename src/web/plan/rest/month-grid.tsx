// One month of the calendar: a button for each day ahead, and for each weekday.
import { type KeyboardEvent, type MouseEvent, memo } from "react";
import type { DateRange } from "../../../core/calendar/calendar.ts";
import { isoWeekday, type LocalDate } from "../../../core/calendar/local-date.ts";
import { vars } from "../../vars.ts";
import { count, counted, longDate, WEEKDAYS } from "../../words.ts";
import { longMonth } from "../year/month-names.ts";
import type { CalendarMonth } from "./month-days.ts";
import { inRanges } from "./rest-ranges.ts";

/** Expected cards by date. */
export type CardsByDate = ReadonlyMap<LocalDate, number>;

interface MonthGridProps {
  readonly month: CalendarMonth;
  /** The first date that is still ahead. */
  readonly from: LocalDate;
  readonly restWeekdays: readonly number[];
  readonly restDates: readonly DateRange[];
  readonly cards: CardsByDate;
  readonly most: number;
  /** The day that Tab leads to. */
  readonly stop: LocalDate | null;
  readonly onDay: (date: LocalDate, ranged: boolean) => void;
  readonly onWeekday: (weekday: number) => void;
  readonly onKey: (event: KeyboardEvent<HTMLElement>) => void;
}

/** The grid of a month; Tab leads to one of its days, arrows to the others and to the weekdays above. */
export const MonthGrid = memo(function MonthGrid(props: MonthGridProps) {
  const { month, from, restWeekdays, restDates, cards, most, stop, onDay, onWeekday, onKey } = props;
  const name = longMonth(month.month);
  return (
    // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: the grid of the ARIA practices is made of a table
    <table role="grid" className="month" aria-label={name} onKeyDown={onKey}>
      <caption>{name}</caption>
      <thead>
        <tr>
          {WEEKDAYS.map((weekday, i) => (
            <th key={weekday} scope="col">
              <button
                type="button"
                className="weekday"
                tabIndex={-1}
                data-weekday={i + 1}
                aria-label={`Rest on every ${weekday}`}
                aria-pressed={restWeekdays.includes(i + 1)}
                onClick={() => onWeekday(i + 1)}
              >
                {weekday.slice(0, 2)}
              </button>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {weeksAhead(month, from).map((week) => (
          <tr key={week.find((date) => date !== null)}>
            {week.map((date, i) =>
              date === null || date < from ? (
                <td key={date ?? WEEKDAYS[i]} className="gone">
                  {date === null ? null : Number(date.slice(8))}
                </td>
              ) : (
                <td key={date}>
                  <DayButton
                    date={date}
                    rest={
                      restWeekdays.includes(isoWeekday(date)) ? "weekly" : inRanges(restDates, date) ? "once" : null
                    }
                    cards={cards.get(date) ?? null}
                    most={most}
                    stop={date === stop}
                    onDay={onDay}
                  />
                </td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
});

/** Weeks of which a day is still ahead. */
const weeksAhead = ({ weeks }: CalendarMonth, from: LocalDate): CalendarMonth["weeks"] =>
  weeks.filter((week) => week.some((date) => date !== null && date >= from));

interface DayButtonProps {
  readonly date: LocalDate;
  /** Whether nobody practises on it: never on that weekday, or not on this date. */
  readonly rest: "weekly" | "once" | null;
  readonly cards: number | null;
  readonly most: number;
  readonly stop: boolean;
  readonly onDay: (date: LocalDate, ranged: boolean) => void;
}

const DayButton = memo(function DayButton({ date, rest, cards, most, stop, onDay }: DayButtonProps) {
  const load = rest === null && cards !== null ? cards : null;
  const label = `Rest on ${longDate(date)}${load === null ? "" : `, about ${counted(load, "card")}`}`;
  return (
    <button
      type="button"
      className="day"
      tabIndex={stop ? 0 : -1}
      data-date={date}
      data-rest={rest ?? undefined}
      aria-label={label}
      aria-pressed={rest !== null}
      aria-disabled={rest === "weekly" ? true : undefined}
      style={vars({ "--share": load === null || most === 0 ? 0 : load / most })}
      onClick={(event: MouseEvent) => onDay(date, event.shiftKey)}
    >
      <span>{Number(date.slice(8))}</span>
      <small>{rest === null ? (load === null ? "" : count(load)) : "rest"}</small>
    </button>
  );
});
