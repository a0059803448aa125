// Writing the word of a spelling card before it is turned, and how what was written differs from it.
import { type FormEvent, useEffect, useRef } from "react";
import type { SpellingRule } from "../../core/facts/fact.ts";
import { compareSpelling } from "../../core/spelling/compare-spelling.ts";
import { counted } from "../words.ts";

interface TryProps {
  readonly typed: string;
  readonly set: (typed: string) => void;
  readonly turn: () => void;
}

/** Where the word is written; Enter turns the card. */
export function SpellingTry({ typed, set, turn }: TryProps) {
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus({ preventScroll: true }), []);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    turn();
  };
  return (
    <form className="spelling-try" onSubmit={submit}>
      <label className="field">
        <span>Write the word</span>
        <input
          ref={field}
          dir="auto"
          value={typed}
          maxLength={300}
          autoComplete="off"
          autoCapitalize="off"
          autoCorrect="off"
          spellCheck={false}
          onChange={(event) => set(event.target.value)}
        />
      </label>
      <span className="hint">Enter turns the card.</span>
    </form>
  );
}

interface StepsProps {
  readonly typed: string;
  readonly right: string;
  readonly rule: SpellingRule;
}

/** What was written, its differences marked. You say whether it counts. */
export function SpellingSteps({ typed, right, rule }: StepsProps) {
  if (typed.trim() === "") return <p className="hint">Nothing was written.</p>;
  const { steps, distance } = compareSpelling(typed, right, rule);
  return (
    <div className="spelling-try" role="status">
      <p className="spelling-steps" dir="auto">
        {steps.map((step, i) =>
          step.kind === "same" ? (
            <span key={`${i}`}>{step.typed}</span>
          ) : (
            <span key={`${i}`}>
              {step.typed === "" ? null : <del>{step.typed}</del>}
              {step.right === "" ? null : <ins>{step.right}</ins>}
            </span>
          ),
        )}
      </p>
      <p className="hint">
        {distance === 0 ? "You wrote it right." : `${counted(distance, "character")} differ from what you wrote.`}
      </p>
    </div>
  );
}
