// Keeps a half-written fact in this window, so that going back and forth does not lose it.
import { useEffect, useMemo, useState } from "react";
import type { FactDraft } from "./fact-draft.ts";

const PREFIX = "longhold.draft.";

/** A draft that survives leaving the page. `initial` is what is saved; `key` names the fact. */
export function useDraft(key: string, initial: FactDraft) {
  const [draft, setDraft] = useState(() => readDraft(key) ?? initial);
  const saved = useMemo(() => JSON.stringify(initial), [initial]);
  const text = JSON.stringify(draft);
  const dirty = text !== saved;
  useEffect(() => {
    if (dirty) sessionStorage.setItem(PREFIX + key, text);
    else sessionStorage.removeItem(PREFIX + key);
  }, [key, text, dirty]);
  return { draft, setDraft, dirty };
}

/** Throws away what was kept of a draft. */
export const forgetDraft = (key: string): void => sessionStorage.removeItem(PREFIX + key);

function readDraft(key: string): FactDraft | null {
  try {
    return JSON.parse(sessionStorage.getItem(PREFIX + key) ?? "null") as FactDraft | null;
  } catch {
    return null;
  }
}
