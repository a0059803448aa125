// Gives the box another chart, says so, and offers to take it back.
import { useMutation } from "@tanstack/react-query";
import type { Chart } from "../../../core/chart/chart.ts";
import { useTakeBack } from "../../box/use-logged.ts";
import { api } from "../../client.ts";
import { useRefresh } from "../../data/queries.ts";
import { flush } from "../../outbox/outbox.ts";
import { useNotify } from "../../shell/notices.tsx";
import { counted } from "../../words.ts";

/** The change as a mutation; `changed` is called once it is made, before the page follows. */
export function useChangeChart(changed: () => void) {
  const refresh = useRefresh();
  const notify = useNotify();
  const takeBack = useTakeBack();
  return useMutation({
    mutationFn: async (chart: Chart) => {
      // Answers given here come before the change.
      await flush();
      return api.changeChart({ chart: { compartments: [...chart.compartments] } });
    },
    onSuccess: ({ box, entry, moved }) => {
      changed();
      const undo = entry === null ? undefined : () => void takeBack({ id: entry, box: box.id });
      notify(`The box goes by the new chart. ${counted(moved, "card")} moved.`, undo);
      return refresh();
    },
  });
}
