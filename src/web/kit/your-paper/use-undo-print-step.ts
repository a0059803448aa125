// Taking back what was said of paper.
import { useMutation } from "@tanstack/react-query";
import { api } from "../../client.ts";
import { errorWords, useRefresh } from "../../data/queries.ts";
import { useNotify } from "../../shell/notices.tsx";

/** Takes a step back: cards printed, lost or damaged. */
export function useUndoPrintStep() {
  const refresh = useRefresh();
  const notify = useNotify();
  return useMutation({
    mutationFn: (step: string) => api.undoPrintStep(step),
    onSuccess: async () => {
      await refresh();
      notify("Taken back.");
    },
    onError: (error) => notify(errorWords(error)),
  });
}
