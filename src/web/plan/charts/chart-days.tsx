// A chart as tables: how long cards wait in each compartment, and what is visited on each day.
import { type Chart, type ChartCompartment, cycleLength, step, visitsOn } from "../../../core/chart/chart.ts";
import { visitLabel } from "../../../core/chart/visit-label.ts";
import { count, counted } from "../../words.ts";

/** Longest cycle in days that is written out. */
const LONGEST_TABLE = 400;

interface ChartDaysProps {
  readonly name: string;
  readonly chart: Chart;
  /** Cards asked on chart day 1…cycle; none if they were not worked out. */
  readonly byDay: readonly number[];
}

/** Both tables, in a region that scrolls. */
export function ChartDays(props: ChartDaysProps) {
  const cycle = cycleLength(props.chart);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable from the keyboard
    <section className="chart-days" tabIndex={0} aria-label={`${props.name}, day by day`}>
      <Waits {...props} />
      {cycle <= LONGEST_TABLE ? (
        <Days {...props} cycle={cycle} />
      ) : (
        <p className="hint">It comes round after {counted(cycle, "day")}: too many for a table.</p>
      )}
    </section>
  );
}

/** A card waits more than the period less one step, and at most the period. */
function waitWords(compartment: ChartCompartment): string {
  const least = compartment.period - step(compartment) + 1;
  return least === compartment.period ? count(least) : `${count(least)} to ${count(compartment.period)}`;
}

function Waits({ chart }: ChartDaysProps) {
  return (
    <table className="chart-waits">
      <caption>How many days a card waits</caption>
      <thead>
        <tr>
          <th scope="col">Compartment</th>
          <th scope="col">Days</th>
          <th scope="col">Bundles</th>
        </tr>
      </thead>
      <tbody>
        {chart.compartments.map((compartment, i) => (
          // The place in the chart is the compartment.
          <tr key={`${i}`}>
            <th scope="row">{i + 1}</th>
            <td>{waitWords(compartment)}</td>
            <td>{compartment.bundles}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Days({ chart, byDay, cycle }: ChartDaysProps & { readonly cycle: number }) {
  return (
    <table>
      <caption>What is visited; 6·2 is bundle 2 of compartment 6</caption>
      <thead>
        <tr>
          <th scope="col">Chart day</th>
          <th scope="col">Visited</th>
          <th scope="col">Cards</th>
        </tr>
      </thead>
      <tbody>
        {Array.from({ length: cycle }, (_, i) => i + 1).map((day) => (
          <tr key={day}>
            <th scope="row">{day}</th>
            <td>{visitedWords(chart, day)}</td>
            <td>{byDay[day - 1] === undefined ? "" : count(byDay[day - 1] ?? 0)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function visitedWords(chart: Chart, day: number): string {
  const visits = visitsOn(chart, day).map((visit) => visitLabel(chart, visit));
  return visits.length > 0 ? visits.join(", ") : "none";
}
