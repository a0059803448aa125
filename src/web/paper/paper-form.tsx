// The results of one day, checked as they are typed, seen before they are recorded, alone or with the days before it.
import type { BoxView, PaperDayView, PaperOutcome } from "../../app/views.ts";
import { BusyButton } from "../shell/busy-button.tsx";
import { Trouble } from "../shell/states.tsx";
import { capital, counted, longDate, pileName } from "../words.ts";
import { type FilledDay, type PaperOrder, readDay } from "./filled-day.ts";
import { MissedField, NewCardsField } from "./number-fields.tsx";
import { outcomeWords } from "./outcome-words.ts";
import { useRecord } from "./use-record.ts";

interface FormProps {
  readonly view: PaperDayView;
  readonly box: BoxView;
  readonly filled: FilledDay;
  readonly set: (filled: FilledDay) => void;
  /** Days that are ready to be recorded together with this one. */
  readonly before: readonly PaperOrder[];
  /** Goes on to the next day, with the results of this one if there are any; null where there is no next day. */
  readonly onNext: ((order: PaperOrder | null) => void) | null;
  /** Goes back to the day before it; null where there is none. */
  readonly onBack: (() => void) | null;
  readonly onRecorded: () => void;
  /** Another day is on its way: nothing can be recorded now. */
  readonly isLeaving: boolean;
}

/** Piles, missed cards, new cards, and what they come to. */
export function PaperForm({ view, box, filled, set, before, onNext, onBack, onRecorded, isLeaving }: FormProps) {
  const read = readDay(view, filled);
  const days = read.isEmpty ? before : [...before, read.order];
  const { record, preview } = useRecord(days, read.isSound && !isLeaving, onRecorded);
  const { newCards, piles } = view;
  const change = (one: FilledDay): void => {
    // What was refused was something else.
    record.forget();
    set(one);
  };
  return (
    <form
      className="paper-form"
      onSubmit={(event) => {
        event.preventDefault();
        record.send();
      }}
    >
      {piles.length === 0 ? (
        <p>
          {view.recorded.includes(view.date)
            ? `Everything that was due on ${longDate(view.date)} is recorded already.`
            : `Nothing was due on ${longDate(view.date)}.`}
        </p>
      ) : (
        <>
          <PilesField view={view} box={box} filled={filled} set={change} />
          <MissedField filled={filled} read={read} set={change} />
        </>
      )}
      {newCards.length > 0 || filled.others !== "" ? (
        <NewCardsField filled={filled} read={read} set={change} newCards={newCards} />
      ) : null}
      <Outcomes outcomes={preview.outcomes} isNothing={days.length === 0} />
      {preview.error ? <Trouble error={preview.error} /> : null}
      {record.error ? <Trouble error={record.error} /> : null}
      <div className="row">
        <BusyButton type="submit" className="big primary" busy={!preview.ready}>
          {days.length > 1 ? `Record ${counted(days.length, "day")}` : "Record these results"}
        </BusyButton>
        {onNext ? (
          <BusyButton
            busy={isLeaving || (!read.isEmpty && !preview.ready)}
            onClick={() => onNext(read.isEmpty ? null : read.order)}
          >
            And the next day
          </BusyButton>
        ) : null}
        {onBack ? (
          <button type="button" className="quiet" onClick={onBack}>
            Back to the day before
          </button>
        ) : null}
      </div>
    </form>
  );
}

function PilesField({ view, box, filled, set }: Pick<FormProps, "view" | "box" | "filled" | "set">) {
  const flip = (numbers: readonly number[], on: boolean): void => {
    const left = new Set(filled.left);
    for (const one of numbers) on ? left.delete(one) : left.add(one);
    set({ ...filled, left });
  };
  return (
    <fieldset>
      <legend>Piles that were asked</legend>
      {view.piles.map(({ compartment, bundle, numbers }) => (
        <label key={`${compartment} ${bundle}`} className="tick">
          <input
            type="checkbox"
            checked={!numbers.every((one) => filled.left.has(one))}
            onChange={(event) => flip(numbers, event.target.checked)}
          />
          {capital(pileName(compartment, bundle, box.chart.compartments[compartment - 1]?.bundles ?? 1))},{" "}
          {counted(numbers.length, "card")}
        </label>
      ))}
    </fieldset>
  );
}

function Outcomes({
  outcomes,
  isNothing,
}: {
  readonly outcomes: readonly PaperOutcome[];
  readonly isNothing: boolean;
}) {
  const [only, ...more] = outcomes;
  if (more.length === 0)
    return (
      <p role="status" className="paper-outcome">
        {isNothing ? "Nothing is ticked yet." : only ? outcomeWords(only) : ""}
      </p>
    );
  return (
    <div role="status" className="paper-outcome">
      <ul>
        {outcomes.map((outcome) => (
          <li key={outcome.date}>
            {longDate(outcome.date)}: {outcomeWords(outcome)}
          </li>
        ))}
      </ul>
    </div>
  );
}
