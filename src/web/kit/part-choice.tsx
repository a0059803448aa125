// What is printed beside the cards, and for how many days.
import { KIT_PARTS, type KitPart } from "../../core/kit/kit-pages.ts";
import { Stepper } from "../shell/stepper.tsx";
import type { ChoiceProps } from "./card-choice.tsx";
import { PART_WORDS } from "./kit-words.ts";

const MOST_DAYS = 731;

/** The parts of the kit, in the order in which they are printed. */
export function PartChoice({ draft, change }: ChoiceProps) {
  const { parts, days, turn } = draft;
  const flip = (part: KitPart, on: boolean): void =>
    change({ parts: KIT_PARTS.filter((one) => (one === part ? on : parts.includes(one))) });
  return (
    <fieldset>
      <legend>What to print</legend>
      {KIT_PARTS.map((part) =>
        // Nothing has to be brought behind anything else where one side is printed.
        part === "calibration" && turn === "fold" ? null : (
          <label key={part} className="choice">
            <input
              type="checkbox"
              checked={parts.includes(part)}
              onChange={(event) => flip(part, event.target.checked)}
            />
            <span>
              {PART_WORDS[part].name} <span className="hint">{PART_WORDS[part].about}</span>
            </span>
          </label>
        ),
      )}
      {parts.includes("calendar") || parts.includes("pocket") ? (
        <Stepper
          label="Days in the calendar"
          value={days}
          min={1}
          max={MOST_DAYS}
          onChange={(next) => change({ days: next })}
        />
      ) : null}
    </fieldset>
  );
}
