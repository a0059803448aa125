// The choices for a kit: kept on this device; the names of a class only as long as this window.
import { useCallback, useEffect, useState } from "react";
import { useSearchParams } from "wouter";
import { KIT_PARTS } from "../../core/kit/kit-pages.ts";
import { browserShelf, windowShelf } from "../data/storage.ts";
import { type KitDraft, readDraft } from "./kit-draft.ts";

const KEPT = "longhold:kit";
const NAMES = "longhold:kit-names";

/** Choices under one's hands. */
export interface KitDraftState {
  readonly draft: KitDraft;
  /** The names of a class, one a line. */
  readonly names: string;
  readonly change: (part: Partial<KitDraft>) => void;
  readonly setNames: (names: string) => void;
}

/** What was chosen last on this device. Parts that the address names come before it, until others are chosen. */
export function useKitDraft(): KitDraftState {
  const [kept, setKept] = useState(() => readDraft(browserShelf.get(KEPT), navigator.language));
  // Names are those of other people: they stay no longer than the window.
  const [names, setNames] = useState(() => windowShelf.get(NAMES) ?? "");
  const [search, setSearch] = useSearchParams();
  const asked = search.get("parts")?.split(",");
  const parts = asked ? KIT_PARTS.filter((part) => asked.includes(part)) : kept.parts;
  useEffect(() => void browserShelf.set(KEPT, JSON.stringify(kept)), [kept]);
  useEffect(() => {
    if (names === "") windowShelf.remove(NAMES);
    else windowShelf.set(NAMES, names);
  }, [names]);
  const change = useCallback(
    (part: Partial<KitDraft>) => {
      setKept((all) => ({ ...all, ...part }));
      if ("parts" in part) setSearch({}, { replace: true });
    },
    [setSearch],
  );
  return { draft: { ...kept, parts }, names, change, setNames };
}
