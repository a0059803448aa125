// Keeps what is half written in this window, so that going back and forth or reloading does not lose it.
import { useEffect, useMemo, useState } from "react";
import { windowShelf } from "../data/storage.ts";

const PREFIX = "longhold.draft.";

/** A draft that survives leaving the page. `initial` is what is saved; `key` names what is written. */
export function useDraft<T>(key: string, initial: T) {
  const [draft, setDraft] = useState<T>(() => withFields(readDraft<T>(key), initial));
  const saved = useMemo(() => JSON.stringify(initial), [initial]);
  const text = JSON.stringify(draft);
  const dirty = text !== saved;
  useEffect(() => {
    if (dirty) windowShelf.set(PREFIX + key, text);
    else windowShelf.remove(PREFIX + key);
  }, [key, text, dirty]);
  return { draft, setDraft, dirty };
}

/** A draft that an older version of the page kept lacks fields of today. */
const withFields = <T>(kept: T | null, initial: T): T =>
  kept !== null && typeof kept === "object" ? { ...initial, ...kept } : (kept ?? initial);

/** Throws away what was kept of a draft. */
export const forgetDraft = (key: string): void => windowShelf.remove(PREFIX + key);

function readDraft<T>(key: string): T | null {
  try {
    return JSON.parse(windowShelf.get(PREFIX + key) ?? "null") as T | null;
  } catch {
    return null;
  }
}
