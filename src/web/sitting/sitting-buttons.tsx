// The buttons of a sitting and their keys.
import { type KeyboardEvent, useEffect, useRef } from "react";
import type { Answer } from "../../core/log/entry.ts";
import type { Desk } from "./use-desk.ts";
import { useKeys } from "./use-keys.ts";

/** Which side of the card is up. */
export type Side = "prompt" | "answer" | "both";

interface ButtonsProps {
  readonly side: Side;
  /** Whether the card's content has come. */
  readonly ready: boolean;
  readonly turn: () => void;
  readonly answer: (answer: Answer) => void;
  readonly desk: Desk;
  /** The element that says how the answer that was written compares, if one was. */
  readonly verdict: string | undefined;
  /** Whether it was written right: then Recalled is at hand. */
  readonly right: boolean;
}

/** Turn, or Missed and Recalled, or Seen; and Take back. */
export function SittingButtons({ side, ready, turn, answer, desk, verdict, right }: ButtonsProps) {
  const recalledButton = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (right) recalledButton.current?.focus({ preventScroll: true });
  }, [right]);
  const on = ready && side === "prompt" ? turn : ready && side === "both" ? desk.seen : nothing;
  const missed = ready && side === "answer" ? () => answer("missed") : nothing;
  const recalled = ready && side === "answer" ? () => answer("recalled") : nothing;
  useKeys({
    " ": on,
    Enter: on,
    ArrowLeft: missed,
    m: missed,
    ArrowRight: recalled,
    r: recalled,
    Backspace: desk.takeBack,
    u: desk.takeBack,
  });
  return (
    <footer className="sitting-foot">
      <div className="answers">
        {side === "prompt" ? (
          <button type="button" className="big primary" disabled={!ready} onClick={turn} aria-keyshortcuts="Space">
            Turn <Key name="Space" />
          </button>
        ) : null}
        {side === "both" ? (
          <button type="button" className="big primary" disabled={!ready} onClick={desk.seen} aria-keyshortcuts="Space">
            Seen <Key name="Space" />
          </button>
        ) : null}
        {side === "answer" ? (
          <>
            <button
              type="button"
              className="big answer-missed"
              onClick={missed}
              aria-keyshortcuts="ArrowLeft"
              aria-describedby={verdict}
            >
              <Key name="←" /> Missed
            </button>
            <button
              ref={recalledButton}
              type="button"
              className="big answer-recalled"
              onClick={recalled}
              onKeyDown={ignoreRepeats}
              aria-keyshortcuts="ArrowRight"
              aria-describedby={verdict}
            >
              Recalled <Key name="→" />
            </button>
          </>
        ) : null}
      </div>
      <div className="sitting-aside">
        <button
          type="button"
          className="quiet"
          disabled={!desk.canTakeBack}
          onClick={desk.takeBack}
          aria-keyshortcuts="Backspace"
        >
          Take back
        </button>
        <KeyHelp />
      </div>
    </footer>
  );
}

const nothing = (): void => undefined;

/** The Enter that turned the card may still be held down when the button gets the focus. */
const ignoreRepeats = (event: KeyboardEvent): void => {
  if (event.repeat) event.preventDefault();
};

/** A key's name beside what it does; not part of the button's name. */
const Key = ({ name }: { readonly name: string }) => (
  <span className="key-cap" aria-hidden="true">
    {name}
  </span>
);

function KeyHelp() {
  return (
    <details className="key-help">
      <summary>Keys</summary>
      <dl>
        <dt>Space or Enter</dt>
        <dd>Turn, Seen</dd>
        <dt>← or M</dt>
        <dd>Missed</dd>
        <dt>→ or R</dt>
        <dd>Recalled</dd>
        <dt>Backspace or U</dt>
        <dd>Take back</dd>
      </dl>
    </details>
  );
}
