// Undoing a step of editing, from a notice or from the list of steps.
import { useMutation } from "@tanstack/react-query";
import { useCallback } from "react";
import { api } from "../../client.ts";
import { errorWords, useRefresh } from "../../data/queries.ts";
import { useNotify } from "../../shell/notices.tsx";

/** How steps are undone. */
export function useUndo() {
  const refresh = useRefresh();
  const notify = useNotify();
  const { mutate, isPending } = useMutation({
    mutationFn: api.undoEdit,
    onSuccess: async ({ title }) => {
      await refresh();
      notify(`${title}.`);
    },
    onError: (error) => notify(errorWords(error)),
  });
  /** Says that a fact was changed, and offers to undo its latest step. */
  const offer = useCallback(
    async (text: string, fact: string): Promise<void> => {
      const latest = await api.factHistory(fact).catch(() => null);
      const step = latest?.versions[0]?.edit.id;
      notify(text, step === undefined ? undefined : () => mutate(step));
    },
    [notify, mutate],
  );
  return { undo: mutate, busy: isPending, offer };
}
