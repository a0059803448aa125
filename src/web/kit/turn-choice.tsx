// How the back gets behind the front, explained for somebody who has never printed on both sides.
import type { ChoiceProps } from "./card-choice.tsx";
import type { KitDraft } from "./kit-draft.ts";

const TURNS: Readonly<Record<KitDraft["turn"], { readonly name: string; readonly about: string }>> = {
  long: {
    name: "Over the long edge",
    about: "The printer turns the sheet like a page of a book. Most printers do this; take it if in doubt.",
  },
  short: {
    name: "Over the short edge",
    about: "The printer turns the sheet like a page of a wall calendar.",
  },
  fold: {
    name: "One side only: I fold",
    about: "For printers that print one side. Front and back lie beside each other; fold along the dashes and glue.",
  },
};

/** Which edge the printer turns sheets over, or none. */
export function TurnChoice({ draft, change }: ChoiceProps) {
  return (
    <fieldset>
      <legend>How your printer turns the sheet</legend>
      {Object.entries(TURNS).map(([turn, { name, about }]) => (
        <label key={turn} className="choice">
          <input
            type="radio"
            name="turn"
            checked={draft.turn === turn}
            onChange={() => change({ turn: turn as KitDraft["turn"] })}
          />
          <TurnDrawing turn={turn as KitDraft["turn"]} />
          <span>
            {name} <span className="hint">{about}</span>
          </span>
        </label>
      ))}
    </fieldset>
  );
}

/** A sheet, and how it lifts over an edge or along a fold. */
function TurnDrawing({ turn }: { readonly turn: KitDraft["turn"] }) {
  const { lying, lifted, edge } = DRAWINGS[turn];
  return (
    <svg className="turn-drawing" viewBox="0 0 40 44" aria-hidden="true">
      <path className="turn-sheet" d={lying} />
      <path className="turn-lifted" d={lifted} />
      <path className="turn-edge" data-fold={turn === "fold" ? "" : undefined} d={edge} />
    </svg>
  );
}

const DRAWINGS = {
  long: { lying: "M3 9H19V41H3Z", lifted: "M19 9L35 3V35L19 41Z", edge: "M19 9V41" },
  short: { lying: "M7 24H29V42H7Z", lifted: "M7 24L12 5H34L29 24Z", edge: "M7 24H29" },
  fold: { lying: "M3 12H19V38H3Z", lifted: "M19 12L36 7V33L19 38Z", edge: "M19 12V38" },
} as const;
