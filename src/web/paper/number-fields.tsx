// Fields for card numbers as they are typed from paper.
import { useId } from "react";
import { printedNumber } from "../../core/cards/card-number.ts";
import { mended, type NumberProblem } from "../../core/paper/missed-numbers.ts";
import { capital, counted } from "../words.ts";
import type { FilledDay, ReadDay } from "./filled-day.ts";

interface FieldProps {
  readonly filled: FilledDay;
  readonly read: ReadDay;
  readonly set: (filled: FilledDay) => void;
}

/** The numbers of the missed cards. */
export function MissedField({ filled, read: { missed }, set }: FieldProps) {
  return (
    <NumberField
      label="All recalled except"
      text={filled.missed}
      set={(text) => set({ ...filled, missed: text })}
      problems={missed.problems}
      hint={
        missed.numbers.length === 0
          ? "The numbers of the missed cards, with anything between them. Leave it empty if all were recalled."
          : `${counted(missed.numbers.length, "card")} missed, and taken to have been asked again until recalled.`
      }
    />
  );
}

/** New cards to tick, and others by number. */
export function NewCardsField({ filled, read, set, newCards }: FieldProps & { readonly newCards: readonly number[] }) {
  const { ticked, others } = filled;
  const flip = (one: number): void => {
    const next = new Set(ticked);
    if (!next.delete(one)) next.add(one);
    set({ ...filled, ticked: next });
  };
  return (
    <fieldset>
      <legend>New cards that came into the box</legend>
      <div className="chips">
        {newCards.map((one) => (
          <label key={one} className="chip">
            <input type="checkbox" checked={ticked.has(one)} onChange={() => flip(one)} />
            <span>{printedNumber(one)}</span>
          </label>
        ))}
      </div>
      <button type="button" className="quiet" onClick={() => set({ ...filled, ticked: new Set(newCards) })}>
        All of them
      </button>
      <details open={others !== ""}>
        <summary>Other new cards</summary>
        <NumberField
          label="Their numbers"
          text={others}
          set={(text) => set({ ...filled, others: text })}
          problems={read.others.problems}
          hint="Where the sheet was printed before cards were added, it can name others than these."
        />
      </details>
    </fieldset>
  );
}

interface NumberFieldProps {
  readonly label: string;
  readonly hint: string;
  readonly text: string;
  readonly set: (text: string) => void;
  readonly problems: readonly (Omit<NumberProblem, "near"> & Partial<NumberProblem>)[];
}

function NumberField({ label, hint, text, set, problems }: NumberFieldProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <textarea
        id={id}
        rows={2}
        inputMode="text"
        className="typed-numbers"
        value={text}
        aria-invalid={problems.length > 0}
        aria-describedby={`${id}-help`}
        onChange={(event) => set(event.target.value)}
      />
      <span id={`${id}-help`} className="hint" role="status">
        {hint}
      </span>
      {problems.length > 0 ? (
        <ul className="field-problem" role="alert">
          {problems.map(({ typed, at, reason, near = [] }) => (
            <li key={at}>
              {capital(reason)}
              {near.map((one) => (
                <button key={one} type="button" className="quiet" onClick={() => set(mended(text, { typed, at }, one))}>
                  {printedNumber(one)} instead
                </button>
              ))}
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}
