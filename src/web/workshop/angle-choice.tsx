// From which angles a fact is asked.
import { possibleAngles } from "../../core/cards/cards.ts";
import { type AngleFamily, angleFamily } from "../../core/cards/default-angles.ts";
import type { Angle, Fact } from "../../core/facts/fact.ts";
import { gapTexts } from "../../core/facts/gaps.ts";
import { groupBy } from "../../core/lists.ts";
import { angleName } from "../words.ts";
import { type FactDraft, previewFact, switchAngles } from "./fact-draft.ts";
import type { FieldsProps } from "./fields-props.ts";

/** One box to tick for each angle that the wording allows; the items of a list are asked all in one way or none. */
export function AngleChoice({ draft, before, change }: FieldsProps & { readonly before: Fact | null }) {
  const fact = previewFact(draft, before);
  const angles = possibleAngles(fact);
  if (angles.length === 0) return null;
  const chosen = new Set(fact.angles);
  const groups =
    draft.kind === "list"
      ? [...groupBy(angles, angleFamily).values()]
      : angles.map((angle): readonly Angle[] => [angle]);
  const toggle = (group: readonly Angle[], on: boolean): void => {
    const { on: switchedOn, off } = switchAngles(draft, before, group, on);
    change({ on: switchedOn, off });
  };
  return (
    <fieldset>
      <legend>Ask it</legend>
      <div className="chips">
        {groups.map((group, i) => {
          const [first] = group;
          if (!first) return null;
          const on = group.every((angle) => chosen.has(angle));
          return (
            <label key={first} className="chip">
              <input type="checkbox" checked={on} onChange={() => toggle(group, !on)} />
              <span dir="auto">{label(first, i, draft)}</span>
            </label>
          );
        })}
      </div>
    </fieldset>
  );
}

const LIST_WAYS: Partial<Record<AngleFamily, string>> = {
  next: "From each item to the next",
  previous: "From each item to the one before",
  position: "What stands at each place",
};

function label(angle: Angle, i: number, draft: FactDraft): string {
  if (draft.kind === "list") return LIST_WAYS[angleFamily(angle)] ?? angleName(angle);
  const text =
    draft.kind === "statement" ? gapTexts(draft.statement)[i] : draft.kind === "labelled" ? draft.labels[i]?.name : "";
  return text ? `${angleName(angle)}: ${text}` : angleName(angle);
}
