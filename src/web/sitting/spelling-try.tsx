// Writing the word of a spelling card before it is turned, and how what was written differs from it.
import { type FormEvent, useEffect, useRef } from "react";
import { type Card, sideText } from "../../core/cards/cards.ts";
import { textLanguage } from "../../core/critique/languages.ts";
import { compareSpelling, type SpellingComparison } from "../../core/spelling/compare-spelling.ts";
import { counted } from "../words.ts";

/** The element that says whether a word was written right. */
export const VERDICT_ID = "spelling-verdict";

interface TryProps {
  readonly card: Card;
  readonly typed: string;
  readonly set: (typed: string) => void;
  readonly turn: () => void;
}

/** Where the word is written; Enter turns the card. */
export function SpellingTry({ card, typed, set, turn }: TryProps) {
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus({ preventScroll: true }), []);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    turn();
  };
  const lang = textLanguage(sideText(card.answer), card.language);
  return (
    <form className="spelling-try" onSubmit={submit}>
      <label className="field">
        <span>Write the word</span>
        <input
          ref={field}
          dir="auto"
          {...(lang === "" ? {} : { lang })}
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

/** How what was written compares with the word of a spelling card; null if it is none, or nothing was written. */
export function spellingVerdict(card: Card | undefined, typed: string): SpellingComparison | null {
  if (!card?.spelling || typed.trim() === "") return null;
  return compareSpelling(typed, sideText(card.answer), card.spelling);
}

/** What was written, its differences marked. You say whether it counts. */
export function SpellingSteps({ verdict }: { readonly verdict: SpellingComparison | null }) {
  if (!verdict) return <p className="hint">Nothing was written.</p>;
  const { steps, distance } = verdict;
  return (
    <div className="spelling-try">
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
      <p className="hint" id={VERDICT_ID}>
        {distance === 0
          ? "You wrote it right."
          : `${counted(distance, "character")} ${distance === 1 ? "differs" : "differ"} from what you wrote.`}
      </p>
    </div>
  );
}
