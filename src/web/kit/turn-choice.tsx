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

/** A sheet and the edge over which it goes. */
function TurnDrawing({ turn }: { readonly turn: KitDraft["turn"] }) {
  const edge = { long: "M26 5V39", short: "M8 5H26", fold: "M17 5V39" }[turn];
  const arrow = {
    long: "M20 30C24 24 30 24 33 29M33 29V24M33 29H28",
    short: "M17 14C20 6 12 -1 9 2",
    fold: "M12 22H22M22 22L19 19M22 22L19 25",
  }[turn];
  return (
    <svg className="turn-drawing" viewBox="0 0 36 44" aria-hidden="true">
      <path className="turn-sheet" d="M8 5H26V39H8Z" />
      <path className="turn-edge" data-fold={turn === "fold" ? "" : undefined} d={edge} />
      {turn === "short" ? null : <path className="turn-arrow" d={arrow} />}
    </svg>
  );
}
