// A number that is stepped up and down, or typed.
import { useId } from "react";

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
  const set = (next: number): void => {
    if (Number.isFinite(next)) onChange(Math.min(max, Math.max(min, Math.round(next))));
  };
  return (
    <div className="stepper">
      <label htmlFor={id}>{label}</label>
      <div className="stepper-row">
        <button type="button" aria-label={`Fewer: ${label}`} disabled={value <= min} onClick={() => set(value - 1)}>
          −
        </button>
        <input
          id={id}
          type="number"
          inputMode="numeric"
          min={min}
          max={max}
          value={value}
          onChange={(event) => set(event.target.valueAsNumber)}
        />
        <button type="button" aria-label={`More: ${label}`} disabled={value >= max} onClick={() => set(value + 1)}>
          +
        </button>
      </div>
    </div>
  );
}
