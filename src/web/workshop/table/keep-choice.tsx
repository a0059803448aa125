// Which of several facts stays.
import { useId } from "react";
import type { Fact } from "../../../core/facts/fact.ts";
import { factTitle } from "../../../core/facts/fact-title.ts";

interface KeepChoiceProps {
  readonly facts: readonly Fact[];
  readonly into: string;
  readonly set: (fact: string) => void;
}

/** The facts with their answers, one of them chosen. */
export function KeepChoice({ facts, into, set }: KeepChoiceProps) {
  const name = useId();
  return (
    <fieldset className="keep-choice">
      <legend>The fact that stays, with its cards and their history</legend>
      {facts.map((fact) => (
        <label key={fact.id} className="tick">
          <input type="radio" name={name} checked={fact.id === into} onChange={() => set(fact.id)} />
          <span dir="auto">
            {factTitle(fact)}
            {fact.kind === "pair" ? ` – ${fact.answer}` : ""}
          </span>
        </label>
      ))}
    </fieldset>
  );
}
