// The planned chart for a box that is yet to be set up.
import { useMutation } from "@tanstack/react-query";
import { Link } from "wouter";
import type { PlanView } from "../../../app/views.ts";
import { api } from "../../client.ts";
import { useRefresh, useToday } from "../../data/queries.ts";
import { BusyButton } from "../../shell/busy-button.tsx";
import { useNotify } from "../../shell/notices.tsx";
import { Trouble } from "../../shell/states.tsx";
import { counted } from "../../words.ts";
import type { PlanDraft } from "../plan-draft.ts";
import { meanPace } from "./chart-figures.ts";

/** Most new cards a day that a box can be set up with. */
const MOST_NEW = 1_000;

interface SetUpPanelProps {
  readonly view: PlanView;
  readonly draft: PlanDraft;
  /** What the planned chart is called. */
  readonly name: string;
}

/** The panel; says what is missing where there are no facts yet. */
export function SetUpPanel({ view, draft, name }: SetUpPanelProps) {
  const today = useToday();
  const refresh = useRefresh();
  const notify = useNotify();
  const newPerDay = Math.min(MOST_NEW, Math.round(meanPace(draft)));
  const setUp = useMutation({
    mutationFn: () => {
      const chart = { compartments: [...draft.chart.compartments] };
      return api.setUpBox({ timeZone: view.calendar.timeZone, newPerDay, chart });
    },
    onSuccess: () => {
      notify("The box is set up.");
      return refresh();
    },
  });
  const facts = today.data?.facts ?? 0;
  return (
    <section className="sheet" aria-labelledby="charts-set-up">
      <h2 id="charts-set-up">Set up your box with this chart</h2>
      {facts > 0 ? (
        <>
          <p>
            “{name}”, {counted(newPerDay, "new card")} a day, and the cards of {counted(facts, "fact")} in the stock.
            The chart can be changed later; the pace any day.
          </p>
          <p className="begin-row">
            <BusyButton className="primary" busy={setUp.isPending} onClick={() => setUp.mutate()}>
              Set up my box with this chart
            </BusyButton>
          </p>
          {setUp.error ? <Trouble error={setUp.error} retry={() => setUp.mutate()} /> : null}
        </>
      ) : (
        <p>
          A box needs cards. <Link href="/workshop">Write a first fact</Link> or{" "}
          <Link href="/workshop/import">bring a list</Link>; then come back.
        </p>
      )}
    </section>
  );
}
