// Saying that the cards of a PDF went to paper, and taking it back.
import { useMutation } from "@tanstack/react-query";
import type { KitJobView } from "../../../app/print-views.ts";
import { api } from "../../client.ts";
import { useRefresh } from "../../data/queries.ts";
import { BusyButton } from "../../shell/busy-button.tsx";
import { useNotify } from "../../shell/notices.tsx";
import { Trouble } from "../../shell/states.tsx";
import { counted } from "../../words.ts";
import { useUndoPrintStep } from "../your-paper/use-undo-print-step.ts";
import type { KitJob } from "./use-kit-job.ts";

interface RecordingProps {
  readonly job: KitJob;
  readonly view: KitJobView;
  /** Told when the cards were recorded. */
  readonly printed: () => void;
}

/** One button; once it was pressed, what is recorded and the way back. */
export function Recording({ job, view, printed }: RecordingProps) {
  const refresh = useRefresh();
  const notify = useNotify();
  const undo = useUndoPrintStep();
  const record = useMutation({
    mutationFn: () => api.kitPrinted(view.id),
    onSuccess: async (recorded) => {
      job.note(recorded);
      printed();
      await refresh();
      const step = recorded.recorded;
      notify(
        `${counted(view.recordable, "card")} recorded as printed.`,
        step === null ? undefined : () => undo.mutate(step),
      );
    },
  });
  if (view.recorded !== null)
    return (
      <p className="kit-recorded">
        <span>
          {counted(view.recordable, "card")} of this PDF {view.recordable === 1 ? "is" : "are"} recorded as printed.
        </span>
        <BusyButton className="quiet" busy={undo.isPending} onClick={() => undo.mutate(view.recorded ?? "")}>
          Take back
        </BusyButton>
      </p>
    );
  return (
    <div className="kit-made">
      <p>When the sheets have come out well, say so: from then on Longhold knows which paper cards are out of date.</p>
      <p>
        <BusyButton busy={record.isPending} onClick={() => record.mutate()}>
          These are printed
        </BusyButton>
      </p>
      {record.error ? <Trouble error={record.error} /> : null}
    </div>
  );
}
