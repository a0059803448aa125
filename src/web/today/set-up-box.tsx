// Facts are there, a box is not: says what it will be, and sets it up with one button.
import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { LEVELLED_CHART } from "../../core/chart/make-chart.ts";
import { CompartmentTab } from "../cards/compartment-tab.tsx";
import { api } from "../client.ts";
import { useRefresh } from "../data/queries.ts";
import { EmptyRuler } from "../ruler/ruler.tsx";
import { BusyButton } from "../shell/busy-button.tsx";
import { useNotify } from "../shell/notices.tsx";
import { PageHeading } from "../shell/page-heading.tsx";
import { Trouble } from "../shell/states.tsx";
import { Stepper } from "../shell/stepper.tsx";
import { counted } from "../words.ts";

const DEFAULT_NEW = 10;
const MOST_NEW = 200;

/** The panel that sets up the box. */
export function SetUpBox({ facts }: { readonly facts: number }) {
  const [newPerDay, setNewPerDay] = useState(DEFAULT_NEW);
  const refresh = useRefresh();
  const notify = useNotify();
  const setUp = useMutation({
    mutationFn: () => api.setUpBox({ timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone, newPerDay }),
    onSuccess: () => {
      notify("The box is set up.");
      return refresh();
    },
  });
  const { compartments } = LEVELLED_CHART;
  return (
    <>
      <PageHeading title="Set up the box">Set up the box</PageHeading>
      <p className="lead">
        {counted(facts, "fact")} written down. Now give {facts === 1 ? "its" : "their"} cards a box to travel through.
      </p>
      <section className="sheet" aria-label="What the box will be">
        <EmptyRuler />
        <div className="set-up">
          <div className="set-up-words">
            <p>
              The box has {compartments.length} compartments. A card you recall moves one up; a card you miss goes back
              to the first. Recalled in the last one, it is kept.
            </p>
            <p>The upper compartments are divided into bundles that take turns, so that no single day buries you.</p>
            <Stepper label="New cards a day" value={newPerDay} max={MOST_NEW} onChange={setNewPerDay} />
            <p className="hint">Ten is a calm beginning. You can change it any day.</p>
            <p className="begin-row">
              <BusyButton className="big primary" busy={setUp.isPending} onClick={() => setUp.mutate()}>
                Set up the box
              </BusyButton>
            </p>
          </div>
          <ChartTable />
        </div>
        {setUp.error ? <Trouble error={setUp.error} retry={() => setUp.mutate()} /> : null}
      </section>
    </>
  );
}

/** What each compartment asks of a card's patience. */
function ChartTable() {
  const { compartments } = LEVELLED_CHART;
  return (
    <div className="table-scroll">
      <table className="chart-table">
        <thead>
          <tr>
            <th scope="col">Compartment</th>
            <th scope="col">A card waits up to</th>
            <th scope="col">Bundles</th>
          </tr>
        </thead>
        <tbody>
          {compartments.map(({ period, bundles }, i) => (
            <tr key={period}>
              <th scope="row">
                <CompartmentTab compartment={i + 1} compartments={compartments.length} />
                <span className="visually-hidden">{i + 1}</span>
              </th>
              <td>{counted(period, "day")}</td>
              <td>{bundles}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
