// The chart as a ruler: one tick a day, today a notch, the load above.
import { useEffect, useRef } from "react";
import type { RulerTick } from "../../app/views.ts";
import { LEVELLED_CHART } from "../../core/chart/make-chart.ts";
import { longDate } from "../words.ts";
import { RulerDrawing, tickWords } from "./ruler-drawing.tsx";
import { patternTicks, placeTicks, RULER } from "./ruler-geometry.ts";
import { useWidth } from "./use-width.ts";

/** The ruler of a box, with today in view and the same figures in a table for those who do not see it. */
export function Ruler(props: {
  readonly ruler: readonly RulerTick[];
  readonly today: string;
  readonly compartments: number;
}) {
  const { ruler, today, compartments } = props;
  const region = useRef<HTMLElement>(null);
  const width = useWidth(region);
  const step = Math.max(RULER.leastStep, (width - 2 * RULER.pad) / Math.max(1, ruler.length));
  const ticks = placeTicks(ruler, today, compartments, step);
  const now = ticks.find((tick) => tick.when === "today")?.x ?? 0;
  useEffect(() => {
    // A third of the window for what was, two for what comes.
    region.current?.scrollTo({ left: now - width / 3 });
  }, [now, width]);
  return (
    <figure className="ruler">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable from the keyboard */}
      <section ref={region} className="ruler-scroll" tabIndex={0} aria-label="The chart as a ruler">
        {width > 0 ? <RulerDrawing ticks={ticks} width={Math.round(step * ticks.length + 2 * RULER.pad)} /> : null}
        <table className="visually-hidden">
          <caption>The days of the chart</caption>
          <thead>
            <tr>
              <th scope="col">Date</th>
              <th scope="col">Chart day</th>
              <th scope="col">What it holds</th>
            </tr>
          </thead>
          <tbody>
            {ticks.map((tick) => (
              <tr key={tick.date}>
                <th scope="row">
                  {longDate(tick.date)}
                  {tick.when === "today" ? ", today" : ""}
                </th>
                <td>{tick.chartDay ?? "none"}</td>
                <td>{tickWords(tick)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <figcaption className="ruler-key">
        <span className="key sat">sat</span>
        <span className="key missed">missed</span>
        <span className="key rest">rest day</span>
        <span className="key ahead">to come</span>
        <span className="key load">cards asked</span>
        <span>A longer tick visits a higher compartment.</span>
      </figcaption>
    </figure>
  );
}

/** The bare ruler of an empty table. */
export function EmptyRuler() {
  const region = useRef<HTMLDivElement>(null);
  const width = useWidth(region);
  const pattern = patternTicks(LEVELLED_CHART);
  const step = Math.max(RULER.leastStep, (width - 2 * RULER.pad) / pattern.length);
  const ticks = placeTicks(pattern, null, LEVELLED_CHART.compartments.length, step);
  return (
    <div ref={region} className="ruler-empty" aria-hidden="true">
      {width > 0 ? <RulerDrawing ticks={ticks} width={Math.round(step * ticks.length + 2 * RULER.pad)} /> : null}
    </div>
  );
}
