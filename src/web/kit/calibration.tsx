// Bringing backs exactly behind their fronts: print a page, look through it, type what is seen.
import { useId, useState } from "react";
import type { ChoiceProps } from "./card-choice.tsx";
import { MOST_SHIFT } from "./kit-draft.ts";

/** The offset of the printer, in steps; kept with the choices on this device. */
export function Calibration({ draft, change, print }: ChoiceProps & { readonly print: () => void }) {
  const { right, down, turn } = draft;
  if (turn === "fold") return null;
  return (
    <details className="opened">
      <summary>
        Backs do not lie behind their fronts?
        {right !== 0 || down !== 0 ? <span className="hint">&nbsp;corrected</span> : null}
      </summary>
      <ol className="steps">
        <li>
          <p>Print the calibration page on both sides, at “actual size”.</p>
          <button type="button" onClick={print}>
            Make the calibration page
          </button>
        </li>
        <li>Hold it against the light, the back towards you. Front and back have five crosses each.</li>
        <li>
          <p>Type how far the crosses of the back lie from those of the front, in millimetres.</p>
          <div className="field-row">
            {/* A back that lies to the left has to go to the right. */}
            <SideField
              label="Sideways"
              before="to the left"
              after="to the right"
              value={-right}
              change={(seen) => change({ right: 0 - seen })}
            />
            <SideField
              label="Up or down"
              before="above"
              after="below"
              value={-down}
              change={(seen) => change({ down: 0 - seen })}
            />
          </div>
        </li>
        <li>
          Make the page again. Now the crosses lie on each other; if something is left, add it to what you typed. This
          device remembers it.
        </li>
      </ol>
    </details>
  );
}

interface SideFieldProps {
  readonly label: string;
  /** Where the back lies if the value is below 0, and above it. */
  readonly before: string;
  readonly after: string;
  readonly value: number;
  readonly change: (value: number) => void;
}

function SideField({ label, before, after, value, change }: SideFieldProps) {
  const id = useId();
  const [typed, setTyped] = useState(() => String(Math.abs(value)));
  const [way, setWay] = useState(value < 0 ? -1 : 1);
  const amount = Number(typed.trim().replace(",", "."));
  const bad = !(amount >= 0 && amount <= MOST_SHIFT);
  const tell = (text: string, sign: number): void => {
    const number = Number(text.trim().replace(",", "."));
    if (number >= 0 && number <= MOST_SHIFT) change(sign * number + 0);
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <div className="own-size">
        <input
          id={id}
          inputMode="decimal"
          value={typed}
          maxLength={6}
          aria-invalid={bad}
          aria-describedby={bad ? `${id}-problem` : undefined}
          onChange={({ target }) => {
            setTyped(target.value);
            tell(target.value, way);
          }}
        />
        <select
          aria-label={`${label}: where the back lies`}
          value={way}
          onChange={({ target }) => {
            setWay(Number(target.value));
            tell(typed, Number(target.value));
          }}
        >
          <option value={-1}>{before}</option>
          <option value={1}>{after}</option>
        </select>
      </div>
      {bad ? (
        <span id={`${id}-problem`} className="field-problem" role="alert">
          A number of millimetres from 0 to {MOST_SHIFT}.
        </span>
      ) : null}
    </div>
  );
}
