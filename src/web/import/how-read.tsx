// How the list was read, for the rare case that it was read wrongly.
import type { ImportPreview } from "../../app/views.ts";
import type { Choices } from "../client.ts";
import { DELIMITERS, ENCODINGS } from "./column-names.ts";

interface HowReadProps {
  readonly preview: ImportPreview;
  readonly change: (part: Choices) => void;
}

/** Header, delimiter and encoding, each as found and each to be changed. */
export function HowRead({ preview, change }: HowReadProps) {
  return (
    <details className="how-read">
      <summary>
        How it was read: {DELIMITERS.find(([value]) => value === preview.delimiter)?.[1]} between columns,{" "}
        {preview.header ? "first row names them" : "no heading row"}
      </summary>
      <div className="field-row">
        <label className="chip">
          <input
            type="checkbox"
            checked={preview.header}
            onChange={(event) => change({ header: event.target.checked })}
          />
          The first row names the columns
        </label>
        <Choice
          label="Between columns"
          value={preview.delimiter}
          options={DELIMITERS}
          set={(delimiter) => change({ delimiter })}
        />
        <Choice
          label="Letters written as"
          value={preview.encoding}
          options={ENCODINGS}
          set={(encoding) => change({ encoding })}
        />
      </div>
    </details>
  );
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly (readonly [T, string])[];
  readonly set: (value: T) => void;
}

function Choice<T extends string>({ label, value, options, set }: ChoiceProps<T>) {
  const choose = (text: string): void => {
    const chosen = options.find(([option]) => option === text);
    if (chosen) set(chosen[0]);
  };
  return (
    <label className="field">
      <span>{label}</span>
      <select value={value} onChange={(event) => choose(event.target.value)}>
        {options.map(([option, name]) => (
          <option key={option} value={option}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
