// Taking what was planned over into the box, with a way back.
import { useMutation } from "@tanstack/react-query";
import { api, type BoxSettings } from "../../client.ts";
import { errorWords, useRefresh } from "../../data/queries.ts";
import { useNotify } from "../../shell/notices.tsx";

/** A change of the box, how to undo it, and what to say when it is done. */
export interface BoxStep {
  readonly change: BoxSettings;
  readonly before: BoxSettings;
  readonly said: string;
  /** Called once the pages know of the change. */
  readonly done: () => void;
}

/** Saves a change of the box and offers to undo it. */
export function useSaveBox() {
  const refresh = useRefresh();
  const notify = useNotify();
  const undo = useMutation({
    mutationFn: (before: BoxSettings) => api.changeBox(before),
    onSuccess: async () => {
      await refresh();
      notify("The box is as it was.");
    },
    onError: (error) => notify(errorWords(error)),
  });
  return useMutation({
    mutationFn: ({ change }: BoxStep) => api.changeBox(change),
    onSuccess: async (_, { before, said, done }) => {
      await refresh();
      done();
      notify(said, () => undo.mutate(before));
    },
  });
}
