// Making a change to many facts, with Undo in the notice.
import { useMutation } from "@tanstack/react-query";
import type { BulkResult } from "../../../app/views.ts";
import { api, type BulkOrder } from "../../client.ts";
import { errorWords, useRefresh } from "../../data/queries.ts";
import { useNotify } from "../../shell/notices.tsx";
import { counted } from "../../words.ts";
import { useUndo } from "../history/use-undo.ts";

/** Runs changes; `done` is told when one was made. */
export function useBulk(done: () => void) {
  const refresh = useRefresh();
  const notify = useNotify();
  const { undo } = useUndo();
  const { mutate, isPending } = useMutation({
    mutationFn: (order: BulkOrder) => api.bulkEdit(order),
    onSuccess: async (result) => {
      done();
      await refresh();
      const step = result.edit;
      notify(resultWords(result), step === null ? undefined : () => undo(step));
    },
    onError: (error) => notify(errorWords(error)),
  });
  return { run: mutate, busy: isPending };
}

function resultWords({ edit, title, refused }: BulkResult): string {
  if (edit === null) return "Nothing was changed.";
  return refused.length === 0 ? `${title}.` : `${title}; ${counted(refused.length, "fact")} left as they were.`;
}
