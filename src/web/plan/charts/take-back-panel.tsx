// The newest change of chart, while it can still be taken back.
import { useMutation } from "@tanstack/react-query";
import type { BoxView } from "../../../app/views.ts";
import { useTakeBack } from "../../box/use-logged.ts";
import { BusyButton } from "../../shell/busy-button.tsx";

/** The panel; `change` is the log entry of the change. */
export function TakeBackPanel({ box, change }: { readonly box: BoxView; readonly change: string }) {
  const takeBack = useTakeBack();
  const undo = useMutation({ mutationFn: () => takeBack({ id: change, box: box.id }) });
  return (
    <section className="sheet" aria-labelledby="charts-take-back">
      <h2 id="charts-take-back">The chart was changed</h2>
      <p>
        No card has been asked or moved since. Until then every card can go back to where it was, as if nothing had
        happened.
      </p>
      <p className="begin-row">
        <BusyButton busy={undo.isPending} onClick={() => undo.mutate()}>
          Take back the change
        </BusyButton>
      </p>
    </section>
  );
}
