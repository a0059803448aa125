// The plan under one's hands: the box as it is, and what was changed of it here.
import { useCallback, useEffect, useMemo, useState } from "react";
import type { PlanView } from "../../app/views.ts";
import { draftOf, type PlanDraft } from "./plan-draft.ts";

type Changes = Partial<PlanDraft>;

/** Changes outlive a look at another page, but not the window. */
let kept: { readonly box: string | null; readonly changes: Changes } = { box: null, changes: {} };

/** A plan under way. */
export interface Draft {
  readonly draft: PlanDraft;
  /** Which parts are not as the box has them. */
  readonly differs: ReadonlySet<keyof PlanDraft>;
  readonly change: (part: Changes) => void;
  /** Takes the changes of these parts back, or of all. */
  readonly drop: (parts?: readonly (keyof PlanDraft)[]) => void;
}

/** The plan for a box; changes made for another box are not taken over. */
export function useDraft(view: PlanView): Draft {
  const box = view.box?.id ?? null;
  const [changes, setChanges] = useState<Changes>(() => (kept.box === box ? kept.changes : {}));
  useEffect(() => {
    kept = { box, changes };
  }, [box, changes]);
  const own = useMemo(() => draftOf(view), [view]);
  const draft = useMemo(() => ({ ...own, ...changes }), [own, changes]);
  const differs = useMemo(() => differences(own, draft), [own, draft]);
  const change = useCallback((part: Changes) => setChanges((all) => ({ ...all, ...part })), []);
  const drop = useCallback(
    (parts?: readonly (keyof PlanDraft)[]) => setChanges((all) => (parts ? without(all, parts) : {})),
    [],
  );
  return { draft, differs, change, drop };
}

/** The parts in which two plans differ. */
export function differences(one: PlanDraft, other: PlanDraft): ReadonlySet<keyof PlanDraft> {
  const parts = Object.keys(one) as (keyof PlanDraft)[];
  return new Set(parts.filter((part) => JSON.stringify(one[part]) !== JSON.stringify(other[part])));
}

const without = (changes: Changes, parts: readonly (keyof PlanDraft)[]): Changes =>
  Object.fromEntries(Object.entries(changes).filter(([part]) => !parts.includes(part as keyof PlanDraft)));
