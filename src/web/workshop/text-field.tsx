// A text of a fact, in any script.
import { useId } from "react";

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly set: (value: string) => void;
  readonly hint?: string;
  readonly rows?: number;
}

/** A field that grows by lines; its hint is read out with it. */
export function TextField({ label, value, set, hint, rows = 1 }: TextFieldProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <textarea
        id={id}
        dir="auto"
        rows={rows}
        value={value}
        aria-describedby={hint ? `${id}-hint` : undefined}
        onChange={(event) => set(event.target.value)}
      />
      {hint ? (
        <span id={`${id}-hint`} className="hint">
          {hint}
        </span>
      ) : null}
    </div>
  );
}
