// What a change of chart asks of the tabs of a paper box.
import { type Chart, compartmentCount } from "../../../core/chart/chart.ts";

/** Tabs of a paper box that a change of chart makes new, and those it does away with. */
export interface TabChange {
  readonly write: readonly string[];
  readonly drop: readonly string[];
}

/** Tabs are named by compartment, and by bundle where there are several: "5", "6·2". Runs are named by their ends. */
export function tabChange(from: Chart, to: Chart): TabChange {
  const top = Math.max(compartmentCount(from), compartmentCount(to));
  const compartments = Array.from({ length: top }, (_, i) => i + 1);
  const sizes = (chart: Chart, k: number): number => chart.compartments[k - 1]?.bundles ?? 0;
  return {
    write: compartments.flatMap((k) => tabsBeyond(k, sizes(from, k), sizes(to, k))),
    drop: compartments.flatMap((k) => tabsBeyond(k, sizes(to, k), sizes(from, k))),
  };
}

/** The tabs of compartment k with `size` bundles that it does not have with `other`. */
function tabsBeyond(k: number, other: number, size: number): readonly string[] {
  if (size === 0) return [];
  if (size === 1) return other === 1 ? [] : [`${k}`];
  const first = other > 1 ? other + 1 : 1;
  if (first > size) return [];
  return [first === size ? `${k}·${size}` : `${k}·${first} to ${k}·${size}`];
}
