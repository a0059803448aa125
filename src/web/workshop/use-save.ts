// Saving, deleting and restoring a fact.
import { useMutation, useQueryClient } from "@tanstack/react-query";
import type { SubjectView } from "../../app/views.ts";
import type { Fact } from "../../core/facts/fact.ts";
import { api } from "../client.ts";
import { newId } from "../data/new-id.ts";
import { errorWords, KEYS, useRefresh } from "../data/queries.ts";
import { useNotify } from "../shell/notices.tsx";
import { counted } from "../words.ts";
import { anglesOf, type FactDraft, inputOf } from "./fact-draft.ts";
import { useUndo } from "./history/use-undo.ts";

/** What is to be saved, and where. */
export interface Saving {
  readonly draft: FactDraft;
  readonly before: Fact | null;
  readonly subject: SubjectView | null;
  /** The name of the subject to be made where there is none. */
  readonly subjectName: string;
}

/** Saves a fact; makes its subject first where there is none. */
export function useSave(saved: (fact: Fact) => void) {
  const client = useQueryClient();
  const refresh = useRefresh();
  const { offer } = useUndo();
  return useMutation({
    mutationFn: async ({ draft, before, subject, subjectName }: Saving) => {
      const body = { content: inputOf(draft, before), ...anglesOf(draft, before) };
      if (before) return api.editFact(before.id, body);
      const home = subject?.id ?? (await api.createSubject(subjectName.trim())).id;
      return api.createFact({ id: newId(), subject: home, ...body });
    },
    onSuccess: (fact) => {
      client.setQueryData([...KEYS.fact, fact.id], fact);
      void offer(`Saved: ${counted(fact.angles.length, "card")}.`, fact.id);
      saved(fact);
      return refresh();
    },
  });
}

/** Brings a deleted fact back. */
export function useRestore(restored?: () => void) {
  const refresh = useRefresh();
  const notify = useNotify();
  return useMutation({
    mutationFn: api.restoreFact,
    onSuccess: () => {
      notify("The fact is back.");
      restored?.();
      return refresh();
    },
    onError: (error) => notify(errorWords(error)),
  });
}

/** Deletes a fact and offers to undo it. */
export function useDelete(deleted: () => void) {
  const refresh = useRefresh();
  const notify = useNotify();
  const restore = useRestore();
  return useMutation({
    mutationFn: api.deleteFact,
    onSuccess: (_, id) => {
      notify("Fact deleted.", () => restore.mutate(id));
      deleted();
      return refresh();
    },
  });
}
