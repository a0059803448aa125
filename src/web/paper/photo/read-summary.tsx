// What a photographed sheet says, before anything is recorded.
import { printedNumber } from "../../../core/cards/card-number.ts";
import type { SheetReading } from "../../../core/paper/sheet-reading.ts";
import { ArrivingHeading } from "../../shell/arriving-heading.tsx";
import { counted, longDate } from "../../words.ts";

interface ReadSummaryProps {
  readonly reading: SheetReading;
  readonly accept: () => void;
  readonly discard: () => void;
}

/** The results of the sheet, to be taken or thrown away. */
export function ReadSummary({ reading: { date, asked, missed }, accept, discard }: ReadSummaryProps) {
  return (
    <section className="sheet-summary" aria-labelledby="sheet-summary">
      <ArrivingHeading id="sheet-summary">Sheet of {longDate(date)}</ArrivingHeading>
      <p>
        {counted(asked.length, "card", "cards")} asked, {asked.length - missed.length} recalled, {missed.length} missed
        {missed.length > 0 ? ":" : "."}
      </p>
      {missed.length > 0 ? (
        <ul className="missed-numbers" aria-label="Missed cards">
          {missed.map((number) => (
            <li key={number}>{printedNumber(number)}</li>
          ))}
        </ul>
      ) : null}
      <p className="hint">Nothing is recorded yet.</p>
      <div className="row">
        <button type="button" className="primary" onClick={accept}>
          Take these results
        </button>
        <button type="button" onClick={discard}>
          Throw them away
        </button>
      </div>
    </section>
  );
}
