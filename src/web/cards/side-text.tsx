// The words of a card side, with blanks drawn as blanks and answers marked in place.
import type { CardSide } from "../../core/cards/cards.ts";

/** One side's words; text in any script finds its own direction. */
export function SideText({ side }: { readonly side: CardSide }) {
  return (
    <>
      {side.text.map((part, i) => {
        // Parts never move within a side, so their place names them.
        const key = `${i}`;
        if (part.role === "blank") {
          return (
            <span key={key} className="blank">
              <span className="visually-hidden">blank</span>
            </span>
          );
        }
        return part.role === "answer" ? <mark key={key}>{part.text}</mark> : <span key={key}>{part.text}</span>;
      })}
    </>
  );
}

/** How large a text may be set on a card of fixed size. */
export function textSize(side: CardSide): "short" | "medium" | "long" {
  const length = side.text.reduce((sum, part) => sum + (part.text.length || 8), 0);
  if (length > 150) return "long";
  return length > 48 ? "medium" : "short";
}
