// The piles that are due, highest compartment first, as they lie on the table.
import type { DuePile } from "../../app/views.ts";
import type { Chart } from "../../core/chart/chart.ts";
import { CompartmentTab } from "../cards/compartment-tab.tsx";
import { rampProps, vars } from "../vars.ts";
import { capital, counted, pileName } from "../words.ts";

/** A list of piles with their tabs, thickness and counts. */
export function Piles({ piles, chart }: { readonly piles: readonly DuePile[]; readonly chart: Chart }) {
  const top = chart.compartments.length;
  const most = Math.max(1, ...piles.map((pile) => pile.count));
  return (
    <ol className="piles">
      {piles.map(({ compartment, bundle, count }) => (
        <li key={`${compartment}/${bundle}`}>
          <CompartmentTab compartment={compartment} compartments={top} />
          <span className="pile-name">
            {capital(pileName(compartment, bundle, chart.compartments[compartment - 1]?.bundles ?? 1))}
          </span>
          <span className="pile-edges" aria-hidden="true" data-deep={rampProps(compartment, top)["data-deep"]}>
            <span style={vars({ "--share": count / most, "--depth": (compartment - 1) / Math.max(1, top - 1) })} />
          </span>
          <span className="pile-count">{counted(count, "card")}</span>
        </li>
      ))}
    </ol>
  );
}
