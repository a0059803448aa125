// From which angles a fact is asked.
import { possibleAngles } from "../../core/cards/cards.ts";
import type { Angle, Fact } from "../../core/facts/fact.ts";
import { gapTexts } from "../../core/facts/gaps.ts";
import { angleName } from "../words.ts";
import { type FactDraft, previewFact } from "./fact-draft.ts";
import type { FieldsProps } from "./fact-fields.tsx";

/** One box to tick for each angle that the wording allows. */
export function AngleChoice({ draft, before, change }: FieldsProps & { readonly before: Fact | null }) {
  const angles = possibleAngles(previewFact(draft, before));
  if (angles.length === 0) return null;
  const gaps = draft.kind === "statement" ? gapTexts(draft.statement) : [];
  const toggle = (angle: Angle): void =>
    change({ off: draft.off.includes(angle) ? draft.off.filter((one) => one !== angle) : [...draft.off, angle] });
  return (
    <fieldset>
      <legend>Ask it</legend>
      <div className="chips">
        {angles.map((angle, i) => (
          <label key={angle} className="chip">
            <input type="checkbox" checked={!draft.off.includes(angle)} onChange={() => toggle(angle)} />
            <span dir="auto">{label(angle, gaps[i], draft)}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

const label = (angle: Angle, gap: string | undefined, draft: FactDraft): string =>
  draft.kind === "statement" && gap ? `${angleName(angle)}: ${gap}` : angleName(angle);
