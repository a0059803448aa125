// The sound of a card.
import { useState } from "react";
import { soundUrl } from "../client.ts";

/** A player with the browser's own aria-label="Sound" controls; a sound that cannot be had, such as one of a list not saved yet, is said so. */
export function CardSound({ hash }: { readonly hash: string }) {
  const [missing, setMissing] = useState(false);
  if (missing) return <p className="hint">The sound cannot be played here yet.</p>;
  return (
    // biome-ignore lint/a11y/useMediaCaption: the card's words say what is heard, on the side where that may be said
    <audio className="card-sound" controls preload="metadata" src={soundUrl(hash)} onError={() => setMissing(true)} />
  );
}
