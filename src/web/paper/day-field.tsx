// Which day results are entered for.
import type { PaperDayView } from "../../app/views.ts";
import type { LocalDate } from "../../core/calendar/local-date.ts";
import { longDate } from "../words.ts";

interface DayFieldProps {
  readonly view: PaperDayView;
  /** The last of the days that are entered together with this one. */
  readonly after: LocalDate | null;
  readonly set: (date: LocalDate) => void;
}

/** The days that can be entered, the latest first. */
export function DayField({ view: { date: chosen, dates, recorded }, after, set }: DayFieldProps) {
  const open = dates.filter((date) => after === null || date > after);
  return (
    <label className="field">
      <span>Which day</span>
      <select value={chosen} onChange={(event) => set(event.target.value)}>
        {open.toReversed().map((date) => (
          <option key={date} value={date}>
            {longDate(date)}
            {recorded.includes(date) ? " · has answers already" : ""}
          </option>
        ))}
      </select>
      {recorded.some((date) => date > chosen) ? (
        <span className="hint">
          Later days have answers already. What you enter here is placed as if it had been entered on its own day.
        </span>
      ) : null}
    </label>
  );
}
