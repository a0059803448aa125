// A size that is chosen by name, or typed as width and height.
import { useId } from "react";
import { sizeText, type TypedSize, typedSize } from "./kit-draft.ts";

interface SizeFieldProps {
  readonly label: string;
  readonly value: string;
  readonly named: Readonly<Record<string, string>>;
  /** A size of one's own, to begin with. */
  readonly first: string;
  readonly problem: string | undefined;
  readonly change: (value: string) => void;
}

/** The value is a name, or a size such as 85x55mm. */
export function SizeField({ label, value, named, first, problem, change }: SizeFieldProps) {
  const id = useId();
  const own = !Object.hasOwn(named, value);
  const typed = typedSize(value);
  const type = (part: Partial<TypedSize>): void => change(sizeText({ ...typed, ...part }));
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={own ? "own" : value}
        onChange={({ target }) => change(target.value === "own" ? first : target.value)}
      >
        {Object.entries(named).map(([name, words]) => (
          <option key={name} value={name}>
            {words}
          </option>
        ))}
        <option value="own">Another size</option>
      </select>
      {own ? (
        <div className="own-size">
          <Side
            label={`${label}: width`}
            value={typed.width}
            problem={problem}
            set={(width) => type({ width })}
            about={id}
          />
          <span aria-hidden="true">×</span>
          <Side
            label={`${label}: height`}
            value={typed.height}
            problem={problem}
            set={(height) => type({ height })}
            about={id}
          />
          <select
            aria-label={`${label}: unit`}
            value={typed.unit}
            onChange={({ target }) => type({ unit: target.value === "in" ? "in" : "mm" })}
          >
            <option value="mm">millimetres</option>
            <option value="in">inches</option>
          </select>
        </div>
      ) : null}
      {problem ? (
        <span id={`${id}-problem`} className="field-problem" role="alert">
          {problem}
        </span>
      ) : null}
    </div>
  );
}

function Side(props: {
  readonly label: string;
  readonly value: string;
  readonly problem: string | undefined;
  readonly about: string;
  readonly set: (value: string) => void;
}) {
  const { label, value, problem, about, set } = props;
  return (
    <input
      aria-label={label}
      inputMode="decimal"
      value={value}
      maxLength={8}
      aria-invalid={problem !== undefined}
      aria-describedby={problem ? `${about}-problem` : undefined}
      onChange={({ target }) => set(target.value)}
    />
  );
}
