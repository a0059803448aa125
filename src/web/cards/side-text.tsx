// The words of a card side, with blanks drawn as blanks, answers marked in place and formulae set.
import type { CardSide, CardText } from "../../core/cards/cards.ts";
import { Formula } from "./formula.tsx";

/** One side's words; text in any script finds its own direction. Parts never move, so their place names them. */
export const SideText = ({ side }: { readonly side: CardSide }) => (
  <>
    {side.text.map((part, i) => (
      <Part key={`${i}`} part={part} alone={side.text.length === 1} />
    ))}
  </>
);

function Part({ part, alone }: { readonly part: CardText; readonly alone: boolean }) {
  switch (part.role) {
    case "blank":
      return (
        <span className="blank">
          <span className="visually-hidden">blank</span>
        </span>
      );
    case "answer":
      return <mark>{part.text}</mark>;
    case "formula": {
      const formula = <Formula tex={part.text} alone={alone} />;
      return part.asked ? <mark>{formula}</mark> : formula;
    }
    case "plain":
      return <span>{part.text}</span>;
  }
}

/** How large a text may be set on a card of fixed size. */
export function textSize(side: CardSide): "short" | "medium" | "long" {
  const length = side.text.reduce((sum, part) => sum + (part.text.length || 8), 0);
  if (length > 150) return "long";
  return length > 48 ? "medium" : "short";
}
