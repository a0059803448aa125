// Paper and card size, the mark on the cards, and the language for hyphenation.
import type { ChoiceProps } from "./card-choice.tsx";
import type { DraftProblems, KitDraft } from "./kit-draft.ts";
import { SizeField } from "./size-field.tsx";

const PAPERS = {
  a4: "A4",
  letter: "US Letter",
  card: "The cards' own size (blank cards in the printer)",
} as const;

const CARDS = {
  a7: "A7, 105 × 74 mm",
  a6: "A6, 148 × 105 mm",
  "3x5in": "Index card, 3 × 5 inches",
  "85x55mm": "Visiting card, 85 × 55 mm",
} as const;

const MARKS: Readonly<Record<KitDraft["mark"], string>> = {
  number: "A number",
  code: "A square code for a camera",
  both: "Number and code",
  none: "Neither",
};

/** Languages whose words can be divided at the end of a line. */
const LANGUAGES = ["en", "de", "es", "fr", "it", "nl", "pl", "pt", "sv", "tr"] as const;

/** Millimetres past the cut. Common practice. */
const USUAL_BLEED = 3;

const languageNames = new Intl.DisplayNames("en-GB", { type: "language" });

/** Sizes and marks. */
export function PaperChoice({ draft, change, problems }: ChoiceProps & { readonly problems: DraftProblems }) {
  return (
    <fieldset className="kit-fields">
      <legend>Paper and cards</legend>
      <SizeField
        label="Paper"
        value={draft.paper}
        named={PAPERS}
        first="200x250mm"
        problem={problems.paper}
        change={(paper) => change({ paper })}
      />
      <SizeField
        label="Card"
        value={draft.card}
        named={CARDS}
        first="90x60mm"
        problem={problems.card}
        change={(card) => change({ card })}
      />
      <label className="field">
        <span>On each card</span>
        <select value={draft.mark} onChange={({ target }) => change({ mark: target.value as KitDraft["mark"] })}>
          {Object.entries(MARKS).map(([mark, words]) => (
            <option key={mark} value={mark}>
              {words}
            </option>
          ))}
        </select>
        <span className="hint">
          {draft.mark === "none" || draft.mark === "code"
            ? "Without a number, missed and lost cards cannot be typed in from paper."
            : "By its number a card that was missed or lost is typed in; the last digit catches slips."}
        </span>
      </label>
      <label className="field">
        <span>Language of the words</span>
        <select value={draft.language} onChange={({ target }) => change({ language: target.value })}>
          {[...new Set([...LANGUAGES, draft.language])].map((code) => (
            <option key={code} value={code}>
              {languageNames.of(code)}
            </option>
          ))}
        </select>
        <span className="hint">Long words at the end of a line are divided by the rules of this language.</span>
      </label>
      <label className="choice">
        <input
          type="checkbox"
          checked={draft.bleed > 0}
          onChange={({ target }) => change({ bleed: target.checked ? USUAL_BLEED : 0 })}
        />
        <span>
          Pictures to the edge of the card{" "}
          <span className="hint">
            A side that is nothing but a picture is printed {USUAL_BLEED} mm past the cut. Cards lie apart, so fewer fit
            on a sheet.
          </span>
        </span>
      </label>
    </fieldset>
  );
}
