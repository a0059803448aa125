// How long cards really wait in each compartment of a chart: its period only where every card has its own date.
import { arrival, type Chart, gcd, step } from "./chart.ts";

/**
 * Mean wait in days in compartments 1…K of a card that is sent there: over all days for compartment 1, and for every
 * other over the days on which the compartment below is visited, each counting alike. By the plain chart it is half the
 * period from compartment 3 on. Cost: at most the longest step of a compartment for each.
 */
export function meanWaits(chart: Chart): readonly number[] {
  return chart.compartments.map((compartment, i) => {
    const below = chart.compartments[i - 1];
    const size = step(compartment);
    const every = below ? step(below) : 1;
    const first = below ? below.offset : 0;
    const count = size / gcd(size, every);
    const waits = Array.from({ length: count }, (_, visit) => {
      const day = first + visit * every;
      return arrival(chart, i + 1, day).due - day;
    });
    return waits.reduce((sum, wait) => sum + wait, 0) / count;
  });
}
