// Has the browser speak a side of a card, in the language of the fact.
import type { CardSide } from "../../core/cards/cards.ts";
import { sideText } from "../../core/cards/cards.ts";
import { textLanguage } from "../../core/critique/languages.ts";

interface SpeakProps {
  readonly side: CardSide;
  /** The fact's own language; empty to find it out. */
  readonly language: string;
  readonly label: string;
}

/** Nothing where the browser cannot speak, or there is nothing to say. */
export function SpeakButton({ side, language, label }: SpeakProps) {
  const text = sideText(side).replace(/_{3,}/gu, " … ").trim();
  if (text === "" || !("speechSynthesis" in globalThis)) return null;
  const speak = (): void => {
    const spoken = new SpeechSynthesisUtterance(text);
    const tag = textLanguage(text, language);
    if (tag !== "") {
      spoken.lang = tag;
      const voice = speechSynthesis.getVoices().find((one) => one.lang.toLowerCase().startsWith(tag.toLowerCase()));
      if (voice) spoken.voice = voice;
    }
    speechSynthesis.cancel();
    speechSynthesis.speak(spoken);
  };
  return (
    <button type="button" className="quiet" onClick={speak}>
      {label}
    </button>
  );
}
