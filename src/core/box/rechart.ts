// Where cards go when the box changes its chart: to the compartment with the nearest period, and there into the bundle
// whose next visit is nearest to the day on which the card is due.
import { type BoxDay, bundleVisited, type Chart, compartmentCount, lastVisit, step } from "../chart/chart.ts";
import type { Waiting } from "../load/expected.ts";
import type { InCompartment, Place } from "./placement.ts";

/**
 * The compartment of chart `to` for cards that lie in compartment `k` of chart `from`: the one whose period is nearest
 * by ratio, of two as near the lower. It rises with k, and the same periods keep their numbers. So that both hold for
 * periods that do not rise, a compartment counts with the longest period up to it; among equals it stays close to k.
 */
export function compartmentAfter(from: Chart, to: Chart, k: number): number {
  const wanted = heights(from)[k - 1];
  if (wanted === undefined) throw new RangeError(`no compartment ${k} in a chart of ${compartmentCount(from)}`);
  const offered = heights(to);
  const nearest = offered.reduce((a, b) => (ratio(b, wanted) < ratio(a, wanted) ? b : a));
  const lowest = offered.indexOf(nearest) + 1;
  return Math.min(Math.max(k, lowest), offered.lastIndexOf(nearest) + 1);
}

/**
 * The place of a card once the box goes by chart `to` from box day `day` on. In a compartment, the bundle is the one
 * whose next visit from `day` on is nearest to the card's due day, of two as near the earlier; an overdue card counts
 * as due on `day`. The card therefore waits at most its remaining wait and one step of its new compartment. A withdrawn
 * card will come back to such a place; stock and kept cards stay. The same object where nothing changes.
 */
export function rechartPlace(from: Chart, to: Chart, day: BoxDay, place: Place): Place {
  switch (place.kind) {
    case "stock":
    case "kept":
      return place;
    case "withdrawn": {
      const inside = place.from;
      const back = inside.kind === "compartment" ? rechartCard(from, to, day, inside) : inside;
      return back === inside ? place : { kind: "withdrawn", from: back };
    }
    case "compartment":
      return rechartCard(from, to, day, place);
  }
}

/** As `rechartPlace` for counted cards: those that come to wait together are counted together. */
export function rechartWaiting(from: Chart, to: Chart, day: BoxDay, waiting: readonly Waiting[]): readonly Waiting[] {
  const moved = new Map<string, Waiting>();
  for (const { compartment: k, due: oldDue, count } of waiting) {
    const compartment = compartmentAfter(from, to, k);
    const due = dueAfter(to, compartment, day, oldDue);
    const key = `${compartment} ${due}`;
    moved.set(key, { compartment, due, count: count + (moved.get(key)?.count ?? 0) });
  }
  return [...moved.values()];
}

function rechartCard(from: Chart, to: Chart, day: BoxDay, place: InCompartment): InCompartment {
  const compartment = compartmentAfter(from, to, place.compartment);
  const due = dueAfter(to, compartment, day, place.due);
  const bundle = bundleVisited(to, compartment, due) ?? 0;
  const stays = compartment === place.compartment && bundle === place.bundle && due === place.due;
  return stays ? place : { kind: "compartment", compartment, bundle, due };
}

/** The visit of compartment `k` nearest to `due`, of those from `day` on up to a whole period later. */
function dueAfter(chart: Chart, k: number, day: BoxDay, due: BoxDay): BoxDay {
  const compartment = chart.compartments[k - 1];
  if (!compartment) throw new RangeError(`no compartment ${k} in a chart of ${compartmentCount(chart)}`);
  // A card that has just arrived waits a whole period; whoever waits longer has its bundle visited before.
  const latest = day + compartment.period;
  const wanted = Math.min(Math.max(due, day), latest);
  const early = lastVisit(chart, k, wanted);
  const late = early + step(compartment);
  if (early < day) return late;
  return late > latest || wanted - early <= late - wanted ? early : late;
}

/** For compartment 1…K, the longest period up to it. */
function heights(chart: Chart): readonly number[] {
  let longest = 0;
  return chart.compartments.map(({ period }) => {
    longest = Math.max(longest, period);
    return longest;
  });
}

/** How many times the longer of two periods is as long as the shorter; exact for ties, as logarithms are not. */
const ratio = (a: number, b: number): number => Math.max(a, b) / Math.min(a, b);
