// Keys of the sitting. They rest while somebody types or a button has the focus.
import { useEffect, useLayoutEffect, useRef } from "react";

/** What each key does; names as in KeyboardEvent.key, letters in lower case. */
export type KeyMap = Readonly<Record<string, () => void>>;

/** Listens for keys anywhere in the window. */
export function useKeys(keys: KeyMap): void {
  const current = useRef(keys);
  // In the same step as the page: a key pressed at once belongs to what is shown now.
  useLayoutEffect(() => {
    current.current = keys;
  });
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.repeat || event.ctrlKey || event.metaKey || event.altKey || typing(event)) return;
      const act = current.current[event.key.length === 1 ? event.key.toLowerCase() : event.key];
      if (!act) return;
      event.preventDefault();
      act();
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, []);
}

function typing(event: KeyboardEvent): boolean {
  const at = event.target instanceof Element ? event.target : null;
  if (at?.closest("input, textarea, select, dialog")) return true;
  // Space and Enter already press the button or open the link that has the focus.
  return (event.key === " " || event.key === "Enter") && at?.closest("button, a, summary") != null;
}
