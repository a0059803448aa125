// A number that is drawn along a line, or typed and stepped.
import { useState } from "react";
import { Stepper } from "../../shell/stepper.tsx";

interface DialProps {
  readonly label: string;
  readonly value: number;
  readonly min?: number;
  /** The end of the line. */
  readonly max: number;
  /** The largest number that can be typed, if the line ends sooner. */
  readonly most?: number;
  /** The number with its unit, for those who hear it. */
  readonly words: (value: number) => string;
  readonly onChange: (value: number) => void;
}

/** A slider with a stepper beside it; the line grows for a number beyond its end, and stays so. */
export function Dial({ label, value, min = 0, max, most = max, words, onChange }: DialProps) {
  const [end, setEnd] = useState(max);
  if (value > end) setEnd(value);
  return (
    <div className="dial">
      <Stepper label={label} value={value} min={min} max={most} onChange={onChange} />
      <input
        className="slider"
        type="range"
        aria-label={label}
        aria-valuetext={words(value)}
        min={min}
        max={Math.max(end, value)}
        value={value}
        onChange={(event) => onChange(Number(event.target.value))}
      />
    </div>
  );
}
