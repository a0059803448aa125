// A compartment's number on a tab in the colour of its depth.
import { rampProps } from "../vars.ts";

/** The tab of compartment k of K; the number says what the colour says. */
export function CompartmentTab({
  compartment,
  compartments,
}: {
  readonly compartment: number;
  readonly compartments: number;
}) {
  return (
    <span className="tab" aria-hidden="true" {...rampProps(compartment, compartments)}>
      {compartment}
    </span>
  );
}
