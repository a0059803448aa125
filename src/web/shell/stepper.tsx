// A number that is stepped up and down, or typed.
import { useId, useState } from "react";

interface StepperProps {
  readonly label: string;
  readonly value: number;
  readonly max: number;
  readonly min?: number;
  readonly onChange: (value: number) => void;
}

/** A whole number between `min` and `max` with a button on either side. */
export function Stepper({ label, value, max, min = 0, onChange }: StepperProps) {
  const id = useId();
  // What is being typed may be empty or too large for a while.
  const [typed, setTyped] = useState<string | null>(null);
  const set = (next: number): void => {
    if (Number.isFinite(next)) onChange(Math.min(max, Math.max(min, Math.round(next))));
  };
  const type = (text: string): void => {
    setTyped(text);
    if (text.trim() !== "") set(Number(text));
  };
  const step = (by: number): void => {
    setTyped(null);
    set(value + by);
  };
  return (
    <div className="stepper">
      <label htmlFor={id}>{label}</label>
      <div className="stepper-row">
        <button
          type="button"
          aria-label={`Fewer: ${label}`}
          aria-disabled={value <= min ? true : undefined}
          onClick={() => step(-1)}
        >
          −
        </button>
        <input
          id={id}
          type="number"
          inputMode="numeric"
          min={min}
          max={max}
          value={typed ?? value}
          onChange={(event) => type(event.target.value)}
          onBlur={() => setTyped(null)}
        />
        <button
          type="button"
          aria-label={`More: ${label}`}
          aria-disabled={value >= max ? true : undefined}
          onClick={() => step(1)}
        >
          +
        </button>
      </div>
    </div>
  );
}
