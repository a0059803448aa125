// Dates and ranges of dates without practice.
import type { DateRange } from "../../core/calendar/calendar.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { yearDate } from "../words.ts";

/** A holiday that is being typed; empty texts where nothing is typed yet. */
export const NO_HOLIDAY: DateRange = { from: "", to: "" };

/** The typed holiday as it would be added; null while it is not complete. */
export function typedHoliday({ from, to }: DateRange): DateRange | null {
  const end = to || from;
  return from !== "" && from <= end ? { from, to: end } : null;
}

/** What is wrong with the typed holiday, in words; null if nothing is. */
export function holidayProblem({ from, to }: DateRange): string | null {
  if (from === "" && to !== "") return "Say on which day the holiday begins.";
  return from !== "" && to !== "" && to < from ? "The holiday ends before it begins." : null;
}

/** The holidays with one more, in order; the same one is not added twice. */
export const withHoliday = (ranges: readonly DateRange[], added: DateRange): DateRange[] =>
  [...ranges.filter(({ from, to }) => from !== added.from || to !== added.to), added].sort((a, b) =>
    a.from < b.from ? -1 : 1,
  );

/** A list of holidays to add to and take from. */
export function Holidays(props: {
  readonly ranges: readonly DateRange[];
  readonly onChange: (ranges: readonly DateRange[]) => void;
  readonly typed: DateRange;
  readonly onType: (typed: DateRange) => void;
}) {
  const { ranges, onChange, typed, onType } = props;
  const whole = typedHoliday(typed);
  const problem = holidayProblem(typed);
  const add = (): void => {
    if (!whole) return;
    onChange(withHoliday(ranges, whole));
    onType(NO_HOLIDAY);
  };
  return (
    <fieldset>
      <legend>Holidays</legend>
      {ranges.length > 0 ? (
        <ul className="holidays">
          {ranges.map((range, i) => (
            <li key={`${range.from} ${range.to}`}>
              <span>{rangeWords(range)}</span>
              <button
                type="button"
                className="quiet"
                aria-label={`Remove ${rangeWords(range)}`}
                onClick={() => onChange(ranges.filter((_, at) => at !== i))}
              >
                Remove
              </button>
            </li>
          ))}
        </ul>
      ) : null}
      <div className="field-row">
        <label className="field">
          <span>From</span>
          <input type="date" value={typed.from} onChange={(event) => onType({ ...typed, from: event.target.value })} />
        </label>
        <label className="field">
          <span>To (the same day if left out)</span>
          <input
            type="date"
            value={typed.to}
            aria-invalid={problem !== null}
            onChange={(event) => onType({ ...typed, to: event.target.value })}
          />
        </label>
        <BusyButton busy={whole === null} onClick={add}>
          Add holiday
        </BusyButton>
      </div>
      <p className="field-problem" role="status">
        {problem}
      </p>
    </fieldset>
  );
}

const rangeWords = ({ from, to }: DateRange): string =>
  from === to ? yearDate(from) : `${yearDate(from)} to ${yearDate(to)}`;
