// The sound of a card.
import { soundUrl } from "../client.ts";

/** A player with the browser's own controls. */
export const CardSound = ({ hash }: { readonly hash: string }) => (
  // biome-ignore lint/a11y/useMediaCaption: the card's words say what is heard, on the side where that may be said
  <audio className="card-sound" controls preload="metadata" src={soundUrl(hash)} />
);
