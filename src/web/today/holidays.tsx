// Dates and ranges of dates without practice.
import { useState } from "react";
import type { DateRange } from "../../core/calendar/calendar.ts";
import { yearDate } from "../words.ts";

/** A list of holidays to add to and take from. */
export function Holidays(props: {
  readonly ranges: readonly DateRange[];
  readonly onChange: (ranges: readonly DateRange[]) => void;
}) {
  const { ranges, onChange } = props;
  const [from, setFrom] = useState("");
  const [to, setTo] = useState("");
  const end = to || from;
  const ready = from !== "" && from <= end;
  const add = (): void => {
    onChange([...ranges, { from, to: end }].sort((a, b) => (a.from < b.from ? -1 : 1)));
    setFrom("");
    setTo("");
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
          <input type="date" value={from} onChange={(event) => setFrom(event.target.value)} />
        </label>
        <label className="field">
          <span>To (the same day if left out)</span>
          <input type="date" value={to} min={from} onChange={(event) => setTo(event.target.value)} />
        </label>
        <button type="button" disabled={!ready} onClick={add}>
          Add holiday
        </button>
      </div>
    </fieldset>
  );
}

const rangeWords = ({ from, to }: DateRange): string =>
  from === to ? yearDate(from) : `${yearDate(from)} to ${yearDate(to)}`;
